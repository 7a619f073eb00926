import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path/posix";
import { fileURLToPath } from "node:url";
import { compileFunction } from "node:vm";
import type { Source, Standing } from "@noodlewright/core/figure";
import { build, type Plugin } from "esbuild";
import { beforeAll, expect, test } from "vitest";
import { expectPage, row } from "./page.ts";

// The page of sources is made of the constants of the code: each module shows its own, exported or not.

const folder = fileURLToPath(new URL("../../packages/core/src/", import.meta.url));
const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".ts") && !name.endsWith("index.ts"))
  .sort();
const texts = new Map(files.map((file) => [file, readFileSync(join(folder, file), "utf8")]));

type Held = Readonly<Record<string, unknown>>;

/** Every module, which hands over its constants when it has run. */
const openModules: Plugin = {
  name: "open modules",
  setup: (bundler) =>
    bundler.onLoad({ filter: /\/core\/src\/.*\.ts$/ }, ({ path }) => {
      const file = path.slice(folder.length);
      const text = readFileSync(path, "utf8");
      const names = [...text.matchAll(/^(?:export )?const (\w+)\b/gmu)].map(([, name]) => name);
      return { contents: `${text}\nhandOver(${JSON.stringify(file)}, { ${names.join(", ")} });`, loader: "ts" };
    }),
};

async function constants(): Promise<ReadonlyMap<string, Held>> {
  const { outputFiles } = await build({
    // Exported again and not only imported: the library says that its modules do nothing by being imported.
    stdin: {
      contents: files.map((file, index) => `export * as module${index} from "./${file}";`).join("\n"),
      resolveDir: folder,
    },
    bundle: true,
    write: false,
    format: "iife",
    platform: "neutral",
    mainFields: ["module", "main"],
    logLevel: "silent",
    treeShaking: false,
    plugins: [openModules],
  });
  const held = new Map<string, Held>();
  const run = compileFunction(outputFiles[0]?.text ?? "", ["handOver"]);
  Reflect.apply(run, undefined, [(file: string, names: Held) => held.set(file, names)]);
  return held;
}

function isSource(value: object): value is Source {
  return "cite" in value && "standing" in value;
}

/** The sources within a value, however deep. */
function sourcesIn(value: unknown, seen = new Set<unknown>()): readonly Source[] {
  if (typeof value !== "object" || value === null || seen.has(value)) return [];
  seen.add(value);
  if (isSource(value)) return [value];
  const parts = value instanceof Map ? [...value.values()] : Object.values(value);
  return parts.flatMap((part) => sourcesIn(part, seen));
}

/** The constants that a file takes from others: the file they are from and their name there. */
function takenBy(file: string): readonly { readonly from: string; readonly name: string }[] {
  const imports = [...(texts.get(file) ?? "").matchAll(/^import \{([^}]*)\} from "(\.[^"]+)";/gmu)];
  return imports.flatMap(([, names = "", target = ""]) =>
    names.split(",").map((name) => ({ from: join(dirname(file), target), name: name.trim().split(" as ")[0] ?? "" })),
  );
}

/** Sources written within a file's functions, which its constants do not hold. */
function writtenIn(file: string): readonly Source[] {
  const literals = /\{(?<before>[^{}]*)\bcite:\s*(?<cite>"(?:[^"\\]|\\.)*")(?<after>[^{}]*)\}/gu;
  return [...(texts.get(file) ?? "").matchAll(literals)].flatMap(({ groups }) => {
    const rest = `${groups?.["before"]} ${groups?.["after"]}`;
    const like = /\.\.\.(?<name>definition|commonPractice)\b/u.exec(rest)?.groups?.["name"];
    const said = /standing: "(?<standing>\w+)"/u.exec(rest)?.groups?.["standing"];
    const standing = chapters.find(([one]) => one === said)?.[0] ?? (like === "definition" ? like : "practice");
    return said === undefined && like === undefined
      ? []
      : [{ cite: JSON.parse(groups?.["cite"] ?? "") as string, standing }];
  });
}

interface Cited {
  readonly source: Source;
  readonly places: Set<string>;
  /** The first file that holds it. */
  readonly first: string;
  /** Files that write it or take it in by name. */
  readonly files: Set<string>;
}

const moduleOf = (file: string): string => file.replace(/\.ts$/u, "");

function cited(held: ReadonlyMap<string, Held>): readonly Cited[] {
  const found = new Map<string, Cited>();
  for (const file of files) {
    const taken = takenBy(file).flatMap(({ from, name }) => {
      const value = held.get(from)?.[name];
      return typeof value === "object" && value !== null && isSource(value) ? [value] : [];
    });
    for (const source of [...sourcesIn(held.get(file)), ...writtenIn(file), ...taken]) {
      const key = `${source.standing} ${source.cite}`;
      const one = found.get(key) ?? { source, places: new Set(), first: moduleOf(file), files: new Set() };
      found.set(key, one);
      if (source.at !== undefined) one.places.add(source.at);
      const writes = texts.get(file)?.includes(JSON.stringify(source.cite));
      if (writes || taken.some(({ cite }) => cite === source.cite)) one.files.add(moduleOf(file));
    }
  }
  return [...found.values()].sort((a, b) => (a.source.cite < b.source.cite ? -1 : 1));
}

const chapters: readonly (readonly [Standing, string, string])[] = [
  ["read", "Read", "The source itself was read."],
  ["copy", "Read in a copy", "A reprint, a summary or a quotation was read, and not the source itself."],
  ["memory", "From memory", "Remembered, and not opened. Check it before you rest anything on it."],
  ["practice", "Common practice", "Facts of the trade for which no source was found."],
  ["definition", "By definition", "True by definition or by arithmetic alone."],
  ["user", "Given by whoever wrote the spec", "The spec, a certificate or a label goes before every table."],
];

const most = 6;
function listed(items: ReadonlySet<string>): string {
  const [all, more] = [[...items].sort(), items.size - most];
  return more > 1 ? `${all.slice(0, most).join("; ")}; and ${more} more` : all.join("; ");
}

function page(all: readonly Cited[]): string {
  const head = [row("source", "place in it", "used in"), row("---", "---", "---")];
  const sections = chapters.map(([standing, title, text]) => {
    const rows = all
      .filter(({ source }) => source.standing === standing)
      .map(({ source, places, first, files: used }) =>
        row(source.cite, listed(places), (used.size > 0 ? [...used] : [first]).map((file) => `\`${file}\``).join(", ")),
      );
    return [`## ${title}`, text, [...head, ...rows].join("\n")].join("\n\n");
  });
  return `${[
    "# Where the numbers come from",
    "Every number in the code stands beside its source, and every source says how well it is known. This page is made of those constants; a test holds it to that. Answers print the sources of their figures with `--working`, and `citation` writes one on a line. The modules are those of the folder `src`.",
    ...sections,
  ].join("\n\n")}\n`;
}

let held: ReadonlyMap<string, Held>;
beforeAll(async () => {
  held = await constants();
});

test("the page of sources tells every constant of the code", () => {
  const all = cited(held);
  expect(all.length).toBeGreaterThan(100);
  expectPage("packages/core/sources.md", page(all));
});

test("no source is written where the page does not see it", () => {
  const seen = new Set(cited(held).map(({ source }) => source.cite));
  const written = files.flatMap((file) =>
    [...(texts.get(file) ?? "").matchAll(/\bcite:\s*("(?:[^"\\]|\\.)*")/gu)].map(([, text = ""]) => ({
      file,
      cite: JSON.parse(text) as string,
    })),
  );
  expect(written.length).toBeGreaterThan(100);
  expect(written.filter(({ cite }) => !seen.has(cite))).toEqual([]);
});
