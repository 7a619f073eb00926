import { printable } from "@noodlewright/core/render";
import type { PlacedProblem } from "../input/placed-problem.ts";
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

const expected = "a file in a folder that is there";
const reasons: Readonly<
  Record<WriteFault["why"], readonly [code: string, found: string, expected: string, advice: string]>
> = {
  there: ["file.there", "a file of this name", "a new file", "name another file: this one is kept as it is"],
  input: ["file.input", "a file that this answer was read from", "another file", "name another file"],
  foreign: [
    "file.foreign",
    "a file that noodlewright did not write",
    "a new file, or one that it wrote",
    "name another file, or write over it with --force",
  ],
  "no-file": ["file.unwritable", "a folder, a pipe or a device", expected, "name a file, or print with -"],
  failed: ["file.unwritable", "a file that cannot be written", expected, "check the folder and the room on the disk"],
};

function unwritable({ path, why, code }: WriteFault): PlacedProblem {
  const [name, found, right, advice] = reasons[why];
  const told = why === "failed" && code !== undefined ? `${found} (${code})` : found;
  return { code: name, kind: "input", path: [], found: told, expected: right, advice, file: path };
}
