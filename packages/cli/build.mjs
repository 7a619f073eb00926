import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

// Bundles the command: `main` holds the command table and the help; every command has a file of its own, and so has
// what only a mistyped word needs, so that a run reads only what it uses. Then each command is run once, and the
// compiled code is kept beside it.

const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const commands = readdirSync(here("src/commands/")).map((name) =>
  name.endsWith(".ts") ? name.replace(/\.ts$/, "") : `${name}/${name}`,
);

/** Packages that a small file of ours stands in for where the command-line parser asks for them, and only there. */
const standIns = {
  "string-width": 'export { stringWidth as default } from "./light-width.ts";',
  "strip-ansi": 'export { stripAnsi as default } from "./light-width.ts";',
  "wrap-ansi": 'export { wrapAnsi as default } from "./light-width.ts";',
  assert: "export const notStrictEqual = () => undefined; export const strictEqual = () => undefined;",
};

const lightParser = {
  name: "light-parser",
  setup(bundler) {
    bundler.onResolve({ filter: new RegExp(`^(${Object.keys(standIns).join("|")})$`) }, ({ path, importer }) =>
      /node_modules.(cliui|yargs)\b/.test(importer) ? { path, namespace: "light-parser" } : undefined,
    );
    bundler.onLoad({ filter: /.*/, namespace: "light-parser" }, ({ path }) => ({
      contents: standIns[path],
      resolveDir: here("src/render"),
    }));
  },
};

/** `main` asks for the bundles beside it. */
const ownFiles = {
  name: "own-files",
  setup(bundler) {
    bundler.onResolve({ filter: /^\.\/(commands\/[\w/-]+|suggest)\.ts$/ }, ({ path }) => ({
      path: `./${basename(path, ".ts")}.cjs`,
      external: true,
    }));
  },
};

// A build that fails leaves the last good bundle where it is.
const fresh = here("bundle-fresh");
rmSync(fresh, { recursive: true, force: true });
await build({
  entryPoints: {
    main: here("src/main.ts"),
    suggest: here("src/suggest.ts"),
    ...Object.fromEntries(commands.map((name) => [basename(name), here(`src/commands/${name}.ts`)])),
  },
  outdir: fresh,
  outExtension: { ".js": ".cjs" },
  bundle: true,
  minify: true,
  format: "cjs",
  platform: "node",
  target: "node20.19",
  conditions: ["@noodlewright/source"],
  supported: { "dynamic-import": false },
  define: { "import.meta.url": "importMetaUrl" },
  banner: { js: 'const importMetaUrl = require("node:url").pathToFileURL(__filename).href;' },
  plugins: [lightParser, ownFiles],
  legalComments: "linked",
  logLevel: "warning",
});

// The bundler leaves letters beyond ASCII in regular expressions only, where an escape says the same. Pure ASCII is read
// and compiled faster.
for (const name of readdirSync(fresh).filter((file) => file.endsWith(".cjs"))) {
  const escaped = readFileSync(join(fresh, name), "utf8").replace(
    /[^\0-\x7f]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
  writeFileSync(join(fresh, name), escaped);
}

rmSync(here("bundle"), { recursive: true, force: true });
renameSync(fresh, here("bundle"));

/** One run of each command that goes through most of its work; stdin carries a spec to those that take one. */
const spec =
  "name: warm-up\nflours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36 % }\nalkali: [{ name: sodium carbonate, amount: 1 % }]\nbatch: { dough: 5 kg }\nprices: { bread flour: 0.90 EUR/kg }\nmachines: { pin: { width: 300 mm, gap: { least: 1 mm, greatest: 9 mm }, cutters: [{ size: 20 }] } }\nsheet: { machine: pin, thickness: 2 mm, cutter: 20, start: 9 mm, portion: 130 g }\ntemperature: { dough: 25 °C, flour: 20 °C, room: 20 °C }\nplan: { serve: '12:15', mix: 15 min, cut: 10 min }\n";
const runs = [
  ["--help"],
  ["formula", "-"],
  ["blend", "-", "--protein", "11.5 %", "--shelf", "cake flour", "--shelf", "vital wheat gluten"],
  ["replace", "-", "--missing", "bread flour", "--shelf", "cake flour", "--shelf", "vital wheat gluten"],
  ["lot", "-", "--of", "bread flour", "--protein", "12 %", "--within", "5 %"],
  ["trial", "-"],
  ["tolerance", "-", "--runs", "100"],
  ["batch", "-"],
  ["cost", "-"],
  ["nutrition", "-"],
  ["sheet", "-"],
  ["plan", "-"],
  ["water-temperature", "-"],
  ["calibrate", "cooking", "--raw", "500 g", "--cooked", "880 g"],
  ["card", "-"],
  ["alkali", "convert", "Na2CO3 60 %, K2CO3 40 %", "sodium carbonate", "--dose", "1 %"],
  ["materials", "rye"],
  ["schema"],
  ["new", "-"],
];
for (const args of runs) {
  const { status, stderr } = spawnSync(process.execPath, [here("bin/noodlewright.cjs"), ...args], {
    input: spec,
    env: { ...process.env, NOODLEWRIGHT_KEEP_CODE: "1" },
  });
  if (status !== 0) throw new Error(`the warm-up \`${args.join(" ")}\` ended with ${status}: ${stderr}`);
}
