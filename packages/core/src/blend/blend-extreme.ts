import { type Decimal, dec, decimalText } from "../number/decimal.ts";
import { type Limit, limitRow, reached } from "./blend-limits.ts";
import type { Budget } from "./step-budget.ts";
import type { StepAnswer, StepProblem } from "./step-problem.ts";
import { anySteps, smallestSteps } from "./step-search.ts";

/**
 * Brings the quantity of a limit as far towards it as whole steps allow: a least as high, a most as low as can be.
 *
 * The quantity is a quotient, so it is found in rounds: the quotient reached becomes the bound, and steps are looked for
 * that leave something over (W. Dinkelbach, Management Science 13:492-498, 1967, from memory).
 *
 * @param start - any steps that hold
 */
export function best(
  problem: StepProblem,
  limit: Limit,
  budget: Budget,
  start: StepAnswer = anySteps(problem, budget),
): Decimal | undefined {
  let value: Decimal | undefined;
  for (let next = start; next.kind === "found"; ) {
    const { steps } = next;
    const now = reached(limit, steps);
    if (now === undefined || (value !== undefined && !(limit.side === "least" ? now.gt(value) : now.lt(value)))) break;
    value = now;
    const weights = limitRow(limit, value).coefficients.map((weight) => 0 - weight);
    next = smallestSteps(problem, { kind: "weighted", weights }, budget, steps);
  }
  return value && dec(decimalText(value));
}
