import { type Outcome, type Problem, told } from "@noodlewright/core";
import type { Told } from "@noodlewright/core/figure";

/** A problem with its sentences. */
export type Worded = Told & Pick<Problem, "code" | "path">;

/** The problems of an outcome with their sentences; none where it is an answer. */
export function toldOf(outcome: Outcome<unknown>): readonly Worded[] {
  return outcome.ok ? [] : outcome.problems.map((problem) => ({ ...problem, ...told(problem) }));
}
