import { type Figure, found } from "../figure/figure.ts";
import { definition } from "../figure/source.ts";
import { type Decimal, dec, floorToDivision } from "../number/decimal.ts";

/** So many loads or bowls that cost the same to the smallest coin. */
export interface EqualShares {
  readonly count: Figure;
  readonly each: Figure;
  readonly together: Figure;
}

/** A sum shared out to the smallest coin, and nothing of it lost. */
export interface SharedOut {
  /** What it is shared over: `load`, `bowl`. */
  readonly over: string;
  readonly groups: readonly EqualShares[];
}

/**
 * Shares a sum out as equally as the smallest coin allows: the shares differ by one coin at most, and add up to the sum.
 *
 * @param total - a whole number of coins
 * @param count - whole number above zero
 * @param coin - smallest coin, in the unit of the sum
 */
export function shareOut(over: string, total: Figure, among: Figure, coin: Decimal): SharedOut {
  const count = dec(among.value);
  const less = floorToDivision(dec(total.value).div(count), coin);
  const more = less.plus(coin);
  const many = dec(total.value).minus(less.times(count)).div(coin);
  const groups = [
    { id: "more", number: many, each: more },
    { id: "less", number: count.minus(many), each: less },
  ].filter(({ number }) => number.gt(0));
  const coins = { unit: total.unit, places: total.places };
  const shares = { unit: "", places: 0 };
  return {
    over,
    groups: groups.map(({ id, number, each }) => {
      const by = `${total.value} ${total.unit} shared over ${count.toFixed()}, to ${coin.toFixed()} ${total.unit}`;
      const figure = (what: string, label: string, value: Decimal, money: boolean): Figure =>
        found(
          { id: `cost.${over}.${id}.${what}`, label, ...(money ? coins : shares) },
          value,
          by,
          [total, among],
          definition,
        );
      return {
        count: figure("count", `number of ${over}s at this cost`, number, false),
        each: figure("each", `cost of one ${over}`, each, true),
        together: figure("together", `cost of these ${over}s`, each.times(number), true),
      };
    }),
  };
}
