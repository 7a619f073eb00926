import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Every file of the project as version control would take it. */
const listed = spawnSync("git", ["ls-files", "--cached", "--others", "--exclude-standard"], {
  cwd: root,
  encoding: "utf8",
});
const files = listed.stdout.split("\n").filter((file) => file !== "" && existsSync(`${root}/${file}`));

interface Line {
  readonly file: string;
  readonly number: number;
  readonly text: string;
}

const lines: readonly Line[] = files.flatMap((file) =>
  readFileSync(`${root}/${file}`, "utf8")
    .split("\n")
    .map((text, index) => ({ file, number: index + 1, text })),
);
const core = lines.filter(({ file }) => file.startsWith("packages/core/src/"));

function where(found: readonly Line[]): readonly string[] {
  return found.map(({ file, number, text }) => `${file}:${number}: ${text.trim()}`);
}

/** Lines of code, their comments left out. */
function code(found: readonly Line[]): readonly Line[] {
  return found
    .filter(({ text }) => !/^\s*(?:\/\/|\/?\*)/u.test(text))
    .map((line) => ({ ...line, text: line.text.replace(/\s\/\/ .*$/u, "") }));
}

/** Built of pieces, so that this file does not hold what it looks for. */
function anyOf(...words: readonly string[]): RegExp {
  return new RegExp(words.join("|"), "iu");
}

describe("the project", () => {
  test("is under version control", () => {
    expect(listed.status).toBe(0);
    expect(files).toContain("package.json");
  });

  test("names no folder of a machine", () => {
    const paths = anyOf(
      "/wo" + "rk/",
      "/ho" + "me/\\w",
      "/Us" + "ers/\\w",
      "/ro" + "ot/",
      "/t" + "mp/",
      "[a-z]:\\\\\\\\(?:us" + "ers)",
    );
    expect(where(lines.filter(({ text }) => paths.test(text)))).toEqual([]);
  });

  test("names no package registry, not even in the lock file", () => {
    const hosts = anyOf(
      "regi" + "stry\\.npmjs",
      "npm" + "mirror\\.",
      "artif" + "actory",
      "ver" + "daccio",
      "nex" + "us\\.",
      "local" + "host:\\d",
    );
    expect(where(lines.filter(({ text }) => hosts.test(text)))).toEqual([]);
  });

  test("has no test that is left out, or that leaves the others out", () => {
    const marks = anyOf("\\b(?:test|describe|it)\\.(?:on" + "ly|sk" + "ip|to" + "do)\\b");
    expect(where(lines.filter(({ file, text }) => file.startsWith("test/") && marks.test(text)))).toEqual([]);
  });

  test("silences no checker", () => {
    const silent = anyOf(
      "@ts-ig" + "nore",
      "@ts-expect-er" + "ror",
      "@ts-noch" + "eck",
      "biome-ig" + "nore(?! format)",
      "oxlint-dis" + "able",
      "eslint-dis" + "able",
      "\\bas a" + "ny\\b",
    );
    expect(where(lines.filter(({ file, text }) => /\.(?:ts|mjs|cjs)$/u.test(file) && silent.test(text)))).toEqual([]);
  });
});

/** A file that only names what a program may import. */
const door = /^packages\/core\/src\/(?:\w+\/)?index\.ts$/u;

describe("the library", () => {
  const imports = core.flatMap((line) => {
    const target = /^(?:(?:import|export)\b.*\bfrom|\} from|import) "(?<target>[^"]+)";$/u.exec(line.text)?.groups?.[
      "target"
    ];
    return target === undefined ? [] : [{ line, target }];
  });

  test("has its folders in the order that lint holds, and no other", () => {
    const held = [
      ...readFileSync(`${root}/.oxlintrc.json`, "utf8").matchAll(/"packages\/core\/src\/(\w+)\/\*\*\/\*\.ts"/gu),
    ].map(([, name]) => name);
    const folders = new Set(core.map(({ file }) => file.split("/")[3]).filter((name) => !name?.includes(".")));
    expect([...folders].sort()).toEqual([...held].sort());
    expect(imports.length).toBeGreaterThan(100);
  });

  test("goes in by its doors from outside only", () => {
    const inside = imports.filter(({ line, target }) => {
      const to = new URL(target, `file:///${line.file}`).pathname.slice(1);
      return target.startsWith(".") && door.test(to);
    });
    expect(where(inside.map(({ line }) => line))).toEqual([]);
  });

  test("is used by the command through its doors", () => {
    const past = lines.filter(
      ({ file, text }) => file.startsWith("packages/cli/src/") && /from "(?:#core|(?:\.\.\/)+core)\b/u.test(text),
    );
    expect(where(past)).toEqual([]);
  });

  test("names files with their ending, and takes in the packages it may", () => {
    const allowed = new Set(["decimal.js", "zod/mini"]);
    const wrong = imports.filter(({ target }) =>
      target.startsWith(".") ? !target.endsWith(".ts") : !allowed.has(target),
    );
    expect(where(wrong.map(({ line }) => line))).toEqual([]);
  });

  test("has no outside world: no Node.js, no console, no clock, no chance", () => {
    const outside =
      /\bnode:|\brequire\(|\bconsole\.|\bprocess\.|\bMath\.random\b|\bnew Date\b|\bDate\.|\bperformance\.|\bfetch\(|\bsetTimeout\b|\bglobalThis\b|\bIntl\b|\btoLocale/u;
    expect(where(code(core).filter(({ text }) => outside.test(text)))).toEqual([]);
  });

  test("tells nobody to type a flag or a command", () => {
    const commands = files.flatMap((file) => /^packages\/cli\/src\/commands\/([\w-]+)\.ts$/u.exec(file)?.[1] ?? []);
    const typed = new RegExp(`[\\s"'\`]--[a-z][\\w-]*\\b(?!:)|noodlewright (?:${commands.join("|")})\\b`, "u");
    expect(commands).toContain("trial");
    expect(where(code(core).filter(({ text }) => typed.test(text)))).toEqual([]);
  });

  test("names itself in no sentence: the mark of a page and of a file alone say what made them", () => {
    const named = /(?<!content=")\bnoodlewright\b(?!:)/u;
    expect(where(code(core).filter(({ text }) => named.test(text)))).toEqual([]);
  });

  test("rounds numbers, and cuts none short", () => {
    expect(where(code(core).filter(({ text }) => /value\.slice\(/u.test(text)))).toEqual([]);
  });

  test("has no default export, no enum, no namespace, no assertion that a value is there", () => {
    const unwanted =
      /^export default\b|^(?:export )?(?:const )?enum \w|^(?:export )?namespace \w|[\w)\]]!(?:\.|;|,|\)|\[)/u;
    expect(where(code(core).filter(({ text }) => unwanted.test(text)))).toEqual([]);
  });
});
