// The door to quantities, to figures that explain themselves and the graph they make, and to problems of one's own.
export { type DecimalText, decimalText, fixedText } from "../number/decimal.ts";
export { inDays, parseQuantity, type Quantity } from "../number/quantity.ts";
export type { Dimension } from "../number/units.ts";
export { type Figure, type Range, shown, shownValue, type Working } from "./figure.ts";
export { type Graph, graphOf, type Published, plainFigure } from "./graph.ts";
export { answer, type Path, pathText, problem } from "./problem.ts";
export { citation, type Source, type Standing } from "./source.ts";
export type { Told } from "./told.ts";
export { type WrittenWorking, writtenWorking } from "./written-working.ts";
