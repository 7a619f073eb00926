import { type Figure, found, given, named as namedIn } from "../figure/figure.ts";
import { definition, type Source } from "../figure/source.ts";
import type { DecimalInput } from "../number/decimal.ts";
import { atomicWeightSource, molarMass } from "./elements.ts";

/** Names a mass in g. */
export const grams = namedIn("g", 2);
/** Names a share in %. */
export const percent = namedIn("%", 2);

/**
 * Gives a number an id and a name, so that a formula it is fed to can be read in words.
 *
 * @param by - where it comes from: the question, the composition, a table
 * @param on - what it follows from, where figures tell that
 * @example named("convert.dose", "dose", "g", 10, "the question").label // => "dose"
 */
export function named(
  id: string,
  label: string,
  unit: string,
  value: DecimalInput,
  by: string,
  source: Source = definition,
  on: readonly Figure[] = [],
): Figure {
  const naming = { id, label, unit, places: 4 };
  return on.length === 0 ? given(naming, value, by, source) : found(naming, value, by, on, source);
}

/** The molar mass of a formula, g/mol. @example molarMassFigure("NaCl").label // => "molar mass of NaCl" */
export function molarMassFigure(formula: string): Figure {
  const naming = { id: `molar-mass.${formula}`, label: `molar mass of ${formula}`, unit: "g/mol", places: 4 };
  return given(naming, molarMass(formula), "atomic weights", atomicWeightSource);
}
