import { resolve } from "node:path";
import type { Asker } from "#cli/io.ts";
import { run } from "#cli/run.ts";
import type { Listed } from "#cli/shared/command.ts";
import { systemIo } from "#cli/system-io.ts";
import { commands } from "#cli/table.ts";
import type { Ended } from "./built.ts";

interface Surroundings {
  readonly cwd?: string;
  readonly commands?: readonly Listed[];
  /** What somebody at a terminal answers, in this order; then they break off. */
  readonly answers?: readonly string[];
  readonly input?: string;
  readonly width?: number;
}

/** Runs the sources of the command in this process, which is quick; a process of its own is `runBuilt`. */
export async function runHere(args: readonly string[], surroundings: Surroundings = {}): Promise<Ended> {
  const real = systemIo();
  let stdout = "";
  let stderr = "";
  const say = (text: string): void => {
    stderr += text;
  };
  const status = await run(args, surroundings.commands ?? commands, {
    ...real,
    readFile: (path, most) => real.readFile(resolve(surroundings.cwd ?? ".", path), most),
    listFolder: (path) => real.listFolder(resolve(surroundings.cwd ?? ".", path)),
    writeFiles: (files, over) => {
      const here = files.map((file) => ({ ...file, path: resolve(surroundings.cwd ?? ".", file.path) }));
      return real.writeFiles(here, over);
    },
    out: (text) => {
      stdout += text;
    },
    err: say,
    asker: async () => (surroundings.answers === undefined ? undefined : answering(surroundings.answers, say)),
    stdinIsTerminal: () => surroundings.answers !== undefined,
    readStdin: async () => Buffer.from(surroundings.input ?? ""),
    width: surroundings.width ?? 100,
    colour: () => false,
    colourOfErrors: () => false,
  });
  return { status, stdout, stderr };
}

/** Somebody who has their answers ready; what they are asked goes to standard error. */
function answering(answers: readonly string[], say: (text: string) => void): Asker {
  const waiting = [...answers];
  const next = async (prompt: string): Promise<string | undefined> => {
    say(prompt);
    return waiting.shift();
  };
  return { line: next, lines: next, close: () => undefined };
}
