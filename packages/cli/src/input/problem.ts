import type { Problem } from "@noodlewright/core";
import type { FactsOf, ProblemIn } from "@noodlewright/core/figure";
import type { catalogue } from "../render/problem-texts.ts";

/** The facts of every problem that the command line itself has: files, flags and words. */
export type OwnFacts = FactsOf<typeof catalogue>;

/** A problem of the library, or of the command line itself. */
export type AnyProblem = Problem | ProblemIn<OwnFacts>;

/** Makes a problem of the command line itself. */
export function ownProblem<Which extends keyof OwnFacts>(
  code: Which,
  facts: OwnFacts[Which],
): ProblemIn<OwnFacts, Which> {
  return { code, path: [], facts };
}
