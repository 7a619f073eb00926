#!/usr/bin/env node
// Loads the bundled command. Node.js 22.1 and later keeps compiled code in a cache of its own, which it checks.
const bundle = new URL("../bundle/main.js", import.meta.url);
if (process.getBuiltinModule("node:fs").existsSync(bundle)) {
  process.getBuiltinModule("node:module").enableCompileCache?.();
  await import(bundle.href);
} else {
  process.stderr.write("noodlewright: the command is not built yet; run `npm run build` first\n");
  process.exitCode = 70;
}
