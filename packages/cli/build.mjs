import { rm } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

/** Bundles the command: one small entry, and chunks that each command loads when it needs them. */
const here = (path) => fileURLToPath(new URL(path, import.meta.url));

await rm(here("bundle"), { recursive: true, force: true });
await build({
  entryPoints: { main: here("src/main.ts") },
  outdir: here("bundle"),
  bundle: true,
  splitting: true,
  minify: true,
  format: "esm",
  platform: "node",
  target: "node20.19",
  conditions: ["@noodlewright/source"],
  legalComments: "linked",
  chunkNames: "part-[hash]",
  banner: {
    // Packages written as CommonJS ask for node's own modules by require.
    js: "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);",
  },
  logLevel: "warning",
});
