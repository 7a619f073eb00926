import type { Source } from "../figure/source.ts";
import type { Decimal, DecimalText } from "../number/decimal.ts";

/** The factor of a flour specification. */
export const flourFactor: DecimalText = "5.7";

export const flourRule: Source = {
  cite: "USDA commodity requirements A-A-20126F, section 6.3, note 8: flour protein is nitrogen × 5.7",
  standing: "read",
};

/** The factor of a nutrition label that has no other. */
export const labelFactor: DecimalText = "6.25";

export const labelRule: Source = {
  cite: "Regulation (EU) No 1169/2011, Annex I point 10: protein is nitrogen × 6.25",
  standing: "copy",
};

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
