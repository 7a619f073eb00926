// Prints how large the library is for a browser, minified and compressed: all of it, and what a formula and a batch take,
// with reports and the sentences in them, and without.
// node test/bench/browser.mjs [--json FILE]
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";

const { values } = parseArgs({ options: { json: { type: "string" } } });
const [door, answers] = ["index.ts", "noodle/index.ts"].map((path) =>
  JSON.stringify(fileURLToPath(new URL(`../../packages/core/src/${path}`, import.meta.url))),
);
const entries = {
  "all of the library": `export * from ${door};`,
  "formula and batch": `export { askBatch, askFormula, readStatedNoodle } from ${door};`,
  "without reports": `export { readStatedNoodle } from ${door}; export { plannedBatch } from ${answers};`,
};

const rows = [];
for (const [name, contents] of Object.entries(entries)) {
  const { outputFiles, metafile } = await build({
    stdin: { contents, resolveDir: fileURLToPath(new URL(".", import.meta.url)) },
    bundle: true,
    write: false,
    minify: true,
    metafile: true,
    format: "esm",
    platform: "browser",
    target: "es2022",
    legalComments: "none",
    conditions: ["@noodlewright/source"],
  });
  const parts = {};
  for (const [path, { bytesInOutput }] of Object.values(metafile.outputs).flatMap(({ inputs }) =>
    Object.entries(inputs),
  )) {
    const part = /node_modules\/([^/]+)/.exec(path)?.[1] ?? /core\/src\/([^/]+)/.exec(path)?.[1] ?? "other";
    parts[part] = (parts[part] ?? 0) + bytesInOutput;
  }
  rows.push({ name, bytes: gzipSync(outputFiles[0].contents, { level: 9 }).length, parts });
}
for (const { name, bytes, parts } of rows) {
  console.log(`${name.padEnd(20)} ${(bytes / 1000).toFixed(1).padStart(6)} kB compressed`);
  const largest = Object.entries(parts).sort(([, a], [, b]) => b - a);
  console.log(`  before: ${largest.map(([part, size]) => `${part} ${(size / 1000).toFixed(0)}`).join(", ")} kB`);
}
if (values.json !== undefined) writeFileSync(values.json, `${JSON.stringify({ rows }, null, 2)}\n`);
