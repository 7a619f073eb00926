import { type Outcome, type Problem, told } from "@noodlewright/core";
import type { Told } from "@noodlewright/core/figure";

/** A problem with its sentences. */
export type Worded = Told & Pick<Problem, "code" | "path">;

/** The problems of an outcome with their sentences; none where it is an answer. */
export function toldOf(outcome: Outcome<unknown>): readonly Worded[] {
  return outcome.ok ? [] : outcome.problems.map((problem) => ({ ...problem, ...told(problem) }));
}

/** The answer of an outcome; the test fails where there is none. */
export function answered<T>(outcome: Outcome<T>): T {
  if (!outcome.ok)
    throw new Error(
      toldOf(outcome)
        .map(({ code, found }) => `${code}: ${found}`)
        .join("; "),
    );
  return outcome.value;
}

/** The codes of the problems of an outcome. */
export function codesOf(outcome: Outcome<unknown>): readonly string[] {
  return outcome.ok ? [] : outcome.problems.map(({ code }) => code);
}
