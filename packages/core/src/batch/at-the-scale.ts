import { type DecimalText, dec, decimalText, sum } from "../number/decimal.ts";
import { parseQuantity } from "../number/quantity.ts";

/** A scale as it is read: the unit it shows, and its smallest step in g. */
export interface ReadScale {
  readonly unit: string;
  readonly division: DecimalText;
}

/** How what is in the bowl stands to the list. `by` in g. */
export type OnScale =
  | { readonly kind: "open" | "right" }
  | { readonly kind: "short" | "over"; readonly by: DecimalText };

/**
 * How what a scale showed stands to the mass on the list; less than half a division is nothing. Masses in g.
 *
 * @param weighed - nothing where it was not weighed yet
 * @example standingOf("3150", "5", "3170") // => { kind: "over", by: "20" }
 */
export function standingOf(listed: DecimalText, division: DecimalText, weighed: DecimalText | undefined): OnScale {
  if (weighed === undefined) return { kind: "open" };
  const off = dec(weighed).minus(listed);
  if (off.abs().lt(dec(division).div(2))) return { kind: "right" };
  return { kind: off.isNegative() ? "short" : "over", by: decimalText(off.abs()) };
}

/** What was read off a scale, or why it was not. */
export type ScaleReading =
  | { readonly ok: true /** g */; readonly mass: DecimalText }
  | { readonly ok: false; readonly why: "unreadable" | "division" };

/** How far a reading in a unit of many digits may lie from a whole step, in steps. */
const whole = "0.000001";

/**
 * Reads a number that somebody took off a scale, in the unit it shows; a scale shows whole divisions.
 *
 * @example readScale("3170", { unit: "g", division: "5" }) // => { ok: true, mass: "3170" }
 */
export function readScale(shown: string, { unit, division }: ReadScale): ScaleReading {
  const reading = parseQuantity(`${shown} ${unit}`, ["mass"]);
  if (!reading.ok) return { ok: false, why: "unreadable" };
  const { value } = reading.quantity;
  const steps = dec(value).div(division);
  return steps.minus(steps.round()).abs().gt(whole) ? { ok: false, why: "division" } : { ok: true, mass: value };
}

/** Masses added up, g. @example addedUp(["0.1", "0.2"]) // => "0.3" */
export function addedUp(masses: readonly DecimalText[]): DecimalText {
  return decimalText(sum(masses.map((mass) => dec(mass))));
}
