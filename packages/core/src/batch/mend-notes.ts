import type { Figure } from "../figure/figure.ts";
import { measure } from "../figure/in-system.ts";
import { loudNote, type Note, note } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { dec, fixedText, sum, ZERO } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";
import type { Batch } from "./batch.ts";
import { type InBowl, type Load, type Mended, type MendedFigure, offBy, TOLD } from "./mend-load.ts";
import { weighingTolerance } from "./weighing.ts";

/** What a load that grows for all there is too much of takes further off the formula; whether, and for what, it grows for less. */
export function shortNotes(inBowl: readonly InBowl[], load: Load, grown: Load): readonly Note[] {
  const names = namesShort(inBowl);
  const further = grown.figures.flatMap(({ label, asked, now, mended: after }) =>
    now && offBy(asked, after).minus(offBy(asked, now)).gt(TOLD) ? [`${label} ${shown(after)}`] : [],
  );
  if (load === grown)
    return names.length === 0 || further.length === 0 ? [] : [loudNote("mend.further", ["noMore"], { names, further })];
  // A smaller load, for what there is too little of, tells itself.
  if (names.length === 0 || (load.cause === undefined && !load.isByList)) return [];
  const cause = load.cause?.line.line.name;
  return [loudNote("mend.no-nearer", ["noMore"], { names, further, ...(cause !== undefined && { cause }) })];
}

/** That a load with dry salts in it goes without the stock solution of the list. */
export function dryNotes({ remedies: { stock } }: Batch): readonly Note[] {
  if (stock === undefined) return [];
  return [loudNote("mend.dry", ["scales"], { names: stock.salts.map(({ line }) => line.name) })];
}

function namesShort(inBowl: readonly InBowl[]): readonly string[] {
  return inBowl.filter(({ isShort }) => isShort).map(({ line }) => line.line.name);
}

function shown({ value, places, unit }: Figure): string {
  return `${fixedText(value, places)} ${unit}`;
}

/** How far the load stays off the formula, and for want of what. */
export function offNotes(inBowl: readonly InBowl[], figures: readonly MendedFigure[]): readonly Note[] {
  const off = figures.filter(
    ({ asked, mended }) => offBy(asked, mended).gt(TOLD) || dec(asked.value).isZero() !== dec(mended.value).isZero(),
  );
  if (off.length === 0) return [];
  const names = namesShort(inBowl);
  const told = off.map(
    ({ label, asked, mended }) => `${label} ${shown(mended)}, by the formula ${fixedText(asked.value, asked.places)}`,
  );
  return [loudNote("mend.off", [names.length === 0 ? "weighed" : "noMore"], { names, off: told })];
}

/** What is added on a scale a step of which is much of it. */
export function coarseNotes(spec: Spec, { lines }: Mended): readonly Note[] {
  const tolerance = weighingTolerance(spec);
  const coarse = lines.filter(
    ({ add, total, division }) =>
      !dec(add.value).isZero() && dec(division).times(50).div(total.value).gt(tolerance.value),
  );
  if (coarse.length === 0) return [];
  return [loudNote("mend.coarse", ["scales"], { names: coarse.map(({ name }) => name), tolerance: tolerance.value })];
}

/** Loads of the batch that are no more needed beside one that became larger. */
export function loadNotes({ loads: { count }, loadTotal, batchTotal }: Batch, { dough }: Mended): readonly Note[] {
  const rest = dec(batchTotal.value).minus(dough.value).div(loadTotal.value);
  const slack = dec(count.value).times(TOLD).div(100);
  const left = rest.lte(slack) ? ZERO : rest.minus(slack).ceil();
  if (left.gte(dec(count.value).minus(1))) return [];
  return [loudNote("mend.fewer-loads", ["batch"], { count: Number(count.value), left: left.toNumber() })];
}

/** That too much rework needs nothing else, and whether it is beyond what the spec allows. */
export function reworkNotes({ rework: stated }: Spec, { rework, dough }: Mended): readonly Note[] {
  if (rework === undefined || dec(rework.already.value).lte(rework.planned.value)) return [];
  const share = dec(rework.total.value).times(100).div(dough.value);
  const most = stated?.most && share.gt(stated.most.value) ? stated.most.text : undefined;
  const more = measure(dec(rework.already.value).minus(rework.planned.value), "g", 0);
  const facts = { more, share: fixedText(share, 1), ...(most !== undefined && { most }) };
  return [(most === undefined ? note : loudNote)("mend.rework", ["weighed"], facts)];
}

/** Whether the mixer takes the load, and what to do where it does not. */
export function mixerNotes({ mixer }: Spec, { water }: Formula, { lines, dough, rework }: Mended): readonly Note[] {
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
