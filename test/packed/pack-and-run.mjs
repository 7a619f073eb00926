import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

// Packs both packages as they would be published, installs them into an empty folder, and runs them there.
// They are packed as `npm run build` left them: building anew here would pull the bundle from under other tests.

const root = fileURLToPath(new URL("../..", import.meta.url));
const version = JSON.parse(readFileSync(join(root, "packages/cli/package.json"), "utf8")).version;

function run(folder, program, ...args) {
  const { status, stdout, stderr } = spawnSync(program, args, {
    cwd: folder,
    encoding: "utf8",
    env: { ...process.env, NO_COLOR: "1", npm_config_update_notifier: "false" },
  });
  if (status !== 0) throw new Error(`\`${program} ${args.join(" ")}\` ended with ${status}:\n${stdout}${stderr}`);
  return stdout;
}

/** The files of a package once packed, and the tarball. */
function pack(name, folder) {
  const packing = run(
    join(root, "packages", name),
    "npm",
    "pack",
    "--ignore-scripts",
    "--json",
    "--pack-destination",
    folder,
  );
  const [{ filename, files, size, unpackedSize }] = JSON.parse(packing);
  return { tarball: join(folder, filename), files: files.map(({ path }) => path).sort(), size, unpackedSize };
}

/** What came of it, for the test and for people. */
export function packAndRun() {
  const folder = mkdtempSync(join(tmpdir(), "noodlewright-packed-"));
  try {
    const core = pack("core", folder);
    const cli = pack("cli", folder);
    writeFileSync(join(folder, "package.json"), '{ "private": true, "type": "module" }\n');
    run(
      folder,
      "npm",
      "install",
      "--prefer-offline",
      "--no-audit",
      "--no-fund",
      "--ignore-scripts",
      core.tarball,
      cli.tarball,
    );
    cpSync(join(root, "examples"), join(folder, "examples"), { recursive: true });
    const spec = "{ name: 'plain', flours: [{ name: 'bread flour', amount: '100 %' }], water: { added: '36 %' } }";
    const program = `import { askFormula, readNoodle } from "@noodlewright/core";
const outcome = readNoodle(${spec});
if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
console.log(JSON.stringify(askFormula(outcome.value).report().figures));`;
    return {
      version,
      core,
      cli,
      installed: Object.keys(JSON.parse(run(folder, "npm", "ls", "--all", "--json")).dependencies).sort(),
      printedVersion: run(folder, "npx", "--no-install", "noodlewright", "--version").trim(),
      formula: run(folder, "npx", "--no-install", "noodlewright", "formula", "examples/school-noodle.yaml"),
      formulaHere: run(
        root,
        process.execPath,
        "packages/cli/bin/noodlewright.cjs",
        "formula",
        "examples/school-noodle.yaml",
      ),
      figures: JSON.parse(run(folder, process.execPath, "--input-type=module", "--eval", program)),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const { core, cli, installed, printedVersion } = packAndRun();
  process.stdout.write(
    `packed core: ${core.files.length} files, ${core.size} bytes\npacked cli: ${cli.files.length} files, ${cli.size} bytes\ninstalled ${installed.join(", ")}; noodlewright ${printedVersion} runs\n`,
  );
}
