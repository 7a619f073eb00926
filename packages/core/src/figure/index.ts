// The door to quantities, to figures that explain themselves and the graph they make, and to problems of one's own.
export { type Decimal, type DecimalInput, type DecimalText, fixedText } from "../number/decimal.ts";
export {
  commaReadings,
  inDays,
  parseQuantity,
  type Quantity,
  type QuantityFault,
  type QuantityReading,
} from "../number/quantity.ts";
export type { Dimension, ScaleUnit } from "../number/units.ts";
export {
  type Bounds,
  type Fed,
  type Figure,
  type Range,
  type Stands,
  shown,
  shownValue,
  type Working,
} from "./figure.ts";
export { type Graph, graphOf, type Published } from "./graph.ts";
export type { Measure, Shown } from "./in-system.ts";
export {
  answer,
  type Code,
  type Facts,
  type NoteCode,
  type NoteFacts,
  note,
  type Path,
  type ProblemIn,
  pathText,
  problem,
} from "./problem.ts";
export {
  type Entry,
  type FactsOf,
  type Inner,
  input,
  type Lists,
  type NoFacts,
  type NoteEntry,
  type NoteFactsOf,
  noAnswer,
  type ProblemEntry,
  type Sentences,
  type Tell,
  type TellWithin,
  type Texts,
} from "./problems/entry.ts";
export { recalculated } from "./recalculate.ts";
export { citation, type Source, type Standing } from "./source.ts";
export { type Telling, type Told, telling, toldIn } from "./told.ts";
export { type WrittenWorking, writtenWorking } from "./written-working.ts";
