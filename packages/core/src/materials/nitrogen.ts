import type { Decimal, DecimalText } from "../number/decimal.ts";

/** The factor of a flour specification. */
export const flourFactor: DecimalText = "5.7";

/** The factor of a nutrition label that has no other. */
export const labelFactor: DecimalText = "6.25";

/**
 * Turns a protein content from one nitrogen factor to another: P_b = P_a F_b / F_a.
 *
 * @param value - protein, %
 * @param from - factor the value rests on, above zero
 * @param to - factor wanted
 * @example onFactor(dec(12), dec("5.7"), dec("6.25")).toFixed(4) // => "13.1579"
 */
export function onFactor(value: Decimal, from: Decimal, to: Decimal): Decimal {
  return value.times(to).div(from);
}
