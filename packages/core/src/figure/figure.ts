import {
  type Decimal,
  type DecimalInput,
  type DecimalText,
  dec,
  decimalText,
  decOf,
  fixedText,
} from "../number/decimal.ts";
import { evaluate, type NamesIn, parseExpression, type Value } from "./expression.ts";
import type { Source } from "./source.ts";

/**
 * A number that can explain itself, as plain data: it names what went into it by id, and the graph of its result holds each
 * of those once (`published`).
 */
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
  /** What it can be at all, where its unit does not tell: a rest is nothing at least. */
  readonly bounds?: Bounds | undefined;
  /** Figures, by id, within which it is worked out in this way; beyond them the noodle asked anew takes another. */
  readonly stands?: Stands | undefined;
  /** What went into it, until `published` puts that into the graph of its result and takes it off. */
  readonly behind?: readonly Figure[] | undefined;
}

/** Ends that a value keeps to, whatever it is worked out from. */
export interface Bounds {
  readonly least?: DecimalText | undefined;
  readonly most?: DecimalText | undefined;
}

/** What a figure is at least and at most, by the ids of other figures. */
export interface Stands {
  readonly least?: string | undefined;
  readonly most?: string | undefined;
}

/** How a figure came about. */
export type Working =
  /** It was given: by the spec, a table or a definition. */
  | { readonly kind: "given"; readonly by: string }
  /** It was calculated: the text of the formula, and what each of its names stands for. */
  | { readonly kind: "formula"; readonly formula: string; readonly from: Readonly<Record<string, Fed>> }
  /** It was found by a procedure that is no single formula. */
  | {
      readonly kind: "procedure";
      readonly by: string;
      /** What it looked at, where figures tell it. */
      readonly on?: readonly string[] | undefined;
      /** What those were then, where they were changed since. */
      readonly at?: readonly DecimalText[] | undefined;
    };

/** What a name in a formula stands for: a figure or a list of figures by id, or a plain number with no figure behind it. */
export type Fed =
  | { readonly figure: string }
  | { readonly figures: readonly string[] }
  | { readonly constant: DecimalText };

/** Least and greatest value of a figure, and why. */
export interface Range {
  readonly low: DecimalText;
  readonly high: DecimalText;
  readonly why: string;
}

export interface Naming {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly places: number;
  readonly bounds?: Bounds | undefined;
}

/**
 * Names figures that have one unit and as many places.
 *
 * @example named("g", 1)("dose", "dose") // => { id: "dose", label: "dose", unit: "g", places: 1 }
 */
export function named(unit: string, places: number): (id: string, label: string) => Naming {
  return (id, label) => ({ id, label, unit, places });
}

/** Makes a figure from a value that was given. `by` says by whom or what: "the spec", "table value". */
export function given(naming: Naming, value: DecimalInput, by: string, ...sources: readonly Source[]): Figure {
  return figureOf(naming, decimalText(decOf(naming.label, value)), { kind: "given", by }, sources);
}

/** A figure as it is, or one made from a value that was given. */
export function asFigure(
  naming: Naming,
  value: DecimalInput | Figure,
  by: string,
  ...sources: readonly Source[]
): Figure {
  return isFigure(value) ? value : given(naming, value, by, ...sources);
}

/** Makes a figure from a value that a procedure found (a search, a rounding, an iteration) when it looked at others, `on`. */
export function found(
  naming: Naming,
  value: DecimalInput,
  by: string,
  on?: readonly Figure[],
  ...sources: readonly Source[]
): Figure {
  const working: Working = { kind: "procedure", by, ...(on && { on: on.map(idOf) }) };
  return figureOf(naming, decimalText(dec(value)), working, sources, on);
}

function figureOf(
  { id, label, unit, places, bounds }: Naming,
  value: DecimalText,
  working: Working,
  sources: readonly Source[],
  behind?: readonly Figure[],
): Figure {
  return { id, label, value, unit, places, working, sources, ...(bounds && { bounds }), ...(behind && { behind }) };
}

/** What a formula is fed with: figures, lists of figures, or plain numbers. */
export type Feed = Figure | readonly Figure[] | DecimalInput;

type KeysOf<From> = From extends unknown ? keyof From : never;
/** The names that are there in no case: what is fed has to hold them. */
type Holding<Name extends string, From> = Readonly<Record<Exclude<Name, KeysOf<From>>, Feed>>;

/**
 * Makes a figure by working out a formula, whose words and numbers are written when somebody asks (`writtenWorking`).
 *
 * @param from - a value for every name in the formula: one that is missing does not compile
 * @throws {RangeError} on a missing name or a division by zero: bugs of the caller.
 * @example worked({ id: "a", label: "total", unit: "g", places: 0 }, "x + 1", { x: 2 }).value // => "3"
 */
export function worked<const Text extends string, From extends Readonly<Record<string, Feed>>>(
  naming: Naming,
  formula: Text,
  from: From & Holding<NamesIn<Text>, From>,
  ...sources: readonly Source[]
): Figure {
  const feeds: Readonly<Record<string, Feed>> = from;
  const fed: Record<string, Fed> = {};
  const values: Record<string, Value> = {};
  const behind: Figure[] = [];
  for (const name of Object.keys(feeds)) {
    const feed = feeds[name];
    if (feed === undefined) continue;
    if (isList(feed)) {
      behind.push(...feed);
      fed[name] = { figures: feed.map(idOf) };
      values[name] = feed.map(exact);
    } else if (isFigure(feed)) {
      behind.push(feed);
      fed[name] = { figure: feed.id };
      values[name] = exact(feed);
    } else {
      const constant = decimalText(decOf(name, feed));
      fed[name] = { constant };
      values[name] = dec(constant);
    }
  }
  const value = decimalText(evaluate(parseExpression(formula), (name) => values[name]));
  return figureOf(naming, value, { kind: "formula", formula, from: fed }, sources, behind);
}

/**
 * Makes the sum of figures, which are under the one name that the formula has for them; of none it is nothing.
 *
 * @example summed({ id: "a", label: "dough", unit: "g", places: 0 }, { masses: [] }, { cite: "mass balance", standing: "definition" }).value // => "0"
 */
export function summed(naming: Naming, from: Readonly<Record<string, readonly Figure[]>>, source: Source): Figure {
  const [name, figures = []] = Object.entries(from)[0] ?? [];
  if (figures.length === 0) return worked(naming, "0", {}, source);
  return worked(naming, `sum(${name})`, from, source);
}

/**
 * The value of a formula.
 *
 * @param numberOf - the value of a figure that goes into it
 * @throws {RangeError} as `worked`
 */
export function workedOut(
  formula: string,
  from: Readonly<Record<string, Fed>>,
  numberOf: (id: string) => Decimal,
): DecimalText {
  const named = (name: string): Value | undefined => {
    const fed = from[name];
    if (fed === undefined) return undefined;
    if ("figure" in fed) return numberOf(fed.figure);
    return "figures" in fed ? fed.figures.map(numberOf) : dec(fed.constant);
  };
  return decimalText(evaluate(parseExpression(formula), named));
}

/** The figures that went straight into a figure, by id, in the order of the names of its formula or of what a procedure looked at; behind them those within which it stands. */
export function feedsOf({ working, stands }: Figure): readonly string[] {
  if (working.kind === "procedure") return working.on ?? [];
  if (working.kind === "given") return [];
  const ids: string[] = [];
  for (const name of Object.keys(working.from)) {
    const fed = working.from[name];
    if (fed === undefined || "constant" in fed) continue;
    if ("figure" in fed) ids.push(fed.figure);
    else ids.push(...fed.figures);
  }
  if (stands?.least !== undefined) ids.push(stands.least);
  if (stands?.most !== undefined) ids.push(stands.most);
  return ids;
}

/**
 * A figure that rests on others in place of those that went into it.
 *
 * @param anew - what stands in for the figure of an id, where anything does
 */
export function restingOn(figure: Figure, anew: (id: string) => Figure | undefined): Figure {
  const { working, behind, stands } = figure;
  const feeds = feedsOf(figure);
  if (working.kind === "given" || feeds.length === 0) return figure;
  const idFor = (id: string): string => anew(id)?.id ?? id;
  const fedAnew = (fed: Fed): Fed => {
    if ("figure" in fed) return { figure: idFor(fed.figure) };
    return "figures" in fed ? { figures: fed.figures.map(idFor) } : fed;
  };
  return {
    ...figure,
    ...(stands && { stands: Object.fromEntries(Object.entries(stands).map(([end, id]) => [end, idFor(id)])) }),
    working:
      working.kind === "procedure"
        ? { ...working, on: feeds.map(idFor) }
        : {
            ...working,
            from: Object.fromEntries(Object.entries(working.from).map(([name, fed]) => [name, fedAnew(fed)])),
          },
    behind: feeds.flatMap((id) => anew(id) ?? behind?.find((one) => one.id === id) ?? []),
  };
}

/** A figure whose way of working holds while it is no less, or no more, than others. */
export function standing(figure: Figure, { least, most }: { readonly least?: Figure; readonly most?: Figure }): Figure {
  const limits = [least, most].filter((one) => one !== undefined);
  return {
    ...figure,
    stands: { ...(least && { least: least.id }), ...(most && { most: most.id }) },
    behind: [...(figure.behind ?? []), ...limits],
  };
}

function idOf({ id }: Figure): string {
  return id;
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
