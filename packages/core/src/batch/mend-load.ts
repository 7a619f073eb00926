import { type Figure, found, given, worked } from "../figure/figure.ts";
import { definition, fromSpec, massBalance } from "../figure/source.ts";
import type { Role } from "../formula/entries.ts";
import type { Formula } from "../formula/formula.ts";
import { type FormulaLine, inUse } from "../formula/line.ts";
import { moistureFigure } from "../formula/made-of.ts";
import {
  type Decimal,
  type DecimalText,
  dec,
  decimalText,
  digitsText,
  fixedText,
  roundToDivision,
  sum,
  ZERO,
} from "../number/decimal.ts";
import { roundKeepingTotal } from "../number/rounding.ts";
import { asWeighed } from "./as-weighed.ts";
import { isTooMuch } from "./at-the-scale.ts";
import { reworkId } from "./mend-wish.ts";
import type { Rework } from "./rework.ts";
import { chooseScale, type Scale, type Scales, type WeighedLine } from "./weighing.ts";

/** One ingredient of a load that is mended, g. */
export interface MendedLine {
  readonly name: string;
  readonly planned: WeighedLine;
  readonly already: Figure;
  readonly add: Figure;
  readonly total: Figure;
  /** The scale for what is added. */
  readonly scale: string;
  /** g */
  readonly division: DecimalText;
}

/** The rework of a load that is mended, g: the same dough, of which never more than planned is added. */
export interface MendedRework extends Omit<MendedLine, "planned"> {
  readonly planned: Figure;
}

/** One figure: by the formula, as the load stands, and as it is mended. */
export interface MendedFigure {
  readonly label: string;
  readonly asked: Figure;
  /** Nothing as long as no flour is in. */
  readonly now?: Figure;
  readonly mended: Figure;
}

/** A load in which there is too much of something, brought back as near to the formula as adding to it can. */
export interface Mended {
  readonly lines: readonly MendedLine[];
  readonly rework?: MendedRework;
  /** Starch for dusting, as much as its share of the flour that the load then has. */
  readonly dusting?: Pick<MendedLine, "name" | "planned" | "total" | "scale" | "division">;
  /** How many times the planned load it becomes, by its dough. */
  readonly times: Figure;
  readonly dough: Figure;
  readonly planned: Figure;
  readonly strands: Figure;
  readonly bowls?: Figure;
  readonly figures: readonly MendedFigure[];
}

/** An ingredient of a load, and what is in of it. */
export interface InBowl {
  readonly line: WeighedLine;
  readonly already: Figure;
  /** Whether none of it can be added. */
  readonly isShort: boolean;
}

/** How large a load is to be, and for what there is too much of. */
interface Size {
  readonly times: Figure;
  /** What it grows for; nothing where it goes by the list. */
  readonly cause?: InBowl;
  readonly isByList?: boolean;
}

/** A load of one size. */
export interface Load extends Size {
  readonly lines: readonly MendedLine[];
  readonly figures: readonly MendedFigure[];
}

interface Asked {
  readonly formula: Formula;
  readonly inBowl: readonly InBowl[];
  /** What there is too much of. */
  readonly over: readonly InBowl[];
  readonly rework: MendedRework | undefined;
  readonly scales: Scales;
}

/** What is in the bowl of one ingredient: as it was said, or by the list. */
export function alreadyIn(id: string, name: string, planned: Figure, said: string | undefined): Figure {
  const naming = { id: `${id}.already`, label: `${name} in the bowl`, unit: "g", places: 1 };
  return said === undefined ? { ...planned, ...naming } : given(naming, said, "as weighed", fromSpec);
}

/** Whether there is more of it in than the list has and its scale can tell. */
export function isOver({ line: { load, division }, already }: InBowl): boolean {
  return isTooMuch(dec(already.value).minus(load.value), division, load.value);
}

/** The load that is mended, and the one that is right for all there is too much of. */
export function loadFor(asked: Asked): { readonly load: Load; readonly grown: Load } {
  const { formula, inBowl, over, rework, scales } = asked;
  const loadOf = (size: Size): Load => {
    const lines = linesBy(size, inBowl, scales);
    return { ...size, lines, figures: figuresOf(formula, lines, rework) };
  };
  const grown = loadOf(grownBy(over));
  if (inBowl.every(({ isShort }) => !isShort)) return { load: nearestOf(grown, asked, loadOf), grown };
  const others = [
    ...(grown.isByList ? [] : [...over.map((one) => grownBy([one])), byList("a larger load would be no nearer")]),
    ...inBowl
      .filter(({ isShort, line, already }) => isShort && dec(already.value).plus(line.division).lte(line.load.value))
      .map(sizeFor),
  ];
  const offOf = ({ lines }: Load) => offFormula(lines, formula, rework);
  const load = others.map(loadOf).reduce((best, one) => {
    const [least, off] = [offOf(best), offOf(one)];
    return least && off?.lt(least) ? one : best;
  }, grown);
  return { load, grown };
}

const timesNaming = {
  id: "mend.times",
  label: "load that is right for what is in the bowl, times what was planned",
  unit: "",
  places: 3,
};

function byList(why: string): Size {
  return { times: found(timesNaming, 1, why, undefined, definition), isByList: true };
}

function sizeFor({ already, line: { exact } }: InBowl): Size {
  return { times: worked(timesNaming, "already / planned", { already, planned: exact }, massBalance) };
}

/** The least size at which the scale shows what is in. */
function leastFor({ already, line: { exact, division } }: InBowl): Decimal {
  return dec(already.value).minus(dec(division).div(2)).div(exact.value);
}

/** The size that is right for what there is most too much of. */
function grownBy(over: readonly InBowl[]): Size {
  const [first, ...others] = over.filter(({ line: { exact } }) => !dec(exact.value).isZero());
  if (first === undefined) return byList("nothing is in beyond the list that its scale can tell");
  const cause = others.reduce((most, one) => (leastFor(one).gt(leastFor(most)) ? one : most), first);
  const size = sizeFor(cause);
  return dec(size.times.value).lt(1) ? byList("so much is right for the planned load") : { ...size, cause };
}

/** % of what is asked, from which on a figure is told to be off. */
export const TOLD = 1;

/**
 * Of the sizes at which the scales show what is in, the one that comes nearest to the formula, by the figures that are told:
 * on a coarse scale they are far apart, and at another size the rest is rounded less. Of several as near, the smallest.
 */
function nearestOf(grown: Load, { over, inBowl }: Asked, loadOf: (size: Size) => Load): Load {
  const { cause, times } = grown;
  const isNear = grown.figures.every(({ asked, mended }) => offBy(asked, mended).lte(TOLD));
  if (cause === undefined || isNear) return grown;
  const { already, line } = cause;
  const from = over.map(leastFor).reduce((most, one) => (one.gt(most) ? one : most), dec(1));
  const most = dec(already.value).plus(dec(line.division).div(2)).div(line.exact.value);
  const steps = inBowl.flatMap(({ line: { exact, division } }) => {
    const step = dec(division).div(exact.value);
    // What a step changes little is rounded little.
    if (dec(exact.value).isZero() || step.div(2).times(100).lte(dec(times.value).times(TOLD))) return [];
    const first = from.div(step).ceil();
    const count = Math.max(0, most.div(step).ceil().minus(first).toNumber());
    return Array.from({ length: count }, (_, index) => first.plus(index).times(step));
  });
  const on = [...over.map((one) => one.already), ...inBowl.flatMap(({ line: { exact, step } }) => [exact, step])];
  const why = "of the sizes at which the scale shows what is in, the one that comes nearest to the formula";
  const others = [...new Set(steps.map(decimalText))].map((size) =>
    loadOf({ times: found(timesNaming, size, why, on, definition), cause }),
  );
  const loads = [grown, ...others].sort((one, other) => dec(one.times.value).comparedTo(other.times.value));
  const offOf = ({ figures }: Load) => figures.map(({ asked, mended }) => offBy(asked, mended));
  const least = loads.map(offOf).reduce((best, off) => (sum(off).lt(sum(best)) ? off : best));
  const asNear = (load: Load) => offOf(load).every((off, index) => off.lte((least[index] ?? ZERO).plus(TOLD)));
  return loads.find(asNear) ?? grown;
}

/** How far a figure is off what is asked, % of that, as it is shown. */
export function offBy({ value, places }: Figure, real: Figure): Decimal {
  const [asked, now] = [value, real.value].map((one) => dec(fixedText(one, places)));
  return asked === undefined || now === undefined || asked.isZero()
    ? ZERO
    : now.minus(asked).abs().times(100).div(asked);
}

/** What is right of an ingredient, and what will be in of it before it is rounded to a scale, g. */
interface Aim extends InBowl {
  readonly wanted: Figure;
  readonly will: Figure;
}

/** The lines of a load of one size; where there is less or more of the flour, all else goes by that. */
function linesBy(size: Size, inBowl: readonly InBowl[], scales: Scales): readonly MendedLine[] {
  const aimed = (of: Size, isOne: (role: Role) => boolean, lacking: readonly Figure[] = []) =>
    inBowl.filter(({ line }) => isOne(line.line.role)).map((one) => aim(one, of, lacking));
  const flours = aimed(size, (role) => role === "flour");
  const byFlour = flours.some(isAskew) ? sizeByFlour(flours) : size;
  const others = aimed(byFlour, (role) => role !== "flour" && role !== "water");
  const water = aimed(byFlour, (role) => role === "water", others.filter(isAskew).map(waterLacking));
  return weighed(
    inBowl.flatMap(({ line }) => [...flours, ...others, ...water].filter((one) => one.line === line)),
    scales,
  );
}

function aim(one: InBowl, { times, isByList }: Size, lacking: readonly Figure[]): Aim {
  const { line, already, isShort } = one;
  const { id, name } = line.line;
  const naming = { id: `${id}.wanted`, label: `${name} that is right`, unit: "g", places: 2 };
  const isListed = isByList && lacking.length === 0;
  const from = isListed ? { listed: line.load } : { planned: line.exact, times };
  const text = isListed ? "listed" : "planned * times";
  const wanted =
    lacking.length === 0
      ? worked(naming, text, from, massBalance)
      : worked(naming, `max(${text} + sum(lacking), 0)`, { ...from, lacking }, massBalance);
  return { ...one, wanted, will: isShort || dec(already.value).gte(wanted.value) ? already : wanted };
}

/** Whether so much will be in that its scale tells it from what is right. */
function isAskew({ line, wanted, will }: Aim): boolean {
  return dec(will.value).minus(wanted.value).abs().gt(line.division);
}

/** The size of the flour that there will be, where some of it cannot be added. */
function sizeByFlour(flours: readonly Aim[]): Size {
  if (flours.every(({ line, will }) => dec(will.value).eq(line.load.value))) return byList("the flour is by the list");
  const naming = { id: "mend.flour-times", label: "flour there is, times what was planned", unit: "", places: 3 };
  const from = { flour: flours.map(({ will }) => will), planned: flours.map(({ line }) => line.exact) };
  return { times: worked(naming, "sum(flour) / sum(planned)", from, massBalance) };
}

/** The water that is missing with an ingredient; less than nothing where there is too much of it. */
function waterLacking({ line: { line }, wanted, will }: Aim): Figure {
  const naming = {
    id: `${line.id}.water-lacking`,
    label: `water that is missing with ${line.name}`,
    unit: "g",
    places: 2,
  };
  return worked(
    naming,
    "(wanted - will) * moisture / 100",
    { wanted, will, moisture: moistureFigure(line) },
    massBalance,
  );
}

/** What to add of each, on the scale that weighs so little, the total of what is added kept. */
function weighed(aims: readonly Aim[], scales: Scales): readonly MendedLine[] {
  const wishes = aims.map(({ line, wanted, already, isShort }): Addition => {
    const { id, name } = line.line;
    return { id, name, wanted, already, isShort };
  });
  const picked = wishes.map((wish) => ({
    wish,
    lacking: lackingOf(wish),
    scale: chooseScale(lackingOf(wish), scales).scale,
  }));
  const open = picked.filter(({ lacking }) => lacking.gt(0));
  const rounded = roundKeepingTotal(open.map(({ lacking, scale }) => ({ value: lacking, division: scale.division })));
  const on = open.flatMap(({ wish }) => [wish.wanted, wish.already]);
  return aims.flatMap(({ line }, index) => {
    const one = picked[index];
    if (one === undefined) return [];
    const mass = rounded[open.indexOf(one)] ?? ZERO;
    const { name, wanted, already } = one.wish;
    return [
      {
        name,
        planned: line,
        ...addition(one.wish, mass, one.scale, open.includes(one) ? on : [wanted, already], scales),
      },
    ];
  });
}

interface Addition {
  readonly id: string;
  readonly name: string;
  readonly wanted: Figure;
  readonly already: Figure;
  readonly isShort: boolean;
}

function lackingOf({ wanted, already, isShort }: Addition): Decimal {
  const lacking = dec(wanted.value).minus(already.value);
  return isShort || lacking.isNegative() ? ZERO : lacking;
}

/** What to add of one ingredient, and what is then in. */
function addition(
  wish: Addition,
  value: Decimal,
  { name: scale, division }: Scale,
  on: readonly Figure[],
  scales: Scales,
): Omit<MendedLine, "name" | "planned"> {
  const { id, name, wanted, already, isShort } = wish;
  const places = placesOf(division);
  const by = isShort
    ? "there is no more of it"
    : lackingOf(wish).isZero()
      ? "enough is in"
      : `${digitsText(wanted.value, 10)} g less what is in, rounded to ${fixedText(division, division.decimalPlaces())} g (${scale}), the total kept`;
  const add = found(
    { id: `${id}.add`, label: `${name} to add`, unit: "g", places },
    value,
    by,
    [...on, ...scales.flatMap(({ figures }) => figures)],
    definition,
  );
  const total = worked(
    { id: `${id}.mended`, label: `${name} in all`, unit: "g", places },
    "already + add",
    { already, add },
    massBalance,
  );
  return { already, add, total, scale, division: decimalText(division) };
}

function placesOf(division: Decimal): number {
  return Math.min(Math.max(1, division.decimalPlaces()), 6);
}

/** How many grams on 100 g of flour are not as the formula has them, one flour in place of another counted once. */
function offFormula(
  lines: readonly MendedLine[],
  formula: Formula,
  rework: MendedRework | undefined,
): Decimal | undefined {
  const ofRework = dec(rework?.total.value ?? 0).div(formula.water.dough.value);
  const masses = lines.map(({ planned: { line }, total }) => dec(total.value).plus(ofRework.times(line.parts.value)));
  const flour = sum(masses.filter((_, index) => lines[index]?.planned.line.role === "flour"));
  if (flour.isZero()) return undefined;
  const off = lines.map(({ planned: { line } }, index) =>
    (masses[index] ?? ZERO).times(100).div(flour).minus(line.parts.value),
  );
  // Water is as good from the tap as with an egg.
  const water = lines.map(({ planned: { line } }, index) => {
    const share = line.role === "water" ? 100 : line.role === "flour" ? 0 : moistureFigure(line).value;
    return (off[index] ?? ZERO).times(share).div(100);
  });
  return sum(
    lines.map(({ planned: { line } }, index) => {
      const one = line.role === "water" ? sum(water) : (off[index] ?? ZERO);
      return line.role === "flour" ? one.abs().div(2) : one.abs();
    }),
  );
}

/** The rework of a load: what is planned of it and not in yet is added, and no more than that. */
export function mendedRework(rework: Rework, said: string | undefined, isShort: boolean, scales: Scales): MendedRework {
  const { mass, name } = rework;
  const already = alreadyIn(reworkId, "rework", mass, said);
  const wish = { id: reworkId, name: "rework", wanted: mass, already, isShort };
  const { scale } = chooseScale(lackingOf(wish), scales);
  return {
    name,
    planned: mass,
    ...addition(wish, roundToDivision(lackingOf(wish), scale.division), scale, [mass, already], scales),
  };
}

/** Starch for dusting, by the flour that the load then has. */
export function mendedDusting(
  planned: WeighedLine,
  lines: readonly MendedLine[],
  scales: Scales,
): NonNullable<Mended["dusting"]> {
  const { id, name } = planned.line;
  const flours = lines.filter(({ planned: { line } }) => line.role === "flour");
  const wanted = worked(
    { id: `${id}.wanted`, label: `${name} that is right`, unit: "g", places: 2 },
    "dusting * sum(flour) / sum(planned)",
    {
      dusting: planned.exact,
      flour: flours.map(({ total }) => total),
      planned: flours.map((one) => one.planned.exact),
    },
    massBalance,
  );
  const { scale } = chooseScale(dec(wanted.value), scales);
  const { division } = scale;
  const total = found(
    { id: `${id}.mended`, label: `${name} in all`, unit: "g", places: placesOf(division) },
    roundToDivision(dec(wanted.value), division),
    `${digitsText(wanted.value, 10)} g rounded to ${fixedText(division, division.decimalPlaces())} g (${scale.name})`,
    [wanted, ...scales.flatMap(({ figures }) => figures)],
    definition,
  );
  return { name, planned, total, scale: scale.name, division: decimalText(division) };
}

/** The figures of the formula, of the load as it stands and as it is mended. */
function figuresOf(
  formula: Formula,
  lines: readonly MendedLine[],
  rework: MendedRework | undefined,
): readonly MendedFigure[] {
  const under = (scope: string, load: (line: Pick<MendedLine, "already" | "total">) => Figure) => {
    const delivered = lines.map((one) => {
      const { line } = one.planned;
      return { line, load: rework ? withOld(scope, line, load(one), load(rework), formula) : load(one) };
    });
    return asWeighed(formula, delivered, scope);
  };
  const isFloured = (of: "already" | "total") =>
    lines.some(({ planned, [of]: mass }) => planned.line.role === "flour" && !dec(mass.value).isZero());
  if (!isFloured("total")) return [];
  const now = isFloured("already") ? under("now", ({ already }) => already) : undefined;
  const after = under("mended", ({ total }) => total);
  const { blend, water, alkali, salt } = formula;
  const partsOf = (wanted: Role) => inUse(formula.lines).flatMap(({ role, parts }) => (role === wanted ? [parts] : []));
  const flours = partsOf("flour");
  const told = [
    ...(flours.length > 1 ? flours : []),
    blend.protein?.at14,
    water.added,
    water.doughWater,
    alkali?.anhydrous,
    alkali?.alkalinityM,
    alkali?.potassiumShare,
    salt,
    ...partsOf("ingredient"),
  ];
  return told.flatMap((asked): readonly MendedFigure[] => {
    const [before, mended] = [asked && now?.(asked), asked && after(asked)];
    if (asked === undefined || mended === undefined) return [];
    return [{ label: asked.label, asked, ...(before && { now: before }), mended }];
  });
}

/** What a load has of one ingredient, the rework's with it. */
function withOld(scope: string, { id, name, parts }: FormulaLine, load: Figure, rework: Figure, { water }: Formula) {
  const naming = { id: `${scope}.${id}.with-rework`, label: `${name}, the rework's with it`, unit: "g", places: 2 };
  return worked(naming, "load + rework * parts / dough", { load, rework, parts, dough: water.dough }, massBalance);
}
