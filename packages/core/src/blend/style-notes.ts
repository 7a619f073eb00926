import { answer, type NoteFacts, note, type Outcome, problem, refuse } from "../figure/problem.ts";
import { citation, type Source } from "../figure/source.ts";
import { type DecimalText, dec, decimalText } from "../number/decimal.ts";
import { type StyleQuantity, type StyleRange, styleRanges, whiteSalted } from "./style-ranges.ts";

/** The styles that have a range. @example styles().includes("ramen") // => true */
export function styles(): readonly string[] {
  return [...new Set(styleRanges().map(({ style }) => style))];
}

/** A formula that a source prints for a style: its lines, for the cook's own flour. */
export interface StyleStart {
  readonly water: string;
  readonly salt: string;
  readonly alkali: readonly string[];
  readonly source: string;
}

const protocol: Source = {
  cite: "D. Hatcher, O. Lukow, J. Dexter, N. Shahin, N. Edwards, Recent advance in Canadian research on Asian noodles, cereals conference paper, regional.org.au/au/cereals/1/08hatcher.htm",
  at: "protocol of the breeders: 34 % absorption, 1 % salt, 1 % of sodium and potassium carbonate at 9:1",
  standing: "read",
};

const starts: Readonly<Record<string, StyleStart>> = {
  "yellow alkaline": {
    water: "34 %",
    salt: "1 %",
    alkali: ["sodium carbonate 0.9 %", "potassium carbonate 0.1 %"],
    source: citation(protocol),
  },
  "white salted": { water: "35 %", salt: "1 %", alkali: [], source: citation(whiteSalted) },
};

/**
 * The formula to start from for a style, where a source prints one; nothing where none was read.
 *
 * Problems: `style.unknown`.
 * @example styleStart("yellow alkaline").value.alkali // => ["sodium carbonate 0.9 %", "potassium carbonate 0.1 %"]
 */
export function styleStart(style: string): Outcome<StyleStart | undefined> {
  const plain = style.trim().toLowerCase();
  if (styles().includes(plain)) return answer(starts[plain]);
  return refuse(problem("style.unknown", ["style"], { style, styles: styles() }));
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
  if (ranges.length === 0) return refuse(problem("style.unknown", ["style"], { style, styles: styles() }));
  const checks = ranges.flatMap((range): readonly StyleCheck[] => {
    const value = figures[range.quantity];
    if (value === undefined) return [];
    const { low = value, high = value } = range;
    return [{ range, value, within: dec(value).gte(low) && dec(value).lte(high) }];
  });
  const outside = checks.filter(({ within }) => !within);
  return answer(
    checks,
    outside.map(({ range, value }) => {
      const seen = decimalText(dec(value).toDecimalPlaces(3));
      return note("style.outside", ["style"], { ...styleFacts(range), seen });
    }),
  );
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
