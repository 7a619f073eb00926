import { resolve } from "node:path";
import { batchCommand } from "#cli/commands/batch.ts";
import { formulaCommand } from "#cli/commands/formula.ts";
import { materialsCommand } from "#cli/commands/materials.ts";
import { type Listed, run } from "#cli/run.ts";
import { systemIo } from "#cli/system-io.ts";
import type { Ended } from "./built.ts";

/** A few commands as the table of the command has them. */
const commands: readonly Listed[] = [
  { usage: "formula <spec>", describe: "", load: async () => formulaCommand },
  { usage: "batch <spec>", describe: "", load: async () => batchCommand },
  { usage: "materials [words..]", describe: "", load: async () => materialsCommand },
];

interface Surroundings {
  readonly cwd?: string;
  readonly commands?: readonly Listed[];
}

/** Runs the sources of the command in this process, which is quick; a process of its own is `runBuilt`. */
export async function runHere(args: readonly string[], surroundings: Surroundings = {}): Promise<Ended> {
  const real = systemIo();
  let stdout = "";
  let stderr = "";
  const status = await run(args, surroundings.commands ?? commands, {
    ...real,
    readFile: (path, most) => real.readFile(resolve(surroundings.cwd ?? ".", path), most),
    out: (text) => {
      stdout += text;
    },
    err: (text) => {
      stderr += text;
    },
    width: 100,
    colour: () => false,
    colourOfErrors: () => false,
  });
  return { status, stdout, stderr };
}
