import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Report } from "@noodlewright/core";
import { expect } from "vitest";
import { reportSchema } from "#core/report/schema.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const command = fileURLToPath(new URL("../../packages/cli/bin/noodlewright.cjs", import.meta.url));
const bundle = fileURLToPath(new URL("../../packages/cli/bundle/main.cjs", import.meta.url));

/** How a run of the built command ended. */
export interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

interface Surroundings {
  readonly input?: string | Uint8Array;
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
}

/** Runs the built command as a process of its own, from the root of the project. */
export function runBuilt(args: readonly string[], { input = "", cwd = root, env = {} }: Surroundings = {}): Ended {
  if (!existsSync(bundle)) throw new Error("the command is not built; run `npm run build` before the tests");
  const { status, stdout, stderr, error } = spawnSync(process.execPath, [command, ...args], {
    cwd,
    input,
    encoding: "utf8",
    maxBuffer: 64_000_000,
    env: { ...process.env, NO_COLOR: "1", ...env },
  });
  // A command that has seen enough of its input closes the pipe, which is no failure.
  if (error && !("code" in error && error.code === "EPIPE")) throw error;
  return { status, stdout, stderr };
}

/** What the built command answers, with nothing to say besides. */
export function answered(args: readonly string[], surroundings?: Surroundings): string {
  const { status, stdout, stderr } = runBuilt(args, surroundings);
  expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  return stdout;
}

/** The report that it answers with. */
export function reported(args: readonly string[], surroundings?: Surroundings): Report {
  return reportSchema.parse(JSON.parse(answered([...args, "--format", "json"], surroundings)));
}
