import type { Figure, Range } from "../figure/figure.ts";
import { onMoisture } from "../materials/moisture.ts";
import { type Decimal, dec, decimalText, sum } from "../number/decimal.ts";

/** A figure, or where it is not exact a copy with its range. */
export function withRange(figure: Figure, range: Range | undefined): Figure {
  return range === undefined ? figure : { ...figure, range };
}

/** One figure of a sum and what it counts. */
export interface Term {
  readonly weight: () => Decimal;
  readonly figure: Figure;
}

/** A figure that is a sum of figures times their weights, none below zero, with its range. */
export function sumRange(figure: Figure, terms: readonly Term[], why: string): Figure {
  return withRange(figure, rangeOfSum(figure, terms, why));
}

/** The range of such a sum, where any of its figures has one. */
export function rangeOfSum(figure: Figure, terms: readonly Term[], why: string): Range | undefined {
  const open = terms.filter((term) => term.figure.range !== undefined && !term.weight().isZero());
  if (open.length === 0) return undefined;
  const end = (which: "low" | "high"): string => {
    const moves = open.map((term) =>
      dec(term.figure.range?.[which] ?? term.figure.value)
        .minus(term.figure.value)
        .times(term.weight()),
    );
    return decimalText(sum(moves).plus(figure.value));
  };
  return { low: end("low"), high: end("high"), why };
}

/**
 * The range of a share of the dry matter, `figure`, that is the share as is, `asIs`, brought to a basis: greatest where
 * both the share as is and the moisture are greatest.
 *
 * @param moisture - of the whole
 * @param open - the range of it that the share as is does not depend on
 */
export function basisRange(figure: Figure, asIs: Figure, moisture: Figure, open: Range | undefined): Figure {
  if (asIs.range === undefined || dec(asIs.value).isZero()) return figure;
  const end = (which: "low" | "high", share: string): string => {
    const moved = dec(figure.value).times(share).div(asIs.value);
    return decimalText(onMoisture(moved, open?.[which] ?? moisture.value, moisture.value));
  };
  const { low, high, why } = asIs.range;
  return withRange(figure, { low: end("low", low), high: end("high", high), why: open?.why ?? why });
}
