import { fileProblem } from "../input/file-problems.ts";
import type { TextFile } from "../input/read-file.ts";
import { type NewValue, withValues } from "../input/written-values.ts";
import { type ExitStatus, exit, type Io } from "../io.ts";
import { printProblems } from "./answer.ts";
import type { Asked, Flag } from "./command.ts";
import { forceFlag, writeFiles } from "./write-output.ts";

/** Flags of a command that can write its answer into the spec. */
export const writeFlags = {
  write: { describe: "Write the amounts into the spec file itself", kind: "switch" },
  out: {
    describe: "Write the spec with the amounts to another file",
    kind: "text",
    placeholder: "found.yaml",
    letter: "o",
  },
  ...forceFlag,
} as const satisfies Readonly<Record<string, Flag>>;

/** Writes a spec with other amounts, where a flag says so; nothing else in it changes. */
export async function writeSpec(
  file: TextFile | undefined,
  values: readonly NewValue[],
  asked: Asked,
  io: Io,
): Promise<ExitStatus> {
  const out = asked.text("out");
  if ((out === undefined && !asked.on("write")) || file === undefined) return exit.done;
  const wrong = (code: string, found: string, expected: string, advice: string): Promise<ExitStatus> =>
    printProblems(
      [{ ...fileProblem(code, found, expected, advice), file: file.name }],
      asked,
      io,
      "nothing was written",
    );
  if (asked.list("set").length > 0) {
    return wrong(
      "write.set",
      "a value that --set says and the file does not",
      "amounts found for what the file says",
      "write the value into the file first",
    );
  }
  if (out === undefined && asked.text("spec") === "-") {
    return wrong(
      "write.no-file",
      "standard input",
      "a file to write into",
      "name the file, or write to another one with -o",
    );
  }
  const text = withValues(file, values);
  if (text === undefined) {
    return wrong(
      "write.shared",
      "an amount that other places take over, or that cannot be changed where it stands",
      "an amount of its own at each place",
      "write the amounts out where anchors and aliases stand for them",
    );
  }
  const path = out ?? asked.text("spec") ?? "";
  const over = out === undefined ? "input" : asked.on("force") ? "any" : "nothing";
  const status = await writeFiles([{ path, text }], over, asked, io);
  if (status === exit.done)
    io.err(`Wrote ${path}: ${values.length === 1 ? "1 amount" : `${values.length} amounts`}.\n`);
  return status;
}
