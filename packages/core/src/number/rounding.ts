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

/** Lets the members of one division take up what is missing, as far as whole steps reach. */
function takeUp(
  steps: readonly Step[],
  rounded: readonly Decimal[],
  members: readonly number[],
  division: Decimal,
  missing: Decimal,
): readonly Decimal[] {
  const floors = members.map((index) => floorToDivision(steps[index]?.value ?? ZERO, division));
  const before = sum(members.map((index) => rounded[index] ?? ZERO));
  const wanted = roundToDivision(before.plus(missing), division).minus(sum(floors)).div(division).toNumber();
  const ranked = members
    .map((index, place) => {
      const value = steps[index]?.value ?? ZERO;
      return { index, place, value, floor: floors[place] ?? ZERO, remainder: value.minus(floors[place] ?? ZERO) };
    })
    .sort((a, b) => b.remainder.comparedTo(a.remainder) || b.value.comparedTo(a.value) || a.place - b.place);
  const bySize = [...ranked].sort((a, b) => b.value.comparedTo(a.value) || a.place - b.place);
  const order = wanted >= 0 && wanted <= ranked.length ? ranked : bySize;
  const given = new Map(ranked.map(({ index, floor }) => [index, floor]));
  for (let step = 0; step < Math.abs(wanted); step += 1) {
    const chosen = order[step % order.length];
    if (chosen === undefined) break;
    const value = given.get(chosen.index) ?? chosen.floor;
    given.set(chosen.index, wanted > 0 ? value.plus(division) : value.minus(division));
  }
  return rounded.map((value, index) => given.get(index) ?? value);
}
