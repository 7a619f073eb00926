import { type Decimal, dec, decimalText } from "../number/decimal.ts";
import { type Limit, limitRow, reached } from "./blend-limits.ts";
import type { Budget } from "./step-budget.ts";
import type { StepProblem } from "./step-problem.ts";
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
 * that leave something over (W. Dinkelbach, Management Science 13:492-498, 1967, from memory). `row` keeps what was
 * reached.
 */
export function best(problem: StepProblem, limit: Limit, budget: Budget): Extreme | undefined {
  const start = anySteps(problem, budget);
  if (start.kind !== "found") return undefined;
  let steps = start.steps;
  let value = reached(limit, steps);
  while (value !== undefined) {
    const row = limitRow(limit, value);
    const weights = row.coefficients.map((weight) => 0 - weight);
    const next = smallestSteps(problem, { kind: "weighted", weights }, budget);
    const nextValue = next.kind === "found" ? reached(limit, next.steps) : undefined;
    if (next.kind !== "found" || nextValue === undefined || !further(limit, nextValue, value)) break;
    steps = next.steps;
    value = nextValue;
  }
  return value === undefined ? undefined : { value: dec(decimalText(value)), steps };
}

function further(limit: Limit, one: Decimal, other: Decimal): boolean {
  return limit.side === "least" ? one.gt(other) : one.lt(other);
}
