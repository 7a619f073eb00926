import {
  type Decimal,
  type DecimalInput,
  type DecimalText,
  dec,
  decimalText,
  roundToDivision,
  sum,
  ZERO,
} from "../number/decimal.ts";
import { parseQuantity } from "../number/quantity.ts";
import { usualTolerance } from "./weighing.ts";

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
 * How what a scale showed stands to the mass on the list. Less than a step of the scale short cannot be added, and a step too
 * much cannot be told, unless the scale is too coarse for so little. Masses in g.
 *
 * @param weighed - nothing where it was not weighed yet
 * @example standingOf("3150", "5", "3170") // => { kind: "over", by: "20" }
 */
export function standingOf(listed: DecimalText, division: DecimalText, weighed: DecimalText | undefined): OnScale {
  if (weighed === undefined) return { kind: "open" };
  const off = dec(weighed).minus(listed);
  const by = decimalText(off.abs());
  if (isTooMuch(off, division, listed)) return { kind: "over", by };
  return off.negated().gte(division) ? { kind: "short", by } : { kind: "right" };
}

/**
 * Whether so much beyond the list is too much: more than one step of the scale that weighs it, and on a scale too coarse for
 * it, of which a step is more than twice the usual tolerance, any that shows. Masses in g.
 */
export function isTooMuch(beyond: Decimal, division: DecimalInput, listed: DecimalInput): boolean {
  const told = dec(listed).times(usualTolerance).times(2).div(100);
  return beyond.gt(told.lt(division) ? told : division);
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

/** What a mass of a solution holds of one of its parts, g. @example heldIn("125", "11", "250") // => "5.5" */
export function heldIn(mass: DecimalText, part: DecimalText, whole: DecimalText): DecimalText {
  return decimalText(dec(mass).times(part).div(whole).toDecimalPlaces(6));
}

/** What was weighed of something of which a part was in already, to a step of the scale, g. @example weighedBeside("77", "10.68", "0.1") // => "66.3" */
export function weighedBeside(inAll: DecimalText, already: DecimalText, division: DecimalText): DecimalText {
  const rest = dec(inAll).minus(already);
  return rest.lte(0) ? decimalText(ZERO) : decimalText(roundToDivision(rest, dec(division)));
}
