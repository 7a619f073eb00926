import { type Decimal, dec } from "../number/decimal.ts";

/** As near as an iteration comes: far below the 1e-9 that a round trip has to keep. */
const NEAR = dec("1e-24");
const STEPS = 200;

/**
 * Where a steadily rising function passes zero, between two bounds that it has on both sides.
 *
 * False position with the Illinois halving, in decimals; undefined when zero is not between the bounds.
 *
 * @example rootBetween((x) => x.times(x).minus(2), dec(0), dec(2))?.toFixed(9) // => "1.414213562"
 */
export function rootBetween(rising: (x: Decimal) => Decimal, least: Decimal, greatest: Decimal): Decimal | undefined {
  let [low, high] = [least, greatest];
  let [under, over] = [rising(low), rising(high)];
  if (under.isZero()) return low;
  if (over.isZero()) return high;
  if (under.gt(0) || over.lt(0)) return undefined;
  let last = 0;
  for (let step = 0; step < STEPS && high.minus(low).gt(NEAR); step += 1) {
    const middle = low.minus(under.times(high.minus(low)).div(over.minus(under)));
    const height = rising(middle);
    if (height.abs().lt(NEAR)) return middle;
    if (height.isNegative()) {
      [low, under] = [middle, height];
      if (last === -1) over = over.div(2);
      last = -1;
    } else {
      [high, over] = [middle, height];
      if (last === 1) under = under.div(2);
      last = 1;
    }
  }
  return low.plus(high).div(2);
}
