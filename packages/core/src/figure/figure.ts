import { type Decimal, type DecimalInput, type DecimalText, dec, decimalText, fixedText } from "../number/decimal.ts";
import { evaluate, parseExpression, type Value } from "./expression.ts";
import type { Source } from "./source.ts";

/**
 * A number that can explain itself: plain data, nothing about it hidden.
 *
 * While a result is worked out, a figure holds the figures that went into it. In a published result it names them by id,
 * and the result's graph holds each once (`published`).
 */
export interface Figure<R = Ref> {
  /** Stable name of the kind `area.what`, unique within one result. */
  readonly id: string;
  /** What it is, in words. */
  readonly label: string;
  readonly value: DecimalText;
  /** Unit as printed: `g`, `%`, `% of flour`, `meq/100 g flour`, or empty for a plain number. */
  readonly unit: string;
  /** Decimal places that make sense when it is shown. */
  readonly places: number;
  readonly working: Working<R>;
  readonly sources: readonly Source[];
  /** Least and greatest value it may have, where that is known. */
  readonly range?: Range | undefined;
}

/** A figure that went into another: the figure itself, or its id in the graph of the result. */
export type Ref = string | Figure;

/** How a figure came about. */
export type Working<R = Ref> =
  /** It was given: by the spec, a table or a definition. */
  | { readonly kind: "given"; readonly by: string }
  /** It was calculated: the text of the formula, and what each of its names stands for. */
  | {
      readonly kind: "formula";
      readonly formula: string;
      readonly from: Readonly<Record<string, Fed<R>>>;
    }
  /** It was found by a procedure that is no single formula; `on` is what that looked at, where figures tell it. */
  | { readonly kind: "procedure"; readonly by: string; readonly on?: readonly R[] | undefined };

/** What a name in a formula stands for: a figure, a list of figures, or a plain number with no figure behind it. */
export type Fed<R = Ref> =
  | { readonly figure: R }
  | { readonly figures: readonly R[] }
  | { readonly constant: DecimalText };

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

/** Makes a figure from a value that a procedure found (a search, a rounding, an iteration) when it looked at others, `on`. */
export function found(
  naming: Naming & {
    readonly value: DecimalInput;
    readonly by: string;
    readonly on?: readonly Figure[];
    readonly sources: readonly Source[];
  },
): Figure {
  const { id, label, unit, places, value, by, on, sources } = naming;
  const working = { kind: "procedure", by, ...(on && { on }) } as const;
  return { id, label, value: decimalText(dec(value)), unit, places, working, sources };
}

/** What a formula is fed with: figures, lists of figures, or plain numbers. */
export type Feed = Figure | readonly Figure[] | DecimalInput;

/**
 * Makes a figure by working out a formula, whose words and numbers are written when somebody asks (`writtenWorking`).
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
  const fed: Record<string, Fed<Figure>> = {};
  for (const name of Object.keys(from)) {
    const feed = from[name] ?? 0;
    if (isList(feed)) fed[name] = { figures: feed };
    else fed[name] = isFigure(feed) ? { figure: feed } : { constant: decimalText(dec(feed)) };
  }
  const value = workedOut(formula, fed, exact);
  return { id, label, value, unit, places, working: { kind: "formula", formula, from: fed }, sources };
}

/**
 * The value of a formula.
 *
 * @param numberOf - the value of a figure that goes into it
 * @throws {RangeError} as `worked`
 */
export function workedOut<R>(
  formula: string,
  from: Readonly<Record<string, Fed<R>>>,
  numberOf: (ref: R) => Decimal,
): DecimalText {
  const named = (name: string): Value | undefined => {
    const fed = from[name];
    if (fed === undefined) return undefined;
    if ("figure" in fed) return numberOf(fed.figure);
    return "figures" in fed ? fed.figures.map(numberOf) : dec(fed.constant);
  };
  return decimalText(evaluate(parseExpression(formula), named));
}

/** The exact value of a figure. */
export function exact(figure: Figure): Decimal {
  return dec(figure.value);
}

/** The value as shown, without its unit. @example shownValue({ value: "36.25", places: 1 }) // => "36.3" */
export function shownValue(figure: Pick<Figure, "value" | "places">): string {
  return fixedText(figure.value, figure.places);
}

/**
 * The value as shown, with its unit.
 *
 * @example shown(example("school-noodle").formula.water.added) // => "35.00 % of flour"
 */
export function shown(figure: Figure): string {
  return figure.unit === "" ? shownValue(figure) : `${shownValue(figure)} ${figure.unit}`;
}

/** A copy under another name, for a figure that appears in a second place. */
export function renamed(figure: Figure, id: string, label: string = figure.label): Figure {
  return { ...figure, id, label };
}

function isList(feed: Feed): feed is readonly Figure[] {
  return Array.isArray(feed);
}

export function isFigure(feed: Feed): feed is Figure {
  return typeof feed === "object" && "working" in feed;
}
