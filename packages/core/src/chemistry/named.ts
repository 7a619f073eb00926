import { type Figure, given } from "../figure/figure.ts";
import { definition, type Source } from "../figure/source.ts";
import type { DecimalInput } from "../number/decimal.ts";

/**
 * Gives a number an id and a name, so that a formula it is fed to can be read in words.
 *
 * @param by - where it comes from: the question, the composition, a table
 * @example named("convert.dose", "dose", "g", 10, "the question").label // => "dose"
 */
export function named(
  id: string,
  label: string,
  unit: string,
  value: DecimalInput,
  by: string,
  source: Source = definition,
): Figure {
  return given({ id, label, unit, places: 4, value, by, sources: [source] });
}
