import { type Figure, worked } from "../figure/figure.ts";
import { answer, inputProblem, type Note, type Outcome, type Problem, refuse } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import type { Spec } from "../formula/spec.ts";
import { dec, sum } from "../number/decimal.ts";
import { type Loads, splitLoads } from "./loads.ts";
import { broughtBy, type Carrier, findRemedy, type Remedy, type ReplacedWeight, weightsWithStocks } from "./remedy.ts";
import { findTarget, type Target } from "./target.ts";
import { type AfterRounding, afterRounding, scalesOf, type WeighedLine, weighApart, weighLoad } from "./weighing.ts";

/** Most that rounding to a scale may be off before a warning, %, unless the spec says otherwise. */
const usualTolerance = "1";

/** A batch: what to weigh for each load, and what it comes to. */
export interface Batch {
  readonly target: Target;
  readonly loads: Loads;
  readonly lines: readonly WeighedLine[];
  /** Dusting starch for a load; it is no part of the dough. */
  readonly dusting?: WeighedLine;
  /** Dough of one load and of the batch, as weighed. */
  readonly loadTotal: Figure;
  readonly batchTotal: Figure;
  readonly rounding: readonly AfterRounding[];
  readonly remedies: readonly Remedy[];
  /** The weights of a load with the stocks and premixes in, where there are any. */
  readonly withStocks?: readonly ReplacedWeight[];
  readonly tolerance: string;
}

/**
 * Works out the weights of a batch.
 *
 * Losses are worked backwards from the bowls; the loads are equal; every ingredient of a load is rounded to the division
 * of the scale that weighs it and the load adds up exactly; the batch is the loads added up.
 *
 * @param us - weigh in ounces where the spec names no scale
 * Problems: those of `findTarget`, `splitLoads` and `scalesOf`; `weighing.no-flour` when the batch is too small for the scale.
 */
export function planBatch(spec: Spec, formula: Formula, us = false): Outcome<Batch> {
  const target = findTarget(spec, formula);
  const scales = scalesOf(spec, us);
  const loads = target.ok ? splitLoads(target.value.dough, formula.water.dough, spec.mixer) : undefined;
  if (!target.ok || !scales.ok || !loads?.ok) {
    const outcomes = [target, scales, ...(loads ? [loads] : [])];
    return refuse(...outcomes.flatMap((outcome): readonly Problem[] => (outcome.ok ? [] : outcome.problems)));
  }
  const { count, flour } = loads.value;
  const lines = weighLoad(formula.lines, flour, count, scales.value);
  const flourLoad = sum(lines.filter(({ line }) => line.role === "flour").map(({ load }) => dec(load.value)));
  if (flourLoad.isZero()) {
    const found = `${dec(flour.value).toSignificantDigits(3).toFixed()} g of flour in a load`;
    const advice = "make a larger batch or name a finer scale";
    return refuse(inputProblem("weighing.no-flour", ["batch"], found, "flour that the scale can show", advice));
  }
  const dusting = formula.dusting && weighApart(formula.dusting, flour, count, scales.value);
  const tolerance = dec(spec.weighingTolerance?.value ?? usualTolerance);
  const remedies = remediesFor([...lines, ...(dusting ? [dusting] : [])], count, tolerance);
  const withStocks = weightsWithStocks(lines, remedies);
  const batch: Batch = {
    target: target.value,
    loads: loads.value,
    lines,
    ...(dusting && { dusting }),
    loadTotal: total("load.total", "dough of one load as weighed", lines, "load"),
    batchTotal: total("batch.total", "dough of the batch as weighed", lines, "batch"),
    rounding: afterRounding(lines),
    remedies,
    ...(withStocks && { withStocks }),
    tolerance: tolerance.toFixed(),
  };
  const assumed = scales.value.some((scale) => scale.assumed);
  return answer(batch, [...target.notes, ...(assumed ? [scaleNote(us)] : []), ...lotNotes(lines)]);
}

function remediesFor(
  lines: readonly WeighedLine[],
  count: Figure,
  tolerance: ReturnType<typeof dec>,
): readonly Remedy[] {
  const water = lines.find(({ line }) => line.role === "water");
  const flours = lines.filter(({ line }) => line.role === "flour");
  const main = flours.reduce<WeighedLine | undefined>(
    (best, one) => (best === undefined || dec(one.load.value).gt(best.load.value) ? one : best),
    undefined,
  );
  if (water === undefined || main === undefined) return [];
  const small = lines.filter(({ exact, worst }) => !dec(exact.value).isZero() && dec(worst.value).gt(tolerance));
  const remedies: Remedy[] = [];
  const free = (carrier: WeighedLine): Carrier => {
    const stocks = remedies.filter((one) => one.kind !== "finer scale").filter((one) => one.carrier === carrier);
    return { weighed: carrier, free: dec(carrier.exact.value).minus(sum(stocks.map(broughtBy))) };
  };
  for (const weighed of small) remedies.push(findRemedy(weighed, free(water), free(main), count, tolerance));
  return remedies;
}

function total(id: string, label: string, lines: readonly WeighedLine[], which: "load" | "batch"): Figure {
  const masses = lines.map((weighed) => weighed[which]);
  const places = Math.max(...masses.map((mass) => mass.places));
  return worked({ id, label, unit: "g", places, formula: "sum(mass)", from: { mass: masses }, sources: [massBalance] });
}

function scaleNote(us: boolean): Note {
  const text = `the spec names no scale; weights are for one that shows ${us ? "tenths of an ounce" : "whole grams"}`;
  return { code: "scales.assumed", path: ["scales"], text };
}

function lotNotes(lines: readonly WeighedLine[]): readonly Note[] {
  return lines
    .filter(({ lots }) => lots > 1)
    .map(({ line, lots, scale }) => ({
      code: "weighing.lots",
      path: line.path,
      text: `${line.name}: weigh each load in ${lots} lots, since ${scale} does not take it at once`,
    }));
}
