// The one door of the library: everything public is named here, folder by folder.

export { type Figure, type Range, shown, shownValue, type Working } from "./figure/figure.ts";
export { type Note, type Outcome, type Path, type Problem, pathText } from "./figure/problem.ts";
export { citation, type Source, type Standing } from "./figure/source.ts";
export { type Decimal, type DecimalInput, type DecimalText, dec, decimalText, fixedText } from "./number/decimal.ts";
export { parseQuantity, type Quantity, type QuantityReading } from "./number/quantity.ts";
export { type Dimension, findUnit, type Unit, units, unitsFor } from "./number/units.ts";
