import { type Decimal, dec, equalDigits, roundToDivision, sum, ZERO } from "./decimal.ts";

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
 * Each goes to its nearest step. What the total then misses is taken up on the coarsest division by the weights that it
 * changes least in proportion, ties in the order given, which brings the total to within half of that division. Where what
 * is left is at most a thousandth of the values on the next finer division, they take it up in the same way, and so on.
 * With one division the total is the exact one rounded to it.
 *
 * @param steps - values not below zero, divisions above zero
 * @param least - what is kept small where a value gives way: its change in proportion, as suits weights, or the change itself,
 * as suits money, which then is nowhere a whole step off
 * @example roundKeepingTotal([{ value: dec("1.5"), division: dec(1) }, { value: dec("1.5"), division: dec(1) }]).map(String) // => ["2", "1"]
 */
export function roundKeepingTotal(
  steps: readonly Step[],
  least: "proportion" | "change" = "proportion",
): readonly Decimal[] {
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
    const given = weight.times(mostGivenWay).toSignificantDigits(equalDigits);
    if (!first && missing.abs().toSignificantDigits(equalDigits).gt(given)) break;
    rounded = takeUp(steps, rounded, members, division, missing, least);
  }
  return rounded;
}

/**
 * Lets the members of one division take up what is missing, as far as whole steps reach. Where that is more than a step
 * for each, all give way in proportion to what they weigh.
 */
function takeUp(
  steps: readonly Step[],
  rounded: readonly Decimal[],
  members: readonly number[],
  division: Decimal,
  missing: Decimal,
  least: "proportion" | "change",
): readonly Decimal[] {
  const before = sum(members.map((index) => rounded[index] ?? ZERO));
  const goal = roundToDivision(before.plus(missing), division);
  const values = members.map((index) => steps[index]?.value ?? ZERO);
  const weight = sum(values);
  if (weight.isZero() || goal.isNegative()) return rounded;
  const few = goal.minus(before).abs().lte(division.times(members.length));
  const shares = few ? values : values.map((value) => value.times(goal).div(weight));
  const given = nearestReaching(goal, shares, division, least);
  return rounded.map((value, index) => given[members.indexOf(index)] ?? value);
}

/** The nearest steps, of which those that change least give way until all add up to the goal. */
function nearestReaching(
  goal: Decimal,
  values: readonly Decimal[],
  division: Decimal,
  least: "proportion" | "change",
): readonly Decimal[] {
  const reached = values.map((value) => roundToDivision(value, division));
  const step = goal.gt(sum(reached)) ? division : division.negated();
  for (let left = goal.minus(sum(reached)).div(step).toNumber(); left > 0; left -= 1) {
    const moves = values.flatMap((value, index) => {
      const moved = (reached[index] ?? ZERO).plus(step);
      const harm = moved
        .minus(value)
        .abs()
        .div(least === "proportion" ? value : division)
        .toSignificantDigits(equalDigits);
      return value.isZero() || moved.isNegative() ? [] : [{ index, moved, harm }];
    });
    const inOrder = step.isNegative() ? moves.reverse() : moves;
    const [first, ...others] = inOrder;
    if (first === undefined) break;
    const { index, moved } = others.reduce((best, move) => (move.harm.lt(best.harm) ? move : best), first);
    reached[index] = moved;
  }
  return reached;
}
