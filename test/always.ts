import fc from "fast-check";

/** Holds what is checked against so many random cases, each of a value of every arbitrary. */
export function always<Values extends [unknown, ...unknown[]]>(
  runs: number,
  arbitraries: { [At in keyof Values]: fc.Arbitrary<Values[At]> },
  check: (...values: Values) => void,
): void {
  fc.assert(fc.property<Values>(...arbitraries, check), { numRuns: runs });
}
