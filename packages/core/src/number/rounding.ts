import { type Decimal, floorToDivision, roundToDivision, sum, ZERO } from "./decimal.ts";

/** A value to be rounded, and the step it is rounded to. */
export interface Step {
  readonly value: Decimal;
  readonly division: Decimal;
}

/**
 * Rounds values to their divisions so that they add up to the total nearest to the exact one that the coarsest division
 * reaches: at most half of that division off, and not off at all where the total is a multiple of a common division.
 *
 * Values on a finer division go to their nearest step; those on the coarsest take up the difference, the largest
 * remainders first, and ties in the order given.
 *
 * @param steps - values not below zero, divisions above zero
 * @example roundKeepingTotal([{ value: dec("1.5"), division: ONE }, { value: dec("1.5"), division: ONE }]).map(String) // => ["2", "1"]
 */
export function roundKeepingTotal(steps: readonly Step[]): readonly Decimal[] {
  const coarsest = steps.reduce((most, step) => (step.division.gt(most) ? step.division : most), ZERO);
  const isCoarse = (step: Step): boolean => step.division.eq(coarsest);
  const nearest = steps.map((step) =>
    isCoarse(step) ? floorToDivision(step.value, step.division) : roundToDivision(step.value, step.division),
  );
  const total = sum(steps.map((step) => step.value));
  const missing = total.minus(sum(nearest));
  const count = coarsest.isZero() ? 0 : roundToDivision(missing, coarsest).div(coarsest).toNumber();
  const coarse = steps
    .map((step, index) => ({ index, step, remainder: step.value.minus(nearest[index] ?? ZERO) }))
    .filter(({ step }) => isCoarse(step));
  const byRemainder = [...coarse].sort((a, b) => b.remainder.comparedTo(a.remainder) || a.index - b.index);
  const bySize = [...coarse].sort((a, b) => b.step.value.comparedTo(a.step.value) || a.index - b.index);
  const order = count < 0 || count > coarse.length ? bySize : byRemainder;
  const moves = new Map<number, number>();
  for (let move = 0; move < Math.abs(count); move += 1) {
    const chosen = order[move % order.length];
    if (chosen !== undefined) moves.set(chosen.index, (moves.get(chosen.index) ?? 0) + Math.sign(count));
  }
  return nearest.map((value, index) => value.plus(coarsest.times(moves.get(index) ?? 0)));
}
