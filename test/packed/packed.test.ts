import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { publint } from "publint";
import { formatMessage } from "publint/utils";
import { beforeAll, describe, expect, test } from "vitest";
import manifest from "../../packages/core/package.json" with { type: "json" };

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

interface Packed {
  readonly files: readonly string[];
  readonly size: number;
  readonly unpackedSize: number;
}

interface Outcome {
  readonly version: string;
  readonly core: Packed;
  readonly cli: Packed;
  readonly installed: readonly string[];
  readonly printedVersion: string;
  readonly formula: string;
  readonly formulaHere: string;
  readonly figures: Readonly<Record<string, { readonly value: string }>>;
}

describe("the packages, packed and installed into an empty folder", () => {
  let outcome: Outcome;

  beforeAll(async () => {
    for (const built of ["core/dist/index.js", "cli/bundle/main.cjs"]) {
      if (!existsSync(here(`../../packages/${built}`))) throw new Error("run `npm run build` before the tests");
    }
    const { packAndRun }: { readonly packAndRun: () => Outcome } = await import(here("pack-and-run.mjs"));
    outcome = packAndRun();
  });

  test("the command runs and gives its version", () => expect(outcome.printedVersion).toBe(outcome.version));

  test("the command answers there as it does here", () => {
    expect(outcome.formula).toContain("School noodle");
    expect(outcome.formula).toBe(outcome.formulaHere);
  });

  test("the library works out a formula: dough water by the mass balance 100 (M + 36) / 136", () => {
    const moisture = Number(outcome.figures["blend.moisture"]?.value);
    expect(moisture).toBeGreaterThan(8);
    expect(Number(outcome.figures["dough.water"]?.value)).toBeCloseTo((100 * (moisture + 36)) / 136, 6);
  });

  test("the command brings everything along, so that only the library and what it needs come with them", () => {
    expect(outcome.installed).toEqual(["@noodlewright/cli", "@noodlewright/core"]);
  });

  test("the packed command is its start, its bundle, the notices of what is in it and its pages, 2 MB at most", () => {
    const { files, unpackedSize } = outcome.cli;
    expect(files).toEqual(
      expect.arrayContaining([
        "bin/noodlewright.cjs",
        "bundle/main.cjs",
        "bundle/notices.txt",
        "README.md",
        "CHANGELOG.md",
        "problems.md",
      ]),
    );
    const other = files.filter(
      (file) =>
        !/^(?:bin\/noodlewright\.cjs|package\.json|README\.md|CHANGELOG\.md|problems\.md|bundle\/notices\.txt|bundle\/[\w-]+\.(?:cjs|js|css|deflate))$/u.test(
          file,
        ),
    );
    expect(other).toEqual([]);
    expect(unpackedSize).toBeLessThan(2_000_000);
  });

  test("the packed library is its compiled code with types, the sources that its maps point at, and its pages", () => {
    const other = outcome.core.files.filter(
      (file) => !/^(?:package\.json|[\w-]+\.md|src\/.+\.ts|dist\/.+\.(?:js|d\.ts)(?:\.map)?)$/u.test(file),
    );
    expect(other).toEqual([]);
    const pages = ["README", "CHANGELOG", "api", "method", "problems", "sources"].map((page) => `${page}.md`);
    expect(outcome.core.files).toEqual(expect.arrayContaining(["dist/index.js", "dist/index.d.ts", ...pages]));
  });
});

describe("the packages by the rules of publishing", () => {
  test.each(["core", "cli"])("%s has nothing that publint would mend", async (name) => {
    const { messages, pkg } = await publint({ pkgDir: here(`../../packages/${name}`), strict: true, pack: false });
    expect(messages.map((message) => formatMessage(message, pkg, { color: false }))).toEqual([]);
  });
});

describe("the library in a browser", () => {
  test("is bundled without a single module of Node.js", async () => {
    const { metafile, warnings } = await build({
      entryPoints: [here("../../packages/core/src/index.ts")],
      bundle: true,
      write: false,
      metafile: true,
      minify: true,
      format: "esm",
      platform: "browser",
      target: "es2022",
      logLevel: "silent",
    });
    expect(warnings).toEqual([]);
    const own = Object.entries(metafile.inputs).filter(([path]) => !path.includes("node_modules/"));
    const imported = own.flatMap(([, { imports }]) => imports.map(({ path }) => path));
    const packages = imported.flatMap((path) => /node_modules\/([^/]+)/u.exec(path)?.[1] ?? []);
    expect(packages.length).toBeGreaterThan(0);
    for (const name of new Set(packages)) expect(Object.keys(manifest.dependencies)).toContain(name);
  });

  test("gives the same figure with no Node.js global in reach", async () => {
    const { outputFiles } = await build({
      stdin: {
        contents: `import { askFormula, readNoodle } from "./index.ts";
const outcome = readNoodle({ name: "plain", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "36 %" } });
globalThis.answer = outcome.ok ? askFormula(outcome.value).report().figures["dough.water"].value : "none";`,
        resolveDir: here("../../packages/core/src"),
      },
      bundle: true,
      write: false,
      format: "iife",
      platform: "browser",
      logLevel: "silent",
    });
    const program = `const { createContext, runInContext } = require("node:vm");
const world = createContext({});
runInContext(require("node:fs").readFileSync(0, "utf8"), world);
process.stdout.write(world.answer);`;
    const { stdout, stderr } = spawnSync(process.execPath, ["--eval", program], {
      input: outputFiles[0]?.contents ?? "",
      encoding: "utf8",
    });
    expect(stderr).toBe("");
    expect(stdout).toMatch(/^\d\d\.\d+$/u);
  });
});
