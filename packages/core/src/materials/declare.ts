import { answer, type Outcome, problem, refuse } from "../figure/problem.ts";
import {
  type Decimal,
  type DecimalInput,
  type DecimalText,
  dec,
  decimalText,
  fixedText,
  roundToDivision,
  ZERO,
} from "../number/decimal.ts";
import type { LabelLine } from "./nutrients.ts";
import { type RoundingBand, type RuleBookName, ruleBooks } from "./rounding-rules.ts";

/**
 * All that the rule of a label lets be printed of a value, the usual one first: zero, the rounded value, "less than".
 *
 * @param value - per serving (US) or per 100 g (EU, Japan), in the unit of the rule, zero or more
 * @example declare(nutrients.protein.label.EU, "9.94")[0] // => "9.9"
 */
export function declare(rule: LabelLine, amount: DecimalInput): readonly string[] {
  const value = dec(amount);
  const { bands } = rule;
  const band = bands.findLast(({ from = "0", above }) => (above ? value.gt(from) : value.gte(from))) ?? bands[0];
  if (band === undefined) return [];
  const rounded = roundToDivision(value, dec(band.step));
  const printed = band.zero === "shall" ? ZERO : rounded;
  const zero = band.zero === "may" ? ["0"] : [];
  const less = band.lessThan === undefined ? [] : [`<${band.lessThan}`];
  return [...new Set([...zero, printedText(printed, rule), ...less])];
}

/** A rounded value is printed with the places of the band it has come to lie in: 9.96 g becomes 10, not 10.0. */
function printedText(value: Decimal, { bands }: LabelLine): string {
  if (value.isZero()) return "0";
  return fixedText(value, Math.max(value.decimalPlaces(), placesAt(value, bands)));
}

/** Places that are printed of every value; a step of a half has none of its own: 3 g, not 3.0 g. */
function placesAt(value: Decimal, bands: readonly RoundingBand[]): number {
  const step = dec((bands.findLast((one) => value.gte(one.from ?? 0)) ?? bands[0])?.step ?? 1);
  const places = step.decimalPlaces();
  return step.eq(dec(10).pow(-places)) ? places : 0;
}

/** From where to where a value may lie. */
export interface Interval<Ends = DecimalText> {
  readonly low: Ends;
  readonly lowIncluded: boolean;
  readonly high: Ends;
  readonly highIncluded: boolean;
}

/**
 * The values that a rule book lets be declared in a given way. Where a label may print more digits than the book asks
 * for, such as 11.4 g in the European Union, they stand for what rounds to them.
 *
 * @param printed - as on the label: `4`, `0.5`, `<1`
 * Problems: `label.unreadable`, `label.not-by-the-book`.
 * @example impliedBy(nutrients.protein.label.US, "4", "US") // => { ok: true, value: { low: "3.5", lowIncluded: true, high: "4.5", highIncluded: false }, notes: [] }
 */
export function impliedBy({ bands }: LabelLine, printed: string, book: RuleBookName): Outcome<Interval> {
  const match = /^(<|less than )?\s*(\d+(?:\.(\d+))?|\.(\d+))\s*(?:g|mg|kcal|grams?)?$/u.exec(
    printed.trim().toLowerCase(),
  );
  if (match?.[2] === undefined) return refuse(problem("label.unreadable", [], { printed }));
  const value = dec(match[2]);
  const less = match[1] !== undefined;
  const places = (match[3] ?? match[4] ?? "").length;
  const finer = ruleBooks[book].finer && !less && places > 0;
  if (finer && places > placesAt(value, bands)) return answer(roundedTo(value, places));
  const parts = bands.flatMap((band, index) => within(band, bands[index + 1], value, less));
  const first = parts[0];
  const last = parts[parts.length - 1];
  if (first !== undefined && last !== undefined)
    return answer(asText({ ...last, low: first.low, lowIncluded: first.lowIncluded }));
  if (finer) return answer(roundedTo(value, places));
  const possible = less
    ? bands.flatMap(({ lessThan }) => lessThan ?? [])
    : [...new Set(bands.map(({ step }) => decimalText(roundToDivision(value, dec(step)))))];
  return refuse(problem("label.not-by-the-book", [], { printed, book, possible }));
}

/** What rounds to a value of so many decimals, halves up. */
function roundedTo(value: Decimal, places: number): Interval {
  const half = dec(10).pow(-places).div(2);
  const low = value.minus(half);
  const high = value.plus(half);
  return asText({ low: low.lt(ZERO) ? ZERO : low, lowIncluded: true, high, highIncluded: false });
}

function asText({ low, high, ...ends }: Interval<Decimal>): Interval {
  return { ...ends, low: decimalText(low), high: decimalText(high) };
}

/** The part of a band that is declared as the value; none or one. */
function within(
  band: RoundingBand,
  next: RoundingBand | undefined,
  value: Decimal,
  less: boolean,
): readonly Interval<Decimal>[] {
  const from = dec(band.from ?? 0);
  const to = next?.from === undefined ? undefined : dec(next.from);
  const all: Interval<Decimal> | undefined = to && {
    low: from,
    lowIncluded: band.above !== true,
    high: to,
    highIncluded: next?.above === true,
  };
  if (less) return all !== undefined && band.lessThan !== undefined && value.eq(band.lessThan) ? [all] : [];
  if (band.zero !== undefined && value.isZero()) return all === undefined ? [] : [all];
  if (band.zero === "shall" || !value.mod(band.step).isZero()) return [];
  const half = dec(band.step).div(2);
  const lowest = value.minus(half);
  const highest = value.plus(half);
  const cutLow = lowest.lt(from) || lowest.eq(from);
  const cutHigh = to !== undefined && highest.gt(to);
  const piece: Interval<Decimal> = {
    low: cutLow ? from : lowest,
    lowIncluded: cutLow ? band.above !== true : true,
    high: cutHigh ? to : highest,
    highIncluded: cutHigh && next?.above === true,
  };
  const empty = piece.low.gt(piece.high) || (piece.low.eq(piece.high) && !(piece.lowIncluded && piece.highIncluded));
  return empty ? [] : [piece];
}
