import { type Figure, found, given, worked } from "../figure/figure.ts";
import { definition, fromSpec } from "../figure/source.ts";
import type { Decimal } from "../number/decimal.ts";
import type { Quantity } from "../number/quantity.ts";

/** A mass that the spec states, g. */
export function statedMass(id: string, label: string, quantity: Quantity): Figure {
  const { value, text } = quantity;
  return given({ id, label, unit: "g", places: 1 }, value, `spec, ${text}`, fromSpec);
}

/** The largest or the smallest load that the spec states for the mixer, g of dough or of flour. */
export function mixerLimit(
  size: "largest" | "smallest",
  { value, text }: Quantity,
  of: "dough" | "flour" = "dough",
): Figure {
  const naming = { id: `mixer.${size}`, label: `${size} load of ${of}`, unit: "g", places: 0 };
  return given(naming, value, `spec, ${text} of ${of}`, fromSpec);
}

/** What of a limit is used: all of it, or what the scale can weigh without going beyond it. */
export function lessUnused(limit: Figure, left: Decimal | undefined): Figure {
  if (left === undefined) return limit;
  const unusedNaming = { id: `${limit.id}-unused`, label: "what the scale leaves unused of it", unit: "g", places: 1 };
  const unused = found(unusedNaming, left, "the weights, rounded to the scale, stay within it", [limit], definition);
  const label = `${limit.label}, as far as the scale weighs within it`;
  const naming = { id: `${limit.id}-used`, label, unit: "g", places: 1 };
  return worked(naming, "limit - left", { limit, left: unused }, definition);
}
