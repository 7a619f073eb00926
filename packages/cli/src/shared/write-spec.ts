import { type SpecChange, yamlLines } from "@noodlewright/core/spec";
import { parseFile } from "../input/document.ts";
import type { PlacedProblem } from "../input/placed-problem.ts";
import { ownProblem } from "../input/problem.ts";
import type { TextFile } from "../input/read-file.ts";
import { sharedValue, withChanges } from "../input/written-values.ts";
import { type ExitStatus, exit, type Io } from "../io.ts";
import { printProblems } from "./answer.ts";
import type { Asked, Flag } from "./command.ts";
import { forceFlag, writeFiles } from "./write-output.ts";

/** Flags of a command that can write its answer into the spec. */
export const writeFlags = {
  write: { describe: "Write the answer into the spec file itself; nothing else in it changes", kind: "switch" },
  out: { describe: "Write the spec with the answer in it to another file", placeholder: "found.yaml", letter: "o" },
  ...forceFlag,
} as const satisfies Readonly<Record<string, Flag>>;

/** Whether a flag says that the spec is to be written. */
export function writes(asked: Asked): boolean {
  return asked.on("write") || asked.text("out") !== undefined;
}

/** Writes a spec with changes to where the flags say; nothing else in it changes. */
export async function writeSpec(
  file: TextFile | undefined,
  changes: readonly SpecChange[],
  asked: Asked,
  io: Io,
): Promise<ExitStatus> {
  const out = asked.text("out");
  if (asked.on("write") && out !== undefined) {
    return printProblems([{ ...ownProblem("write.both", {}), flag: "--write" }], asked, io, "nothing was written");
  }
  if (file === undefined || changes.length === 0) {
    io.err("Nothing was written: nothing in the spec would be other than it is.\n");
    return exit.done;
  }
  const wrong = (problem: PlacedProblem): Promise<ExitStatus> =>
    printProblems([{ ...problem, file: file.name }], asked, io, "nothing was written");
  if (asked.list("set").length > 0) return wrong(ownProblem("write.set", {}));
  if (out === undefined && asked.text("spec") === "-") return wrong(ownProblem("write.no-file", {}));
  const text = withChanges(file, changes);
  if (text === undefined) return wrong(notWritten(file, changes));
  const path = out ?? asked.text("spec") ?? "";
  const over = out === undefined ? "input" : asked.on("force") ? "any" : "nothing";
  const status = await writeFiles([{ path, text }], over, asked, io);
  if (status === exit.done)
    io.err(`Wrote ${path}: ${changes.length === 1 ? "1 change" : `${changes.length} changes`}.\n`);
  return status;
}

/** Why a change cannot be written, at the place that is in its way. */
function notWritten(file: TextFile, changes: readonly SpecChange[]): PlacedProblem {
  const shared = sharedValue(file, changes);
  const parsing = parseFile(file);
  if (shared === undefined) {
    const [first] = [...changes.filter((change) => withChanges(file, [change]) === undefined), ...changes];
    const path = first?.path ?? [];
    const line = yamlLines(String(path.at(-1)), first?.value, 0, 0).join("");
    const problem = { ...ownProblem("write.in-place", { line }), path };
    return parsing.ok ? parsing.parsed.place(problem) : problem;
  }
  const { anchor, stands, start, end, others } = shared;
  const lines = others.map((index) => String(file.text.slice(0, index).split("\n").length));
  const problem = ownProblem("write.shared", { anchor, stands, lines });
  return parsing.ok ? parsing.parsed.at({ problem, span: [start, end] }) : problem;
}
