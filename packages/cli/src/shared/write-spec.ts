import { ownProblem } from "../input/problem.ts";
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

/** Whether a flag says that the spec is to be written. */
export function writes(asked: Asked): boolean {
  return asked.on("write") || asked.text("out") !== undefined;
}

/** Writes a spec with other amounts to where the flags say; nothing else in it changes. */
export async function writeSpec(
  file: TextFile | undefined,
  values: readonly NewValue[],
  asked: Asked,
  io: Io,
): Promise<ExitStatus> {
  const out = asked.text("out");
  if (file === undefined || values.length === 0) {
    io.err("Nothing was written: no amount is another than it was.\n");
    return exit.done;
  }
  const wrong = (code: "write.set" | "write.no-file" | "write.shared"): Promise<ExitStatus> =>
    printProblems([{ ...ownProblem(code, {}), file: file.name }], asked, io, "nothing was written");
  if (asked.list("set").length > 0) {
    return wrong("write.set");
  }
  if (out === undefined && asked.text("spec") === "-") {
    return wrong("write.no-file");
  }
  const text = withValues(file, values);
  if (text === undefined) {
    return wrong("write.shared");
  }
  const path = out ?? asked.text("spec") ?? "";
  const over = out === undefined ? "input" : asked.on("force") ? "any" : "nothing";
  const status = await writeFiles([{ path, text }], over, asked, io);
  if (status === exit.done)
    io.err(`Wrote ${path}: ${values.length === 1 ? "1 amount" : `${values.length} amounts`}.\n`);
  return status;
}
