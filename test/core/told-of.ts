import { type Outcome, type Problem, type Told, told } from "@noodlewright/core";

/** A problem with its sentences. */
export type Worded = Told & Pick<Problem, "code" | "path">;

/** The problems of an outcome with their sentences; none where it is an answer. */
export function toldOf(outcome: Outcome<unknown>): readonly Worded[] {
  return outcome.ok ? [] : outcome.problems.map((problem) => ({ ...problem, ...told(problem) }));
}
