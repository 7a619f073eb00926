#!/usr/bin/env node
// Loads the bundled command. Node.js 22.1 and later keeps compiled code in a cache of its own, which it checks.
const { existsSync } = process.getBuiltinModule("node:fs");
const { createRequire, enableCompileCache } = process.getBuiltinModule("node:module");
if (existsSync(new URL("../bundle/main.cjs", import.meta.url))) {
  enableCompileCache?.();
  createRequire(import.meta.url)("../bundle/main.cjs");
} else {
  process.stderr.write("noodlewright: the command is not built yet; run `npm run build` first\n");
  process.exitCode = 70;
}
