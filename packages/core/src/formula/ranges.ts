import type { Figure, Range } from "../figure/figure.ts";
import { type Decimal, dec, decimalText, sum } from "../number/decimal.ts";

/** A figure, or where it is not exact a copy with its range. */
export function withRange(figure: Figure, range: Range | undefined): Figure {
  return range === undefined ? figure : { ...figure, range };
}

/** One figure of a sum and what it counts. */
export interface Term {
  readonly weight: Decimal;
  readonly figure: Figure;
}

/** The range of a figure that is a sum of figures times their weights, none below zero. */
export function sumRange(figure: Figure, terms: readonly Term[], why: string): Figure {
  const open = terms.filter((term) => term.figure.range !== undefined && !term.weight.isZero());
  if (open.length === 0) return figure;
  const end = (which: "low" | "high"): string => {
    const moves = open.map((term) =>
      dec(term.figure.range?.[which] ?? term.figure.value)
        .minus(term.figure.value)
        .times(term.weight),
    );
    return decimalText(sum(moves).plus(figure.value));
  };
  return withRange(figure, { low: end("low"), high: end("high"), why });
}

/** The range of a figure that is another one times a factor. */
export function scaledRange(figure: Figure, of: Figure): Figure {
  if (of.range === undefined || dec(of.value).isZero()) return figure;
  const factor = dec(figure.value).div(of.value);
  const end = (text: string): string => decimalText(dec(text).times(factor));
  return withRange(figure, { low: end(of.range.low), high: end(of.range.high), why: of.range.why });
}
