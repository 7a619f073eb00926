import { printable } from "@noodlewright/core/render";
import type { PlacedProblem } from "../input/placed-problem.ts";
import { ownProblem } from "../input/problem.ts";
import { type ExitStatus, exit, type Io, type OutFile, type WriteFault, type WriteOver } from "../io.ts";
import { printProblems } from "./answer.ts";
import type { Asked, Flag } from "./command.ts";

/** Lets a command write over any file but its input. */
export const forceFlag = {
  force: { describe: "Write over a file even where noodlewright did not write it", kind: "switch" },
} as const satisfies Readonly<Record<string, Flag>>;

/** What `--force` says may be written over. */
export function writeOver(asked: Asked): WriteOver {
  return asked.on("force") ? "any" : "own";
}

/** Writes an answer to the file that was named, or to standard output. */
export async function writeOutput(path: string | undefined, text: string, asked: Asked, io: Io): Promise<ExitStatus> {
  if (path === undefined || path === "-") {
    io.out(text);
    return exit.done;
  }
  const status = await writeFiles([{ path, text }], writeOver(asked), asked, io);
  if (status === exit.done) io.err(`Wrote ${printable(path)}.\n`);
  return status;
}

/** Writes files whole or not at all; says what keeps it from that. */
export async function writeFiles(
  files: readonly OutFile[],
  over: WriteOver,
  asked: Asked,
  io: Io,
): Promise<ExitStatus> {
  const fault = await io.writeFiles(files, over);
  return fault === undefined ? exit.done : printProblems([unwritable(fault)], asked, io, "nothing was written");
}

function unwritable({ path, why, code }: WriteFault): PlacedProblem {
  if (why !== "failed" && why !== "no-file") return { ...ownProblem(`file.${why}`, {}), file: path };
  const error = why === "no-file" ? "no file" : code;
  return { ...ownProblem("file.unwritable", error === undefined ? {} : { error }), file: path };
}
