import { type Figure, given } from "../figure/figure.ts";
import { definition, type Source } from "../figure/source.ts";
import type { DecimalInput } from "../number/decimal.ts";

/**
 * Gives a number a name, so that a formula it is fed to can be read in words.
 *
 * @param by - where it comes from: the question, the composition, a table
 * @example named("dose", "g", 10, "the question").label // => "dose"
 */
export function named(
  label: string,
  unit: string,
  value: DecimalInput,
  by: string,
  source: Source = definition,
): Figure {
  const id = `named.${label.toLowerCase().replaceAll(/[^\p{L}\p{N}.]+/gu, "-")}`;
  return given({ id, label, unit, places: 4, value, by, sources: [source] });
}
