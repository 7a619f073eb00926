#!/usr/bin/env node
"use strict";

// Loads the bundled command with the compiled code that the build kept beside it, which saves half of the start-up.
// Compiled code of another Node.js release is refused by the engine, and the file is compiled anew.

const { existsSync, readFileSync } = require("node:fs");
const { createRequire } = require("node:module");
const { dirname, join } = require("node:path");
const { Script } = require("node:vm");

const bundle = join(__dirname, "..", "bundle");
const loaded = new Map();

function load(file) {
  const known = loaded.get(file);
  if (known !== undefined) return known.module.exports;
  const source = readFileSync(file, "latin1"); // the bundler writes ASCII only
  const compiled = `${file}.code`;
  const cachedData = existsSync(compiled) ? readFileSync(compiled) : undefined;
  const wrapped = `(function (exports, require, module, __filename, __dirname) {${source}\n})`;
  const script = new Script(wrapped, { filename: file, ...(cachedData && { cachedData }) });
  const module = { exports: {} };
  loaded.set(file, { module, script });
  const outside = createRequire(file);
  const own = (name) => (name.startsWith("./") ? load(join(dirname(file), name)) : outside(name));
  script.runInThisContext().call(module.exports, module.exports, own, module, file, dirname(file));
  return module.exports;
}

if (!existsSync(join(bundle, "main.cjs"))) {
  process.stderr.write("noodlewright: the command is not built yet; run `npm run build` first\n");
  process.exitCode = 70;
} else {
  load(join(bundle, "main.cjs"));
}

// The build asks for the compiled code once the work of a run is done.
if (process.env.NOODLEWRIGHT_KEEP_CODE !== undefined) {
  process.on("exit", () => {
    const { writeFileSync } = require("node:fs");
    for (const [file, { script }] of loaded) writeFileSync(`${file}.code`, script.createCachedData());
  });
}
