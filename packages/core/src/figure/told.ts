import type { Facts, Problem, ProblemIn } from "./problem.ts";
import type { Entry, Sentences } from "./problems/entry.ts";
import { catalogue } from "./problems/index.ts";

/** A problem in words. */
export interface Told extends Sentences {
  readonly kind: Entry<never>["kind"];
}

/**
 * What tells the problems of a catalogue.
 *
 * @example telling({ "a.none": input(() => ({ found: "none", expected: "some", advice: "add one" })) })({ code: "a.none", path: [], facts: {} }).advice // => "add one"
 */
export function telling<Facts>(catalogue: { readonly [Code in keyof Facts]: Entry<Facts[Code]> }) {
  return <Code extends keyof Facts>({ code, path, facts }: ProblemIn<Facts, Code>): Told => {
    const { kind, say } = catalogue[code];
    return { kind, ...say(facts, path) };
  };
}

/**
 * Tells a problem in words: whose fault it is, what was found, what was expected, what to do.
 *
 * @example told({ code: "stock.no-alkali", path: [], facts: {} }).advice // => "name a product instead"
 */
export const told = telling<Facts>(catalogue);

/** A problem within a sentence, for a note on what cannot be told. */
export function whyNot(problem: Problem): string {
  const { found, expected } = told(problem);
  return `found ${found}, expected ${expected}`;
}
