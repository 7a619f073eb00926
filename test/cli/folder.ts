import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";

/** An empty folder for the tests of one file, gone after them. */
export function folderFor(files: Readonly<Record<string, string | Uint8Array>> = {}): string {
  const folder = mkdtempSync(join(tmpdir(), "noodlewright-test-"));
  for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
