import { type Decimal, dec, decimalText } from "../number/decimal.ts";
import { type Limit, limitRow, reached } from "./blend-limits.ts";
import { type Row, rowValue, type StepProblem } from "./step-problem.ts";
import { anySteps, smallestSteps } from "./step-search.ts";

/** The furthest a quantity can go towards its limit, and the steps that get there. */
export interface Extreme {
  readonly value: Decimal;
  readonly steps: readonly number[];
}

/**
 * Brings the quantity of a limit as far towards it as whole steps allow: a least as high, a most as low as can be.
 *
 * The quantity is a quotient, so it is found in rounds: the quotient reached becomes the bound, and steps are looked for
 * that leave something over (W. Dinkelbach, Management Science 13:492-498, 1967, from memory). `enough` ends the search early;
 * `row` keeps what was reached.
 */
export function best(
  problem: StepProblem,
  limit: Limit,
  enough?: Decimal,
): (Extreme & { readonly row: Row }) | undefined {
  const start = anySteps(problem);
  if (start.kind !== "found") return undefined;
  let steps = start.steps;
  let value = reached(limit, steps);
  while (value !== undefined && !(enough !== undefined && beats(limit, value, enough))) {
    const row = limitRow(limit, value);
    const next = smallestSteps(problem, { kind: "weighted", weights: row.coefficients.map((weight) => 0 - weight) });
    const nextValue = next.kind === "found" ? reached(limit, next.steps) : undefined;
    if (next.kind !== "found" || nextValue === undefined || !further(limit, nextValue, value)) break;
    steps = next.steps;
    value = nextValue;
  }
  if (value === undefined) return undefined;
  const bound = enough !== undefined && beats(limit, value, enough) ? enough : value;
  const row = limitRow(limit, bound);
  return { value: dec(decimalText(value)), steps, row: { ...row, constant: Math.max(0, -rowValue(row, steps)) } };
}

function further(limit: Limit, one: Decimal, other: Decimal): boolean {
  return limit.side === "least" ? one.gt(other) : one.lt(other);
}

function beats(limit: Limit, value: Decimal, enough: Decimal): boolean {
  return !further(limit, enough, value);
}
