import type { Outcome } from "@noodlewright/core";
import { toldOf } from "../told-of.ts";

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
