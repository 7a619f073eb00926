import { type Decimal, dec, floorToDivision, roundToDivision, sum, ZERO } from "./decimal.ts";

/** A value to be rounded, and the step it is rounded to. */
export interface Step {
  readonly value: Decimal;
  readonly division: Decimal;
}

/** Most that values on a finer division may give way for the total: a thousandth of what they come to. */
const mostGivenWay = dec("0.001");

/**
 * Rounds values to their divisions so that they add up to a total as near the exact one as does them no harm.
 *
 * Values on the coarsest division make up the total, those with the largest remainders first and ties in the order given,
 * which brings it to within half of that division. Where what is left is at most a thousandth of the values on the next
 * finer division, they take it up in the same way, and so on. With one division the total is the exact one rounded to it.
 *
 * @param steps - values not below zero, divisions above zero
 * @example roundKeepingTotal([{ value: dec("1.5"), division: dec(1) }, { value: dec("1.5"), division: dec(1) }]).map(String) // => ["2", "1"]
 */
export function roundKeepingTotal(steps: readonly Step[]): readonly Decimal[] {
  const divisions = [...new Set(steps.map(({ division }) => division.toString()))]
    .map(dec)
    .sort((a, b) => b.comparedTo(a));
  const total = sum(steps.map(({ value }) => value));
  let rounded: readonly Decimal[] = steps.map(({ value, division }) => roundToDivision(value, division));
  for (const division of divisions) {
    const members = steps.flatMap((step, index) => (step.division.eq(division) ? [index] : []));
    const missing = total.minus(sum(rounded));
    const weight = sum(members.map((index) => steps[index]?.value ?? ZERO));
    const first = division.eq(divisions[0] ?? ZERO);
    if (!first && missing.abs().gt(weight.times(mostGivenWay))) break;
    rounded = takeUp(steps, rounded, members, division, missing);
  }
  return rounded;
}

/**
 * Lets the members of one division take up what is missing, as far as whole steps reach. Where that is more than a step
 * for each, they give way in proportion to what they weigh, so that a small one hardly moves.
 */
function takeUp(
  steps: readonly Step[],
  rounded: readonly Decimal[],
  members: readonly number[],
  division: Decimal,
  missing: Decimal,
): readonly Decimal[] {
  const before = sum(members.map((index) => rounded[index] ?? ZERO));
  const goal = roundToDivision(before.plus(missing), division);
  const values = members.map((index) => steps[index]?.value ?? ZERO);
  const weight = sum(values);
  const stepsLeft = (shares: readonly Decimal[]): number =>
    goal
      .minus(sum(shares.map((share) => floorToDivision(share, division))))
      .div(division)
      .toNumber();
  const wanted = stepsLeft(values);
  const fits = wanted >= 0 && wanted <= members.length;
  if (!fits && (weight.isZero() || goal.isNegative())) return rounded;
  const shares = fits ? values : values.map((value) => value.times(goal).div(weight));
  const given = largestRemainders(shares, division, stepsLeft(shares));
  return rounded.map((value, index) => given[members.indexOf(index)] ?? value);
}

/** Rounds down, and gives the steps that are left to the largest remainders, then the largest values, then in order. */
function largestRemainders(values: readonly Decimal[], division: Decimal, stepsLeft: number): readonly Decimal[] {
  const floors = values.map((value) => floorToDivision(value, division));
  const first = values
    .map((value, index) => ({ index, value, remainder: value.minus(floors[index] ?? ZERO) }))
    .sort((a, b) => b.remainder.comparedTo(a.remainder) || b.value.comparedTo(a.value) || a.index - b.index)
    .slice(0, stepsLeft)
    .map(({ index }) => index);
  return floors.map((floor, index) => (first.includes(index) ? floor.plus(division) : floor));
}
