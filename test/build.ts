import { execFileSync } from "node:child_process";
import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const sources = [
  "packages/core/src",
  "packages/cli/src",
  "packages/cli/bin",
  "packages/cli/build.mjs",
  "packages/cli/notices.mjs",
];

/** Builds the command before the tests that run it, where that was not done since its sources last changed. */
export function setup(): void {
  const built = statSync(join(root, "packages/cli/bundle/main.cjs"), { throwIfNoEntry: false })?.mtimeMs ?? 0;
  if (Math.max(...sources.map((path) => newest(join(root, path)))) < built) return;
  execFileSync("npm", ["run", "--silent", "build"], { cwd: root, stdio: "inherit" });
}

/** When a file, or the latest of a folder, was changed. */
function newest(path: string): number {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))));
}
