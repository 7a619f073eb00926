import { type ExitStatus, exit, type Io } from "../io.ts";
import { printable } from "../render/printable.ts";
import { printProblems } from "./answer.ts";
import type { Asked } from "./command.ts";

/** Writes an answer to the file that was named, or to standard output. */
export async function writeOutput(path: string | undefined, text: string, asked: Asked, io: Io): Promise<ExitStatus> {
  if (path === undefined || path === "-") {
    io.out(text);
    return exit.done;
  }
  try {
    await io.writeFile(path, text);
  } catch (error) {
    const code = error instanceof Error && "code" in error ? ` (${String(error.code)})` : "";
    const found = `${path}, which cannot be written${code}`;
    const expected = "a file in a folder that is there";
    const problem = {
      code: "file.unwritable",
      kind: "input",
      path: [],
      found,
      expected,
      advice: "name another file",
    } as const;
    return printProblems([{ ...problem, flag: "--out" }], asked, io);
  }
  io.err(`Wrote ${printable(path)}.\n`);
  return exit.done;
}
