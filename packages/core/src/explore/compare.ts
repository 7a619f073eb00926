import type { Batch } from "../batch/batch.ts";
import type { Cost } from "../batch/cost.ts";
import { type Figure, given, worked } from "../figure/figure.ts";
import { type Graph, type Published, published, scoped, withOrigins } from "../figure/graph.ts";
import { definition, massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { plainName } from "../materials/nearest.ts";
import { dec, decimalText } from "../number/decimal.ts";
import type { Tolerance } from "./tolerance.ts";

/** One of the noodles that are set side by side; its batch, cost and errors where they can be had. */
export interface Side {
  readonly name: string;
  readonly formula: Formula;
  readonly batch?: Batch;
  readonly cost?: Cost;
  readonly tolerance?: readonly Tolerance[];
  /** What errors do to how it differs from the first. */
  readonly difference?: readonly Tolerance[];
}

/** One figure of each noodle, in their order, and how it differs from that of the first. A side that has none is left open. */
export interface ComparedLine {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly figures: readonly (Figure | undefined)[];
  /** Each less the first, that of the first itself left out. */
  readonly differences: readonly (Figure | undefined)[];
  /** Where one of them leaves something out, as a cost what has no price: then the differences tell nothing. */
  readonly partly?: true;
}

/** What errors leave open of one figure: its range in each noodle, and whether each is apart from that of the first. */
export interface ComparedRange extends ComparedLine {
  /** Whether the difference is greater than all errors together can make it. */
  readonly apart: readonly (boolean | undefined)[];
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
}

/**
 * Sets noodles side by side: on 100 of flour, by the load, by the bowl, and in what they come to. The first is the one that
 * the others are held against. An ingredient of the same name and the same part in the dough is the same.
 */
export function compareNoodles(sides: readonly Side[]): Published<Comparison> {
  const named = sides.map((side, index) => ownFigures(side, `of-${index + 1}`));
  const lines = named.map(({ formula }) => formula);
  const free = (key: string, index: number): boolean =>
    ofAlkali.test(key) && sides[index]?.formula.alkali === undefined;
  const comparison: Comparison = {
    names: sides.map(({ name }) => name),
    formula: compared("formula", lines, () => true),
    loads: compared(
      "load",
      named.map(({ load }) => load),
      () => true,
    ),
    bowls: compared(
      "bowl",
      named.map(({ bowl }) => bowl),
      () => true,
    ),
    sums: compared(
      "sum",
      named.map(({ sums }) => sums),
      free,
    ).map((line) => asPriced(line, sides)),
    ranges: compared(
      "range",
      named.map(({ ranges }) => ranges),
      free,
    ).map((line) => withApart(line, sides.slice(1))),
  };
  return published(comparison, ...named.map(({ graph }) => graph));
}

/** Figures by what they are matched by. */
type Matched = ReadonlyMap<string, Figure>;

interface OwnFigures {
  readonly formula: Matched;
  readonly load: Matched | undefined;
  readonly bowl: Matched | undefined;
  readonly sums: Matched;
  readonly ranges: Matched;
  /** These and all that they rest on. */
  readonly graph: Graph;
}

/** The figures of one noodle under a name of their own, with all that they rest on. */
function ownFigures({ formula, batch, cost, tolerance }: Side, scope: string): OwnFigures {
  const known: readonly Graph[] = [formula, ...(batch ? [batch] : []), ...(cost ? [cost] : [])].map(
    ({ graph }) => graph,
  );
  const graph: Record<string, Figure> = {};
  const under = (figures: readonly (readonly [string, Figure | undefined])[]): Matched => {
    const present = new Map(
      figures.flatMap(([key, figure]) => (figure === undefined ? [] : [[figure.id, key] as const])),
    );
    const all = withOrigins(
      figures.flatMap(([, figure]) => figure ?? []),
      ...known,
    );
    const own = scoped(scope, all);
    for (const figure of own) graph[figure.id] = figure;
    return new Map(
      all.flatMap(({ id }, index) => {
        const [key, figure] = [present.get(id), own[index]];
        return key === undefined || figure === undefined ? [] : [[key, figure] as const];
      }),
    );
  };
  const { blend, water, alkali, salt } = formula;
  const bowls = batch?.target.bowls;
  const one = `1 kg of raw strands`;
  const matched = {
    formula: under(formula.lines.map((line) => [keyOf(line), line.parts])),
    load: batch && under(batch.lines.map(({ line, load }) => [keyOf(line), load])),
    bowl:
      batch &&
      bowls &&
      under(batch.lines.map(({ line, batch: whole }) => [keyOf(line), perBowl(line.id, whole, bowls)])),
    sums: under([
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
      ["salt-dough", saltOfDough(salt, water.dough)],
      ["bowls", bowls],
      [`cost of a bowl ${cost?.currency}`, cost?.bowl],
      [`cost of ${one} ${cost?.currency}`, cost?.kilogram],
    ]),
    ranges: under((tolerance ?? []).map(({ figure }) => [figure.id, figure])),
  };
  return { ...matched, graph };
}

function keyOf({ role, name }: Formula["lines"][number]): string {
  return `${role} ${plainName(name)}`;
}

function perBowl(id: string, batch: Figure, bowls: Figure): Figure {
  const naming = { id: `${id}.bowl`, label: batch.label.replace("in the batch", "in a bowl"), unit: "g", places: 2 };
  return worked(naming, "batch / bowls", { batch, bowls }, massBalance);
}

function saltOfDough(salt: Figure, dough: Figure): Figure {
  const naming = { id: "salt.of-dough", label: "salt in the dough", unit: "% of dough", places: 2 };
  return worked(naming, "100 * salt / dough", { salt, dough }, massBalance);
}

/** What a dough without alkali has none of. */
const ofAlkali = /^(?:anhydrous|alkalinity-[mp]|tolerance\.alkali\.value)$/u;

/** Costs of which one leaves something out are no difference. */
function asPriced(line: ComparedLine, sides: readonly Side[]): ComparedLine {
  const isOpen = ({ cost }: Side): boolean => cost !== undefined && cost.unpriced.length > 0;
  if (!line.figures.some((figure) => figure?.id.includes("cost.")) || !sides.some(isOpen)) return line;
  return {
    ...line,
    label: line.label.includes("priced") ? line.label : `${line.label}, what is priced of it`,
    partly: true,
  };
}

/** Lines of the figures of every side. @param none - whether a side that has not a figure has none of it */
function compared(
  table: string,
  sides: readonly (Matched | undefined)[],
  none: (key: string, side: number) => boolean,
): readonly ComparedLine[] {
  const keys = [...new Set(sides.flatMap((side) => [...(side?.keys() ?? [])]))];
  return keys.flatMap((key, row) => {
    const like = sides.map((side) => side?.get(key)).find((figure) => figure !== undefined);
    if (like === undefined) return [];
    const id = `${table}.${row + 1}`;
    const figures = sides.map(
      (side, index) => side?.get(key) ?? (side && none(key, index) ? noneOf(like, `of-${index + 1}.${id}`) : undefined),
    );
    const { label, unit } = like;
    const [first, ...others] = figures;
    const differences = others.map(
      (figure, index) => first && figure && difference(`${id}.${index + 2}`, first, figure),
    );
    return [{ id, label, unit, figures, differences }];
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
function withApart(line: ComparedLine, others: readonly Side[]): ComparedRange {
  const [first, ...figures] = line.figures;
  const ranges = others.map(({ difference: of }, index) => {
    const told = of?.find(({ figure }) => figure.label === line.label)?.figure.range;
    return told ?? noneBeside(first, figures[index]);
  });
  return {
    ...line,
    differences: line.differences.map((figure, index) => {
      const range = ranges[index];
      return figure && { ...figure, ...(range && { range }) };
    }),
    apart: ranges.map((range) => range && (dec(range.low).gt(0) || dec(range.high).lt(0))),
  };
}

/** How far apart two figures can be of which one is none at all, and so off by nothing. */
function noneBeside(first: Figure | undefined, other: Figure | undefined): Figure["range"] {
  if (first === undefined || other === undefined || (first.range !== undefined) === (other.range !== undefined))
    return undefined;
  const [low, high] = [other.range?.low ?? other.value, other.range?.high ?? other.value];
  return {
    low: decimalText(dec(low).minus(first.range?.high ?? first.value)),
    high: decimalText(dec(high).minus(first.range?.low ?? first.value)),
    why: "that of the one noodle, beside none at all",
  };
}
