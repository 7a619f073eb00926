import { type Figure, found, given, summed, worked } from "../figure/figure.ts";
import { type Published, published } from "../figure/graph.ts";
import { measure } from "../figure/in-system.ts";
import { answer, loudNote, type Note, note, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import { definition, fromSpec, massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { type FormulaLine, inUse } from "../formula/line.ts";
import { stockField } from "../materials/fields.ts";
import { nearestNames, plainName } from "../materials/nearest.ts";
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
import type { Spec } from "../spec/spec.ts";
import { asWeighed } from "./as-weighed.ts";
import { isTooMuch } from "./at-the-scale.ts";
import type { Batch } from "./batch.ts";
import { linesOf } from "./dough-size.ts";
import { runStages } from "./losses.ts";
import type { Rework } from "./rework.ts";
import { chooseScale, type Scales, type WeighedLine } from "./weighing.ts";

/** What is in the bowl of one load that should not be, and what there is no more of. */
export interface MendWish {
  /** By name or by the id of its line: what is in the bowl in all, such as `3170 g`; what is not in yet is `0 g`. What is not named is in by the list. */
  readonly weighed: readonly { readonly name: string; readonly amount: string }[];
  /** Names or ids of what none can be added of. */
  readonly noMore?: readonly string[] | undefined;
}

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
  /** How many times the planned load it becomes, by its dough. */
  readonly times: Figure;
  readonly dough: Figure;
  readonly planned: Figure;
  readonly strands: Figure;
  readonly bowls?: Figure;
  readonly figures: readonly MendedFigure[];
}

/**
 * What to add of all else where too much of something is in the bowl. The load grows until that much is right in it; what is
 * added is rounded to the scales, and nothing is ever less than what is in. What there is no more of stays as it is: then all
 * else goes by the flour that there is, and the figures tell how far off the formula the dough stays; where that leads no
 * nearer to the formula, only what the list still lacks is added. What a scale cannot tell, one step of it, is not too much.
 * Rework is the same dough: too much of it needs nothing else.
 *
 * Problems: `mend.nothing`, `mend.unknown`, `mend.several`, `mend.twice`, `mend.amount`, `mend.beyond`.
 */
export function mendLoad(
  spec: Spec,
  formula: Formula,
  batch: Batch,
  scales: Scales,
  wish: MendWish,
): Outcome<Published<Mended>> {
  const read = readWish(spec, formula, batch, wish);
  if (!read.ok) return read;
  const { masses, short } = read.value;
  const inBowl = batch.lines.map((line): InBowl => {
    const { name, id } = line.line;
    const already = alreadyIn(id, name, line.load, masses.get(id));
    return { line, planned: line.load, already, isShort: short.has(id) };
  });
  const rework = batch.rework && mendedRework(batch.rework, masses.get(reworkId), short.has(reworkId), scales);
  const said = inBowl.filter(({ line }) => masses.has(line.line.id));
  const grown = grownBy(said);
  const others =
    short.size === 0 || dec(grown.times.value).eq(1)
      ? []
      : [...said.map((one) => grownBy([one])), onceBy("a larger load would be no nearer")];
  const loads = [grown, ...others].map((one): Load => {
    const itsLines = linesBy(one.times, inBowl, scales);
    return { ...one, lines: itsLines, off: offFormula(itsLines, formula, rework) };
  });
  const load = loads.reduce((best, one) => (best.off && one.off?.lt(best.off) ? one : best));
  const { lines } = load;
  const weights = [...lines.map(({ total }) => total), ...(rework ? [rework.total] : [])];
  const places = Math.max(...weights.map((weight) => weight.places));
  const naming = { id: "mend.dough", label: "dough of the load when it is mended", unit: "g", places };
  const dough = summed(naming, { mass: weights }, massBalance);
  const { strands, bowls } = yieldOf(batch, dough);
  const becomesNaming = { id: "mend.grown", label: "the load becomes, times what was planned", unit: "", places: 3 };
  const becomes = worked(becomesNaming, "dough / planned", { dough, planned: batch.loadTotal }, massBalance);
  const result: Mended = {
    lines,
    ...(rework && { rework }),
    times: becomes,
    dough,
    planned: batch.loadTotal,
    strands,
    ...(bowls && { bowls }),
    figures: figuresOf(formula, lines, rework),
  };
  return answer(published(result, batch.graph, formula.graph), [
    ...(short.size === 0 ? [] : shortNotes(inBowl, load, grown, figuresOf(formula, loads[0]?.lines ?? lines, rework))),
    ...mixerNotes(spec, formula, result),
    ...reworkNotes(spec, result),
    ...fineNotes(grown.times, rework),
  ]);
}

/** More of something than ten times the list, or twice what the mixer takes, is a slip of the number or its unit, g. */
function mostOf(planned: Decimal, mixer: Spec["mixer"]): Decimal {
  const [byList, byMixer] = [planned.times(10), mixer && dec(mixer.largest.value).times(2)];
  return byMixer?.lt(byList) ? byMixer : byList;
}

/** What `--weighed` names the rework by, beside its name on the list. */
const reworkId = "rework";

interface InBowl {
  readonly line: WeighedLine;
  readonly planned: Figure;
  readonly already: Figure;
  /** Whether none of it can be added. */
  readonly isShort: boolean;
}

/** What is in the bowl, g, by the identity of its line, and what there is no more of. */
function readWish({ mixer }: Spec, formula: Formula, { lines, rework }: Batch, { weighed, noMore = [] }: MendWish) {
  if (weighed.length === 0) return refuse(problem("mend.nothing", ["weighed"], {}));
  const problems: Problem[] = [];
  const weighable = lines.map(({ line }) => line);
  const lineOf = (name: string, key: "weighed" | "noMore"): string | undefined => {
    const named = linesOf(name, formula).filter((one) => weighable.includes(one));
    const exact = named.filter((one) => plainName(one.name) === plainName(name));
    const byId = weighable.filter(({ id }) => id === name);
    const [line, ...others] = [byId, exact, named].find((found) => found.length > 0) ?? [];
    if (line !== undefined && others.length > 0)
      problems.push(problem("mend.several", [key], { name, ids: [line, ...others].map(({ id }) => id) }));
    if (line !== undefined) return line.id;
    if (rework && [reworkId, rework.name].some((one) => plainName(one) === plainName(name))) return reworkId;
    const names = [...weighable.map((one) => one.name), ...(rework ? [reworkId] : [])];
    problems.push(problem("mend.unknown", [key], { name, names, nearest: nearestNames(name, names, 1) }));
    return undefined;
  };
  const masses = new Map<string, string>();
  for (const { name, amount } of weighed) {
    const id = lineOf(name, "weighed");
    const mass = stockField("What is in the bowl", ["3170 g"]).safeParse(amount);
    const line = lines.find((one) => one.line.id === id);
    const planned = id === reworkId ? rework?.mass : line?.load;
    const most = planned && mostOf(dec(planned.value), mixer);
    if (!mass.success) problems.push(problem("mend.amount", ["weighed"], { name, amount }));
    else if (planned && most && dec(mass.data.value).gt(most))
      problems.push(
        problem("mend.beyond", ["weighed"], {
          name: line?.line.name ?? name,
          amount,
          planned: fixedText(planned.value, planned.places),
          most: fixedText(most, 0),
        }),
      );
    else if (id !== undefined && masses.has(id)) problems.push(problem("mend.twice", ["weighed"], { name }));
    else if (id !== undefined) masses.set(id, mass.data.value);
  }
  const short = new Set(noMore.flatMap((name) => lineOf(name, "noMore") ?? []));
  return problems.length > 0 ? refuse(...problems) : answer({ masses, short });
}

/** What is in the bowl of one ingredient: as it was said, or by the list. */
function alreadyIn(id: string, name: string, planned: Figure, said: string | undefined): Figure {
  const naming = { id: `${id}.already`, label: `${name} in the bowl`, unit: "g", places: 1 };
  return said === undefined ? { ...planned, ...naming } : given(naming, said, "as weighed", fromSpec);
}

/** The lines of a load that grows so many times, or as the flour does where some of it is missing. */
function linesBy(times: Figure, inBowl: readonly InBowl[], scales: Scales): readonly MendedLine[] {
  const flours = inBowl.filter(({ line }) => line.line.role === "flour").map((one) => mended(one, times, scales));
  const missing = flours.some(({ planned, total }) =>
    dec(total.value)
      .plus(planned.division)
      .lt(dec(planned.exact.value).times(dec(times.value).minus(1)).plus(planned.load.value)),
  );
  const byFlour = missing ? flourTimes(flours) : times;
  const others = inBowl.filter(({ line }) => line.line.role !== "flour").map((one) => mended(one, byFlour, scales));
  return [...flours, ...others];
}

/** How many grams on 100 g of flour are not as the formula has them, one flour in place of another counted once. */
function offFormula(
  lines: readonly MendedLine[],
  { water }: Formula,
  rework: MendedRework | undefined,
): Decimal | undefined {
  const ofRework = dec(rework?.total.value ?? 0).div(water.dough.value);
  const masses = lines.map(({ planned: { line }, total }) => dec(total.value).plus(ofRework.times(line.parts.value)));
  const flour = sum(masses.filter((_, index) => lines[index]?.planned.line.role === "flour"));
  if (flour.isZero()) return undefined;
  return sum(
    lines.map(({ planned: { line } }, index) => {
      const off = (masses[index] ?? ZERO).times(100).div(flour).minus(line.parts.value).abs();
      return line.role === "flour" ? off.div(2) : off;
    }),
  );
}

/** The rework of a load: what is planned of it and not in yet is added, and no more than that. */
function mendedRework(rework: Rework, said: string | undefined, isShort: boolean, scales: Scales): MendedRework {
  const { mass, name } = rework;
  const already = alreadyIn(reworkId, "rework", mass, said);
  return { name, planned: mass, ...addition({ id: reworkId, name: "rework" }, mass, already, isShort, scales) };
}

const timesNaming = {
  id: "mend.times",
  label: "load that is right for what is in the bowl, times what was planned",
  unit: "",
  places: 3,
};

/** A load that grows so many times, for what there is most too much of among what it is asked of. */
interface Growth {
  readonly times: Figure;
  /** What it grows for; nothing where it goes by the list. */
  readonly cause?: string;
}

interface Load extends Growth {
  readonly lines: readonly MendedLine[];
  /** How far off the formula it is, as `offFormula` has it. */
  readonly off: Decimal | undefined;
}

function onceBy(why: string): Growth {
  return { times: found(timesNaming, 1, why, undefined, definition) };
}

/** How many times the planned load is right for what there is too much of, and at least once. */
function grownBy(weighed: readonly InBowl[]): Growth {
  const beyond = ({ line: { exact, load, division }, already }: InBowl): Decimal => {
    const more = dec(already.value).minus(load.value);
    return dec(exact.value).isZero() || !isTooMuch(more, division) ? ZERO : more.div(exact.value);
  };
  const most = weighed.reduce<InBowl | undefined>(
    (best, one) => (best === undefined || beyond(one).gt(beyond(best)) ? one : best),
    undefined,
  );
  if (most === undefined || beyond(most).lte(0)) return onceBy("nothing is in beyond the list that its scale can tell");
  const from = { already: most.already, listed: most.line.load, planned: most.line.exact };
  const times = worked(timesNaming, "1 + (already - listed) / planned", from, massBalance);
  return { times, cause: most.line.line.name };
}

/** The same by the flour that there is, where some of it cannot be added. */
function flourTimes(flours: readonly MendedLine[]): Figure {
  const from = {
    flour: flours.map(({ total }) => total),
    listed: flours.map(({ planned }) => planned.load),
    planned: flours.map(({ planned }) => planned.exact),
  };
  const formula = "1 + (sum(flour) - sum(listed)) / sum(planned)";
  const naming = { id: "mend.flour-times", label: "flour there is, times what was planned", unit: "", places: 3 };
  return worked(naming, formula, from, massBalance);
}

/** What to add of one ingredient, rounded to the scale that weighs so little. */
function mended({ line, planned, already, isShort }: InBowl, times: Figure, scales: Scales): MendedLine {
  const { id, name } = line.line;
  const naming = { id: `${id}.wanted`, label: `${name} that is right`, unit: "g", places: 2 };
  const from = { listed: planned, planned: line.exact, times };
  const wanted = worked(naming, "listed + planned * (times - 1)", from, massBalance);
  return { name, planned: line, ...addition({ id, name }, wanted, already, isShort, scales) };
}

/** What to add of one ingredient so that so much of it is in. */
function addition(
  { id, name }: { readonly id: string; readonly name: string },
  wanted: Figure,
  already: Figure,
  isShort: boolean,
  scales: Scales,
): Omit<MendedLine, "name" | "planned"> {
  const lacking = dec(wanted.value).minus(already.value);
  const isEnough = isShort || lacking.lte(0);
  const { scale } = chooseScale(isEnough ? ZERO : lacking, scales);
  const value = isEnough ? ZERO : roundToDivision(lacking, scale.division);
  const shown = { unit: "g", places: Math.max(1, scale.division.decimalPlaces()) };
  const step = fixedText(scale.division, scale.division.decimalPlaces());
  const rounding = `${digitsText(wanted.value, 10)} g less what is in, rounded to ${step} g (${scale.name})`;
  const by = isShort ? "there is no more of it" : isEnough ? "enough is in" : rounding;
  const on = [wanted, already, ...scales.flatMap(({ figures }) => figures)];
  const add = found({ id: `${id}.add`, label: `${name} to add`, ...shown }, value, by, on, definition);
  const inAll = { id: `${id}.mended`, label: `${name} in all`, ...shown };
  const total = worked(inAll, "already + add", { already, add }, massBalance);
  return { already, add, total, scale: scale.name, division: decimalText(scale.division) };
}

function yieldOf({ target }: Batch, dough: Figure): Pick<Mended, "strands" | "bowls"> {
  const [mixing, sheeting, cutting] = target.stages.map(({ loss }) => loss);
  const losses = mixing && sheeting && cutting && { mixing, sheeting, cutting };
  const after = losses === undefined ? dough : (runStages(dough, losses).at(-1)?.after ?? dough);
  const strands = { ...after, id: "mend.strands", label: "raw strands of the load" };
  const raw = target.rawWeight;
  if (raw === undefined) return { strands };
  const naming = { id: "mend.bowls", label: "bowls of the load", unit: "", places: 0 };
  return { strands, bowls: worked(naming, "floor(strands / raw)", { strands, raw }, definition) };
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
  const isFloured = lines.some(({ planned, already }) => planned.line.role === "flour" && !dec(already.value).isZero());
  const now = isFloured ? under("now", ({ already }) => already) : undefined;
  const after = under("mended", ({ total }) => total);
  const { blend, water, alkali, salt } = formula;
  const flours = inUse(formula.lines).flatMap(({ role, parts }) => (role === "flour" ? [parts] : []));
  const told = [
    ...(flours.length > 1 ? flours : []),
    blend.protein?.at14,
    water.added,
    water.doughWater,
    alkali?.anhydrous,
    alkali?.alkalinityM,
    alkali?.potassiumShare,
    salt,
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

/** % of what is asked, from which on it is told that a figure gets further off. */
const TOLD = 1;

/** What a load that grows for all there is too much of takes further off the formula; whether, and for what, it grows for less. */
function shortNotes(
  inBowl: readonly InBowl[],
  { cause, times }: Growth,
  grown: Growth,
  grownFigures: readonly MendedFigure[],
): readonly Note[] {
  const further = grownFigures.flatMap(({ label, asked, now, mended: after }) => {
    const off = (one: Figure) => dec(fixedText(one.value, one.places)).minus(fixedText(asked.value, one.places)).abs();
    const slack = dec(asked.value).times(TOLD).div(100);
    return now && off(after).minus(off(now)).gt(slack)
      ? [`${label} ${fixedText(after.value, after.places)} ${after.unit}`]
      : [];
  });
  const isGrown = times === grown.times;
  if (isGrown && further.length === 0) return [];
  const names = inBowl.filter(({ isShort }) => isShort).map(({ line }) => line.line.name);
  if (isGrown) return [loudNote("mend.further", ["noMore"], { names, further })];
  return [loudNote("mend.no-nearer", ["noMore"], { names, further, ...(cause !== undefined && { cause }) })];
}

/** That too much rework needs nothing else, and whether it is beyond what the spec allows. */
function reworkNotes({ rework: stated }: Spec, { rework, dough }: Mended): readonly Note[] {
  if (rework === undefined || dec(rework.already.value).lte(rework.planned.value)) return [];
  const share = dec(rework.total.value).times(100).div(dough.value);
  const most = stated?.most && share.gt(stated.most.value) ? stated.most.text : undefined;
  const more = measure(dec(rework.already.value).minus(rework.planned.value), "g", 0);
  const facts = { more, share: fixedText(share, 1), ...(most !== undefined && { most }) };
  return [(most === undefined ? note : loudNote)("mend.rework", ["weighed"], facts)];
}

/** Whether the mixer takes the load, and what to do where it does not. */
function mixerNotes({ mixer }: Spec, { water }: Formula, { lines, dough, rework }: Mended): readonly Note[] {
  if (mixer === undefined) return [];
  const isFlour = mixer.of === "flour";
  const flours = lines.filter(({ planned }) => planned.line.role === "flour").map(({ total }) => dec(total.value));
  const old = dec(rework?.total.value ?? 0)
    .times(100)
    .div(water.dough.value);
  const load = isFlour ? sum(flours).plus(old) : dec(dough.value);
  const of = `${isFlour ? "flour" : "dough"}${rework === undefined ? "" : ", rework included"}` as const;
  const facts = { load: measure(load, "g", 0), of, largest: mixer.largest.text } as const;
  if (load.lte(mixer.largest.value)) return [note("mend.mixer-holds", ["mixer"], facts)];
  const parts = load.div(mixer.largest.value).ceil().toFixed();
  return [loudNote("mend.mixer", ["mixer"], { ...facts, parts })];
}

function fineNotes(times: Figure, rework: MendedRework | undefined): readonly Note[] {
  if (!dec(times.value).eq(1) || (rework && dec(rework.already.value).gt(rework.planned.value))) return [];
  return [note("mend.fine", ["weighed"], {})];
}
