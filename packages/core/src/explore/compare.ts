import type { Batch } from "../batch/batch.ts";
import type { Cost } from "../batch/cost.ts";
import { type Figure, given, worked } from "../figure/figure.ts";
import { type Published, published, underScope } from "../figure/graph.ts";
import { definition, massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import type { FormulaLine } from "../formula/line.ts";
import { plainName } from "../materials/nearest.ts";
import { dec, decimalText } from "../number/decimal.ts";
import { type BatchTolerance, differenceTolerance } from "./spec-tolerance.ts";
import { toldApart } from "./told-apart.ts";
import type { Tolerance } from "./tolerance.ts";
import { saltOfDough } from "./wanted-figures.ts";

/** One of the noodles that are set side by side; its batch, cost and errors where they can be had. */
export interface Side {
  readonly name: string;
  readonly formula: Formula;
  readonly batch?: Batch;
  readonly cost?: Cost;
  readonly tolerance?: BatchTolerance;
}

/** One figure of each noodle, in their order, and how it differs from that of the first. A side that has none has null. */
export interface ComparedLine {
  readonly id: string;
  /** The ingredient, or what the figure is. */
  readonly label: string;
  readonly unit: string;
  readonly figures: readonly (Figure | null)[];
  /** Each less the first, that of the first itself left out. */
  readonly differences: readonly (Figure | null)[];
  /** Where one of them leaves something out, as a cost what has no price: it has no difference to the others. */
  readonly partly?: true;
}

/** What errors leave open of one figure: its range in each noodle, and whether each is apart from that of the first. */
export interface ComparedRange extends ComparedLine {
  /** Whether the difference is greater than all errors that are told can make it. */
  readonly apart: readonly (boolean | null)[];
}

/** Noodles side by side. */
export interface Comparison {
  readonly names: readonly string[];
  /** Ingredients on 100 of flour, in one load, in g, and in one bowl, in g. */
  readonly formula: readonly ComparedLine[];
  readonly loads: readonly ComparedLine[];
  readonly bowls: readonly ComparedLine[];
  /** What they come to. */
  readonly sums: readonly ComparedLine[];
  readonly ranges: readonly ComparedRange[];
  /** What nobody states the error of in one of them, and nothing tells. */
  readonly exact: readonly string[];
}

/**
 * Sets noodles side by side: on 100 of flour, by the load, by the bowl, and in what they come to. The first is the one that
 * the others are held against. An ingredient of the same name and the same part in the dough is the same; of several such,
 * the first is the first, and so on.
 */
export function compareNoodles(sides: readonly Side[]): Published<Comparison> {
  const named = sides.map((side, index) => ownFigures(side, `of-${index + 1}`));
  const of = (key: keyof ReturnType<typeof ownFigures>) => named.map((one) => one[key]);
  const free = (key: string, index: number): boolean =>
    ofAlkali.test(key) && sides[index]?.formula.alkali === undefined;
  const [first, ...others] = sides.map(({ tolerance }) => tolerance);
  const open = others.map((other) => (first && other ? differenceTolerance(first, other) : []));
  const comparison: Comparison = {
    names: sides.map(({ name }) => name),
    formula: compared("formula", of("formula"), asItIs),
    loads: compared("load", of("load"), asItIs),
    bowls: compared("bowl", of("bowl"), asItIs),
    sums: compared("sum", of("sums"), (line, key) => (key.startsWith("cost") ? asPriced(line, sides) : line), free),
    ranges: compared("range", of("ranges"), (line, key) => withApart(line, key, open), free),
    exact: [...new Set(sides.flatMap(({ tolerance }) => tolerance?.exact ?? []))],
  };
  return published(comparison);
}

/** A figure, what it is matched by, and what it is called beside the others. */
interface Matched {
  readonly key: string;
  readonly label: string;
  readonly figure: Figure;
}

/** The figures of one noodle under a name of their own, with all that they rest on. */
function ownFigures({ formula, batch, cost, tolerance }: Side, scope: string) {
  const { blend, water, alkali, salt } = formula;
  const bowls = batch?.target.bowls;
  const sums: readonly (readonly [key: string, figure: Figure | undefined, label?: string])[] = [
    ["protein", blend.protein?.at14],
    ["gluten", blend.glutenProtein?.at14],
    ["ash", blend.ash?.at14],
    ["wholegrain", blend.wholegrain],
    ["added", water.added],
    ["dough", water.doughWater],
    ["anhydrous", alkali?.anhydrous],
    ["potassium", alkali?.potassiumShare],
    ["alkalinity-m", alkali?.alkalinityM],
    ["alkalinity-p", alkali?.alkalinityP],
    ["salt", salt],
    ["salt-dough", saltOfDough({ salt, water })],
    ["bowls", bowls],
    [`cost of a bowl ${cost?.currency}`, cost?.bowl, "one bowl"],
    [`cost of raw strands ${cost?.currency}`, cost?.kilogram, "raw strands"],
  ];
  return underScope(
    scope,
    {
      formula: ofLines(formula.lines.map((line) => ({ line, figure: line.parts }))),
      load: batch && ofLines(batch.lines.map(({ line, load }) => ({ line, figure: load }))),
      bowl:
        batch &&
        bowls &&
        ofLines(batch.lines.map(({ line, batch: whole }) => ({ line, figure: perBowl(line, whole, bowls) }))),
      sums: sums.flatMap(([key, figure, label = figure?.label ?? ""]) =>
        figure === undefined ? [] : [{ key, label, figure }],
      ),
      ranges: (tolerance?.outputs ?? []).map(({ id, figure }) => ({ key: id, label: figure.label, figure })),
    },
    undefined,
    formula.graph,
    ...(batch ? [batch.graph] : []),
    ...(cost ? [cost.graph] : []),
    ...(tolerance ? [tolerance.graph] : []),
  );
}

/** Figures of ingredients, matched by part in the dough and name. */
function ofLines(all: readonly { readonly line: FormulaLine; readonly figure: Figure }[]): readonly Matched[] {
  const keys = toldApart(all.map(({ line: { role, name } }) => `${role} ${plainName(name)}`));
  return all.map(({ line, figure }, index) => ({ key: keys[index] ?? line.id, label: line.name, figure }));
}

function perBowl({ id, name }: FormulaLine, batch: Figure, bowls: Figure): Figure {
  const naming = { id: `${id}.bowl`, label: `${name} in a bowl`, unit: "g", places: 2 };
  return worked(naming, "batch / bowls", { batch, bowls }, massBalance);
}

/** What a dough without alkali has none of. */
const ofAlkali = /^(?:anhydrous|alkalinity-[mp]|alkali)$/u;

function asItIs(line: ComparedLine): ComparedLine {
  return line;
}

/** Two costs of which one leaves something out are no difference. */
function asPriced(line: ComparedLine, sides: readonly Side[]): ComparedLine {
  const [first, ...others] = sides.map(({ cost }) => cost !== undefined && cost.unpriced.length > 0);
  if (first !== true && !others.includes(true)) return line;
  const differences = line.differences.map((one, index) => (first || others[index] ? null : one));
  return { ...line, differences, partly: true };
}

/**
 * Lines of the figures of every side.
 *
 * @param told - a line with what else is told of what it is matched by
 * @param none - whether a side that has not a figure has none of it
 */
function compared<T = ComparedLine>(
  table: string,
  sides: readonly (readonly Matched[] | undefined)[],
  told: (line: ComparedLine, key: string) => T,
  none: (key: string, side: number) => boolean = () => true,
): readonly T[] {
  const found = sides.map((side) => side && new Map(side.map((one) => [one.key, one])));
  const all = new Map(found.flatMap((side) => [...(side ?? [])]).reverse());
  const keys = new Set(found.flatMap((side) => [...(side?.keys() ?? [])]));
  return [...keys].flatMap((key, row) => {
    const like = all.get(key);
    if (like === undefined) return [];
    const id = `${table}.${row + 1}`;
    const figures = found.map(
      (side, index) =>
        side?.get(key)?.figure ?? (side && none(key, index) ? noneOf(like.figure, `of-${index + 1}.${id}`) : null),
    );
    const [first, ...others] = figures;
    const differences = others.map((figure, index) =>
      first && figure ? difference(`${id}.${index + 2}`, first, figure) : null,
    );
    return [told({ id, label: like.label, unit: like.figure.unit, figures, differences }, key)];
  });
}

function noneOf({ label, unit, places }: Figure, id: string): Figure {
  return given({ id, label, unit, places }, 0, "not in this noodle", definition);
}

function difference(id: string, first: Figure, other: Figure): Figure {
  const { label, unit } = other;
  const naming = { id: `difference.${id}`, label: `difference of ${label}`, unit };
  const places = Math.max(first.places, other.places);
  return worked({ ...naming, places }, "other - first", { other, first }, definition);
}

/** The differences with what errors leave open of them, and whether any of them may be none at all. */
function withApart(line: ComparedLine, key: string, open: readonly (readonly Tolerance[])[]): ComparedRange {
  const [first, ...figures] = line.figures;
  const ranges = open.map((of, index) => {
    const told = of.find(({ id }) => id === key)?.figure.range;
    return told ?? noneBeside(first, figures[index]);
  });
  return {
    ...line,
    differences: line.differences.map((figure, index) => {
      const range = ranges[index];
      return figure && { ...figure, ...(range && { range }) };
    }),
    apart: ranges.map((range) => (range ? dec(range.low).gt(0) || dec(range.high).lt(0) : null)),
  };
}

/** How far apart two figures can be of which one is none at all, and so off by nothing. */
function noneBeside(first: Figure | null = null, other: Figure | null = null): Figure["range"] {
  if (first === null || other === null || (first.range !== undefined) === (other.range !== undefined)) return undefined;
  const [low, high] = [other.range?.low ?? other.value, other.range?.high ?? other.value];
  return {
    low: decimalText(dec(low).minus(first.range?.high ?? first.value)),
    high: decimalText(dec(high).minus(first.range?.low ?? first.value)),
    why: "that of the one noodle, beside none at all",
  };
}
