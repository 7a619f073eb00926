import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import manifest from "../../packages/core/package.json" with { type: "json" };

interface Notices {
  readonly bundledPackages: (parts: readonly (readonly [path: string, bytes: number])[]) => readonly string[];
  readonly notices: (folders: readonly string[]) => string;
}

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const { bundledPackages, notices }: Notices = await import(here("../../packages/cli/notices.mjs"));

describe("the notices of bundled packages", () => {
  const folder = mkdtempSync(join(tmpdir(), "noodlewright-notices-"));

  beforeAll(() => {
    for (const name of ["with", "without"]) {
      mkdirSync(join(folder, name));
      writeFileSync(join(folder, name, "package.json"), JSON.stringify({ name, version: "1.2.3" }));
    }
    writeFileSync(join(folder, "with", "licence.md"), "You may.\n");
  });

  afterAll(() => rmSync(folder, { recursive: true }));

  test("give the licence of each package as it stands", () => {
    expect(notices([join(folder, "with")])).toContain("with 1.2.3\n\nYou may.\n");
  });

  test("are refused where a package has no licence file", () => {
    expect(() => notices([join(folder, "with"), join(folder, "without")])).toThrow(
      "without 1.2.3 is in the bundle and has no licence file",
    );
  });

  test("are of the packages of which something is left in the bundle", () => {
    const parts = [
      ["packages/cli/src/main.ts", 9],
      ["node_modules/used/a.js", 1],
      ["node_modules/used/node_modules/@inner/part/b.js", 2],
      ["node_modules/shaken-off/c.js", 0],
    ] as const;
    expect(bundledPackages(parts)).toEqual(["node_modules/used", "node_modules/used/node_modules/@inner/part"]);
  });

  test("of the built command hold the licences of what the core computes with", () => {
    const text = readFileSync(here("../../packages/cli/bundle/notices.txt"), "utf8");
    for (const name of ["yaml", ...Object.keys(manifest.dependencies)]) {
      const licence = notices([here(`../../node_modules/${name}`)]).split("-".repeat(72))[1] ?? "";
      expect(licence.length).toBeGreaterThan(500);
      expect(text).toContain(licence.trim());
    }
  });
});
