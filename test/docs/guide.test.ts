import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { afterAll, expect, test } from "vitest";

// The library's guide is a program: its pieces of code, one after the other.
const root = fileURLToPath(new URL("../..", import.meta.url));
const guide = readFileSync(join(root, "packages/core/README.md"), "utf8");
const program = [...guide.matchAll(/```ts\n([\s\S]*?)```/gu)].map(([, piece]) => piece).join("\n");
const says = [...program.matchAll(/^\/\/ =>(.*)$/gmu)].map(([, text = ""]) => text.trim());

const folder = mkdtempSync(join(root, "node_modules/.guide-"));
const file = join(folder, "guide.ts");
writeFileSync(file, program);
afterAll(() => rmSync(folder, { recursive: true }));

test("the guide's code has the types it should have", () => {
  const settings = { extends: "../../test/tsconfig.json", include: [], files: ["guide.ts"], references: [] };
  // As a user has it: the declarations of the packed library and not its sources.
  const compilerOptions = { incremental: false, tsBuildInfoFile: null, rootDir: "../..", customConditions: [] };
  writeFileSync(join(folder, "tsconfig.json"), JSON.stringify({ ...settings, compilerOptions }));
  const { stdout, status } = spawnSync(
    process.execPath,
    [join(root, "node_modules/typescript/bin/tsc"), "-p", folder],
    {
      encoding: "utf8",
    },
  );
  expect(stdout).toBe("");
  expect(status).toBe(0);
});

test("the guide's code prints what the guide says", async () => {
  expect(says.length).toBeGreaterThan(8);
  const { outputFiles } = await build({
    entryPoints: [file],
    bundle: true,
    write: false,
    format: "esm",
    platform: "node",
    conditions: ["@noodlewright/source"],
    logLevel: "silent",
  });
  const { stdout, stderr } = spawnSync(process.execPath, ["--input-type=module", "-"], {
    input: outputFiles[0]?.contents ?? "",
    encoding: "utf8",
  });
  expect(stderr).toBe("");
  expect(stdout.trimEnd().split("\n")).toEqual(says);
});
