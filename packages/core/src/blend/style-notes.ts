import { answer, type Note, type NoteFacts, note, type Outcome, problem, refuse } from "../figure/problem.ts";
import { citation } from "../figure/source.ts";
import { type DecimalText, dec, decimalText } from "../number/decimal.ts";
import { type StyleQuantity, type StyleRange, styleRanges } from "./style-ranges.ts";

/** The styles that have a range. @example styles().includes("ramen") // => true */
export function styles(): readonly string[] {
  return [...new Set(styleRanges().map(({ style }) => style))];
}

/** One range beside the figure of a formula. */
export interface StyleCheck {
  readonly range: StyleRange;
  readonly value: DecimalText;
  readonly within: boolean;
}

/**
 * Holds the figures of a formula against the ranges published for a style: outside one is a note, never a problem.
 *
 * Protein and ash in % at 14 % mb, water, salt and alkali (anhydrous) in % of flour, thickness and width in mm; what is left out
 * is not looked at. Problems: `style.unknown`.
 * Source: each range names its own, and a remembered one says so.
 *
 * @example styleNotes("hokkien", { salt: "3" }).notes.length // => 1
 */
export function styleNotes(
  style: string,
  figures: Readonly<Partial<Record<StyleQuantity, DecimalText>>>,
): Outcome<readonly StyleCheck[]> {
  const ranges = styleRanges().filter((range) => range.style === style);
  if (ranges.length === 0) {
    return refuse(problem("style.unknown", ["style"], { style, styles: styles() }));
  }
  const checks = ranges.flatMap((range): readonly StyleCheck[] => {
    const value = figures[range.quantity];
    return value === undefined ? [] : [{ range, value, within: isWithin(range, value) }];
  });
  return answer(checks, checks.filter(({ within }) => !within).map(outsideNote));
}

function isWithin({ low, high }: StyleRange, value: DecimalText): boolean {
  return !(low !== undefined && dec(value).lt(low)) && !(high !== undefined && dec(value).gt(high));
}

function outsideNote({ range, value }: StyleCheck): Note {
  const seen = decimalText(dec(value).toDecimalPlaces(3));
  return note("style.outside", ["style"], { ...styleFacts(range), seen });
}

/** What a note on a range says of it. */
export function styleFacts(range: StyleRange): NoteFacts["blend.style"] {
  const { style, quantity, unit, source } = range;
  return { style, quantity, range: rangeText(range), unit, source: citation(source) };
}

/** A range in words. @example rangeText({ low: "10", high: "12" }) // => "10 to 12" */
export function rangeText({ low, high }: Pick<StyleRange, "low" | "high">): string {
  if (low === undefined) return `at most ${high ?? ""}`;
  if (high === undefined) return `at least ${low}`;
  return low === high ? low : `${low} to ${high}`;
}
