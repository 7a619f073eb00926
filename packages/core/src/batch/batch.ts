import { type Figure, summed } from "../figure/figure.ts";
import { type Graph, published } from "../figure/graph.ts";
import { answer, loudNote, type Note, note, type Outcome, problem, problemsOf, refuse } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { inUse } from "../formula/line.ts";
import { type Decimal, type DecimalInput, dec, sum, ZERO } from "../number/decimal.ts";
import type { Quantity } from "../number/quantity.ts";
import type { Spec } from "../spec/spec.ts";
import { type AfterRounding, afterRounding } from "./after-rounding.ts";
import { type LeftUnused, linesOf } from "./dough-size.ts";
import { type Loads, splitLoads } from "./loads.ts";
import { deliveredBy, findRemedies, type Remedies, type StockedWeight, weightsWithStock } from "./remedy.ts";
import { type Rework, withRework } from "./rework.ts";
import { findTarget, type Target } from "./target.ts";
import { type Scales, scalesOf, type WeighedLine, weighApart, weighingTolerance, weighLoad } from "./weighing.ts";

/** A batch: what to weigh for each load, and what it comes to. */
export interface Batch {
  readonly target: Target;
  readonly loads: Loads;
  readonly lines: readonly WeighedLine[];
  /** Rework of the same dough, which goes into each load beside what is weighed anew. */
  readonly rework?: Rework;
  /** Dusting starch for a load; it is no part of the dough. */
  readonly dusting?: WeighedLine;
  /** Dough of one load and of the batch, as weighed. */
  readonly loadTotal: Figure;
  readonly batchTotal: Figure;
  /** What weighing makes of the water and the salts, and every figure that it rests on. */
  readonly rounding: readonly AfterRounding[];
  readonly remedies: Remedies;
  /** The weights of a load with the stock solution in, where there is one. */
  readonly withStock?: readonly StockedWeight[];
  /** The dough of that load. */
  readonly totalWithStock?: Figure;
  readonly tolerance: string;
  readonly graph: Graph;
}

/**
 * Works out the weights of a batch.
 *
 * Losses are worked backwards from the bowls; the loads are equal; every ingredient of a load is rounded to the division
 * of the scale that weighs it and the load adds up exactly; the batch is the loads added up. Where the mixer or what there
 * is of an ingredient is the limit, the weights stay within it.
 *
 * @param us - weigh in ounces where the spec names no scale
 * Problems: those of `findTarget`, `splitLoads`, `withRework` and `scalesOf`; `weighing.no-flour` when the batch is too small for the scale.
 */
export function planBatch(spec: Spec, formula: Formula, us = false): Outcome<Batch> {
  return plannedLeaving({}, spec, formula, us).batch;
}

/** A batch, and the weights that were tried before its own: each leaves unused what the ones before took too much. */
export function plannedLeaving(
  from: LeftUnused,
  spec: Spec,
  formula: Formula,
  us: boolean,
): { readonly batch: Outcome<Batch>; readonly tries: readonly Weights[] } {
  const scales = scalesOf(spec, us);
  const tries: Weights[] = [];
  for (let left = from; ; ) {
    const weights = weighLeaving(left, spec, formula, scales);
    if (!weights.ok) return { batch: weights, tries };
    const over = beyondLimits(spec, formula, weights.value);
    if (tries.length === mostRounds || (over.have === undefined && over.mixer === undefined)) {
      return { batch: planned(spec, formula, scales.ok ? scales.value : [], weights.value, weights.notes), tries };
    }
    tries.push(weights.value);
    left = { have: plus(left.have, over.have), mixer: plus(left.mixer, over.mixer) };
  }
}

function plus(left: Decimal | undefined, more: Decimal | undefined): Decimal | undefined {
  return more === undefined ? left : more.plus(left ?? 0);
}

/** The weights of a batch, before anything is told of them. */
export type Weights = Pick<Batch, "target" | "loads" | "lines" | "rework" | "dusting" | "loadTotal" | "batchTotal">;

/** Each round leaves at least half a division more; three come to the next whole division below any limit. */
const mostRounds = 5;

/** How far the weights go beyond a limit that the spec states, at least half a division where they do. */
function beyondLimits(spec: Spec, formula: Formula, { lines, dusting, rework, loads, loadTotal }: Weights): LeftUnused {
  const beyond = (
    limit: Quantity | undefined,
    weighed: Decimal,
    on: readonly WeighedLine[],
    loadsOfIt: DecimalInput,
  ) => {
    if (limit === undefined || weighed.lte(limit.value)) return undefined;
    const coarsest = on.reduce((most, { division }) => (most.gt(division) ? most : dec(division)), ZERO);
    const [over, half] = [weighed.minus(limit.value), coarsest.div(2).times(loadsOfIt)];
    return over.gt(half) ? over : half;
  };
  const have = spec.batch?.have;
  const used = new Set(have === undefined ? [] : linesOf(have.name, formula).map(({ id }) => id));
  const taken = [...lines, ...(dusting ? [dusting] : [])].filter(({ line }) => used.has(line.id));
  const flours = lines.filter(({ line }) => line.role === "flour");
  const old = dec(rework?.mass.value ?? 0)
    .times(100)
    .div(formula.water.dough.value);
  const flour = sum(flours.map((one) => dec(one.load.value))).plus(old);
  const load = spec.mixer?.of === "flour" ? flour : dec(loadTotal.value);
  return {
    have: beyond(have?.amount, sum(taken.map(({ batch }) => dec(batch.value))), taken, loads.count.value),
    mixer: beyond(spec.mixer?.largest, load, lines, 1),
  };
}

function weighLeaving(left: LeftUnused, spec: Spec, formula: Formula, scales: Outcome<Scales>): Outcome<Weights> {
  const target = findTarget(spec, formula, left);
  const loads = target.ok ? splitLoads(target.value.dough, formula.water.dough, spec.mixer, left.mixer) : undefined;
  if (!target.ok || !scales.ok || !loads?.ok) {
    return refuse(...problemsOf(target), ...problemsOf(scales), ...problemsOf(loads));
  }
  const parted = withRework(loads.value, formula.water.dough, spec, scales.value);
  if (!parted.ok) return parted;
  const { rework } = parted.value;
  const { count, flour } = parted.value.loads;
  const lines = weighLoad(inUse(formula.lines), flour, count, scales.value);
  const flourLoad = sum(lines.filter(({ line }) => line.role === "flour").map(({ load }) => dec(load.value)));
  if (flourLoad.isZero()) {
    const facts = { flour: dec(flour.value).toSignificantDigits(3).toFixed() };
    return refuse(problem("weighing.no-flour", ["batch"], facts));
  }
  const [dusted] = inUse(formula.dusting ? [formula.dusting] : []);
  const dusting = dusted && weighApart(dusted, flour, count, scales.value);
  const loadMasses = [...lines.map(({ load }) => load), ...(rework ? [rework.mass] : [])];
  const batchMasses = [...lines.map(({ batch: whole }) => whole), ...(rework ? [rework.batch] : [])];
  const weights: Weights = {
    target: target.value,
    loads: parted.value.loads,
    lines,
    ...(rework && { rework }),
    ...(dusting && { dusting }),
    loadTotal: total("load.total", "dough of one load as weighed", loadMasses),
    batchTotal: total("batch.total", "dough of the batch as weighed", batchMasses),
  };
  return answer(weights, [...target.notes, ...scales.notes, ...lotNotes(lines)]);
}

/** The batch of its weights: what rounding does, and what to do about what is too little for its scale. */
function planned(
  spec: Spec,
  formula: Formula,
  scales: Scales,
  weights: Weights,
  notes: readonly Note[],
): Outcome<Batch> {
  const { lines, dusting, rework, loads } = weights;
  const tolerance = weighingTolerance(spec);
  const remedies = findRemedies([...lines, ...(dusting ? [dusting] : [])], scales, loads.count, tolerance);
  const withStock = remedies.stock && [...weightsWithStock(lines, remedies.stock), ...(rework ? [rework] : [])];
  const stocked = withStock?.map(({ mass }) => mass);
  const stockTotal = stocked && { ...total("load.total-with-stock", "dough of one load", stocked), places: 2 };
  const batch: Omit<Batch, "graph"> = {
    ...weights,
    rounding: afterRounding(formula, deliveredBy(lines, remedies.stock, withStock ?? [])),
    remedies,
    ...(withStock && { withStock }),
    ...(stockTotal && { totalWithStock: stockTotal }),
    tolerance: tolerance.value,
  };
  return answer(published(batch, formula.graph), [...notes, ...nothingNotes(batch)]);
}

function total(id: string, label: string, masses: readonly Figure[]): Figure {
  const places = Math.max(...masses.map((mass) => mass.places));
  return summed({ id, label, unit: "g", places }, { mass: masses }, massBalance);
}

/** What the dough asks for and the scale cannot show: as weighed, the dough would do without. */
function nothingNotes({ lines, withStock }: Omit<Batch, "graph">): readonly Note[] {
  const nothing = lines.filter(({ load, exact }) => dec(load.value).isZero() && !dec(exact.value).isZero());
  if (nothing.length === 0) return [];
  const names = nothing.map(({ line }) => line.name);
  return [loudNote("weighing.nothing", ["scales"], { names, stock: withStock !== undefined })];
}

function lotNotes(lines: readonly WeighedLine[]): readonly Note[] {
  return lines
    .filter(({ lots }) => lots > 1)
    .map(({ line, lots, scale }) => note("weighing.lots", line.path, { name: line.name, lots, scale }));
}
