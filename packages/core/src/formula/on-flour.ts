import { type DecimalText, dec, decimalText } from "../number/decimal.ts";
import type { Quantity } from "../number/quantity.ts";

/** Flour that a formula in % stands on, g. */
export const hundredOfFlour = "100";

/**
 * Grams of an amount that is stated as a mass or in % of flour.
 *
 * @param flour - g of the flour that percents are of
 * @example onFlour({ text: "0.9 %", dimension: "share", value: "0.9", unit: "%" }, "5000") // => "45"
 */
export function onFlour(amount: Quantity, flour: DecimalText): DecimalText {
  return amount.dimension === "share" ? decimalText(dec(amount.value).times(flour).div(100)) : amount.value;
}
