import { type Decimal, type DecimalInput, type DecimalText, dec, decimalText, fixedText } from "../number/decimal.ts";
import { evaluate, parseExpression, type Value, writeExpression } from "./expression.ts";
import type { Source } from "./source.ts";

/** A number that can explain itself. It is plain data and survives JSON. */
export interface Figure {
  /** Stable name of the kind `area.what`, unique within one result. */
  readonly id: string;
  /** What it is, in words. */
  readonly label: string;
  readonly value: DecimalText;
  /** Unit as printed: `g`, `%`, `% of flour`, `meq/100 g flour`, or empty for a plain number. */
  readonly unit: string;
  /** Decimal places that make sense when it is shown. */
  readonly places: number;
  readonly working: Working;
  readonly sources: readonly Source[];
  /** Least and greatest value it may have, where that is known. */
  readonly range?: Range | undefined;
}

/** How a figure came about. */
export type Working =
  /** It was given: by the spec, a table or a definition. */
  | { readonly kind: "given"; readonly by: string }
  /** It was calculated: the formula in names and the same with the numbers put in. */
  | {
      readonly kind: "formula";
      readonly formula: string;
      readonly numbers: string;
      /** Ids of the figures that went in. */
      readonly from: readonly string[];
    }
  /** It was found by a procedure that is no single formula. */
  | { readonly kind: "procedure"; readonly by: string };

/** Least and greatest value of a figure, and why. */
export interface Range {
  readonly low: DecimalText;
  readonly high: DecimalText;
  readonly why: string;
}

interface Naming {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly places: number;
}

/** Makes a figure from a value that was given. `by` says by whom or what: "the spec", "table value". */
export function given(
  naming: Naming & { readonly value: DecimalInput; readonly by: string; readonly sources: readonly Source[] },
): Figure {
  const { id, label, unit, places, value, by, sources } = naming;
  return { id, label, value: decimalText(dec(value)), unit, places, working: { kind: "given", by }, sources };
}

/** Makes a figure from a value that a procedure found (a search, a rounding, an iteration). */
export function found(
  naming: Naming & { readonly value: DecimalInput; readonly by: string; readonly sources: readonly Source[] },
): Figure {
  const { id, label, unit, places, value, by, sources } = naming;
  return { id, label, value: decimalText(dec(value)), unit, places, working: { kind: "procedure", by }, sources };
}

/** What a formula is fed with: figures, lists of figures, or plain numbers. */
export type Feed = Figure | readonly Figure[] | DecimalInput;

/**
 * Makes a figure by working out a formula.
 *
 * The formula is calculated, printed in names and printed in numbers from the same text.
 *
 * @param from - a value for every name in the formula
 * @throws {RangeError} on a missing name or a division by zero: bugs of the caller.
 * @example worked({ id: "a", label: "total", unit: "g", places: 0, formula: "x + 1", from: { x: 2 }, sources: [] }).value // => "3"
 */
export function worked(
  naming: Naming & {
    readonly formula: string;
    readonly from: Readonly<Record<string, Feed>>;
    readonly sources: readonly Source[];
  },
): Figure {
  const { id, label, unit, places, formula, from, sources } = naming;
  const expression = parseExpression(formula);
  const values: Record<string, Value> = {};
  const lengths: Record<string, number> = {};
  for (const [name, feed] of Object.entries(from)) {
    values[name] = isList(feed) ? feed.map(numberOf) : numberOf(feed);
    if (isList(feed)) lengths[name] = feed.length;
  }
  const value = evaluate(expression, values);
  const digits: Digits = { places: places + 2, significant: Math.max(7, value.e + places + 3) };
  const working: Working = {
    kind: "formula",
    formula: writeExpression(expression, (name) => nameOf(name, from[name], digits)),
    numbers: writeExpression(expression, (name, index) => numberText(from[name], index, digits), lengths),
    from: Object.values(from)
      .flatMap(figuresIn)
      .map((figure) => figure.id),
  };
  const feeds = Object.values(from).flatMap(figuresIn);
  if (feeds.length > 0) fedWith.set(working, feeds);
  return { id, label, value: decimalText(value), unit, places, working, sources };
}

/** What each formula was fed with, kept as long as its figure is. A copy of a figure shares its working. */
const fedWith = new WeakMap<Working, readonly Figure[]>();

/**
 * Figures and all that they rest on, what comes first in the calculation first; of figures with one id the first counts.
 *
 * It knows figures that were worked out in this program, not such as came back from JSON.
 *
 * @example withOrigins([worked({ id: "b", label: "b", unit: "", places: 0, formula: "2 * a", from: { a: given({ id: "a", label: "a", unit: "", places: 0, value: 3, by: "the spec", sources: [] }) }, sources: [] })]).map(({ id }) => id) // => ["a", "b"]
 */
export function withOrigins(figures: readonly Figure[]): readonly Figure[] {
  const kept = new Map<string, Figure>();
  const keep = (figure: Figure): void => {
    if (kept.has(figure.id)) return;
    for (const feed of fedWith.get(figure.working) ?? []) keep(feed);
    kept.set(figure.id, figure);
  };
  for (const figure of figures) keep(figure);
  return [...kept.values()];
}

/**
 * Figures under a name of their own, for two of a kind in one result: `before` makes `before.solution.ph` of `solution.ph`.
 * What they rest on among the figures given is renamed with them.
 *
 * @example scoped("before", [given({ id: "dose", label: "dose", unit: "g", places: 1, value: 3, by: "the spec", sources: [] })])[0]?.id // => "before.dose"
 */
export function scoped(scope: string, figures: readonly Figure[]): readonly Figure[] {
  const ids = new Set(figures.map(({ id }) => id));
  const under = (id: string): string => (ids.has(id) ? `${scope}.${id}` : id);
  return figures.map((figure) => ({
    ...figure,
    id: under(figure.id),
    working:
      figure.working.kind === "formula" ? { ...figure.working, from: figure.working.from.map(under) } : figure.working,
  }));
}

/** The exact value of a figure. */
export function exact(figure: Figure): Decimal {
  return dec(figure.value);
}

/** The value as shown, without its unit. @example shownValue({ value: "36.25", places: 1 }) // => "36.3" */
export function shownValue(figure: Pick<Figure, "value" | "places">): string {
  return fixedText(figure.value, figure.places);
}

/** The value as shown, with its unit. */
export function shown(figure: Figure): string {
  return figure.unit === "" ? shownValue(figure) : `${shownValue(figure)} ${figure.unit}`;
}

/** A copy under another name, for a figure that appears in a second place. */
export function renamed(figure: Figure, id: string, label: string = figure.label): Figure {
  return { ...figure, id, label };
}

function isList(feed: Feed | undefined): feed is readonly Figure[] {
  return Array.isArray(feed);
}

function figuresIn(feed: Feed): readonly Figure[] {
  if (isList(feed)) return feed;
  return isFigure(feed) ? [feed] : [];
}

function isFigure(feed: Feed): feed is Figure {
  return typeof feed === "object" && "working" in feed;
}

function numberOf(feed: Figure | DecimalInput): Decimal {
  return isFigure(feed) ? dec(feed.value) : dec(feed);
}

function nameOf(name: string, feed: Feed | undefined, digits: Digits): string {
  if (feed === undefined) return name;
  if (isList(feed)) return name.replaceAll("_", " ");
  return isFigure(feed) ? feed.label : shortText(dec(feed), digits);
}

function numberText(feed: Feed | undefined, index: number | undefined, digits: Digits): string {
  if (feed === undefined) return "?";
  const one = isList(feed) ? feed[index ?? 0] : feed;
  if (one === undefined) return "?";
  const value = numberOf(one);
  const text = shortText(value, digits);
  return value.isNegative() ? `(${text})` : text;
}

/** How far the numbers of a working are written out: whichever of the two says more. */
interface Digits {
  readonly places: number;
  readonly significant: number;
}

/** Enough digits to check the working by hand: two more than the figure shows, and seven significant ones at least. */
function shortText(value: Decimal, { places, significant }: Digits): string {
  return value
    .toDecimalPlaces(Math.max(places, significant - 1 - value.e, 0))
    .toFixed()
    .replace("-", "−");
}
