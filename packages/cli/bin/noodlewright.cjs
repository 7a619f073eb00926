#!/usr/bin/env node
// Loads the bundled command. Node.js 22.1 and later keeps compiled code in a cache of its own, which it checks.
const { existsSync } = require("node:fs");
if (existsSync(`${__dirname}/../bundle/main.cjs`)) {
  require("node:module").enableCompileCache?.();
  require("../bundle/main.cjs");
} else {
  process.stderr.write("noodlewright: the command is not built yet; run `npm run build` first\n");
  process.exitCode = 70;
}
