import type { Source } from "../figure/source.ts";
import { type Decimal, type DecimalInput, HUNDRED } from "../number/decimal.ts";

/** The rule of the moisture bases: what the dry matter holds stays in it, whatever the moisture. */
export const basisRule: Source = {
  cite: "Iowa State University Extension, PM 1625, Moisture Basis Conversions for Grain Composition Data (about 1995): P(b) = P(a) (100 − M(b)) / (100 − M(a))",
  standing: "read",
};

/** Moisture basis that flours are compared on, and that is taken where nobody states one, %. */
export const flourBasis = {
  value: "14",
  by: "assumed, since nobody states the basis",
  source: { cite: "Cereals Canada, Methods of Analysis: flour and semolina at 14.0 % moisture", standing: "read" },
} as const satisfies { readonly source: Source; readonly [other: string]: unknown };

/**
 * The text that a share is multiplied with to bring it from one moisture to another, for the formula of a figure.
 *
 * @param from - name or number of the moisture that the share is stated on
 * @param to - name or number of the other moisture; 0 is dry
 * @example dryRatio("moisture", "14") // => "(100 - 14) / (100 - moisture)"
 */
export function dryRatio(from: string, to: string): string {
  return `${to === "0" ? "100" : `(100 - ${to})`} / (100 - ${from})`;
}

/**
 * A share brought from one moisture to another, as a number.
 *
 * @param value - % of the material at moisture `from`
 * @param from - %, below 100
 * @param to - %, up to 100; 0 is dry
 * @throws {RangeError} at a moisture of 100 % or more, which the caller has to rule out.
 * @example onMoisture(dec(12), 14, 0).toFixed(4) // => "13.9535"
 */
export function onMoisture(value: Decimal, from: DecimalInput, to: DecimalInput): Decimal {
  const dry = HUNDRED.minus(from);
  if (dry.lte(0)) throw new RangeError("a moisture of 100 % leaves nothing to reckon on");
  return value.times(HUNDRED.minus(to)).div(dry);
}
