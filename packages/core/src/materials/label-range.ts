import { exact, type Figure, given, renamed, worked } from "../figure/figure.ts";
import { type Problem, problem } from "../figure/problem.ts";
import { definition, type Source } from "../figure/source.ts";
import type { DecimalInput } from "../number/decimal.ts";

/** Two ends, and whether they belong to the range. */
export interface Bounds {
  readonly low: Figure;
  readonly lowIncluded: boolean;
  readonly high: Figure;
  readonly highIncluded: boolean;
}

/** What a label prints. */
export const printedSource: Source = { cite: "the nutrition label", standing: "user" };

/** A protein content that is known to lie between two values, %. */
export interface ProteinRange extends Bounds {
  /** The middle, with the range on it. */
  readonly middle: Figure;
}

/** A number off a label. */
export function printedFigure(id: string, label: string, unit: string, value: DecimalInput): Figure {
  return given({ id, label, unit, places: 2 }, value, "the label", printedSource);
}

/** What two ranges have in common; the ends may then be the wrong way round. */
export function narrower(a: Bounds, b: Bounds): Bounds {
  const lowOf = exact(a.low).comparedTo(exact(b.low));
  const highOf = exact(a.high).comparedTo(exact(b.high));
  return {
    low: lowOf >= 0 ? a.low : b.low,
    lowIncluded: lowOf > 0 ? a.lowIncluded : lowOf < 0 ? b.lowIncluded : a.lowIncluded && b.lowIncluded,
    high: highOf <= 0 ? a.high : b.high,
    highIncluded: highOf < 0 ? a.highIncluded : highOf > 0 ? b.highIncluded : a.highIncluded && b.highIncluded,
  };
}

/** Whether no value lies within. */
export function isEmpty({ low, lowIncluded, high, highIncluded }: Bounds): boolean {
  const order = exact(low).comparedTo(exact(high));
  return order > 0 || (order === 0 && !(lowIncluded && highIncluded));
}

/** The problem of labels that cannot be of one flour. */
export function disagreement({ low, high }: Bounds): Problem {
  return problem("label.disagree", [], { low: exact(low).toFixed(2), high: exact(high).toFixed(2) });
}

/** The range with its middle, named. */
export function withMiddle(bounds: Bounds, id: string, label: string): ProteinRange {
  const low = renamed(bounds.low, `${id}.least`, `least ${label}`);
  const high = renamed(bounds.high, `${id}.greatest`, `greatest ${label}`);
  const middle = worked({ id, label, unit: "%", places: 1 }, "(low + high) / 2", { low, high }, definition);
  const range = {
    low: low.value,
    high: high.value,
    why: "what the rounding of the label (in Japan its tolerance) leaves open",
  };
  return { ...bounds, low, high, middle: { ...middle, range } };
}
