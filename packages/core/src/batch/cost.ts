import { type Figure, worked } from "../figure/figure.ts";
import { type Graph, published } from "../figure/graph.ts";
import { answer, type Note, note, type Outcome } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { finerPlaces } from "../formula/prices.ts";
import { dec } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";
import type { Batch } from "./batch.ts";
import { type Columns, costColumns } from "./cost-columns.ts";
import { isTap, type Prices, pricesOf } from "./cost-prices.ts";
import { type SharedOut, shareOut } from "./cost-shares.ts";
import { type Shopping, shoppingFor } from "./shopping.ts";
import type { WeighedLine } from "./weighing.ts";

/** What one ingredient costs. */
export interface CostLine {
  readonly weighed: WeighedLine;
  /** Price as stated; left out for what has none. */
  readonly priced?: string;
  readonly batch?: Figure;
  readonly load?: Figure;
  readonly bowl?: Figure;
}

/** What a batch costs. Every column adds up to its total. */
export interface Cost {
  readonly currency: string;
  readonly lines: readonly CostLine[];
  readonly batch: Figure;
  readonly load: Figure;
  readonly bowl?: Figure;
  /** Of a kilogram of raw strands. */
  readonly kilogram: Figure;
  readonly shared: readonly SharedOut[];
  /** Ingredients without a price, which the totals leave out. */
  readonly unpriced: readonly string[];
  readonly shopping: Shopping;
  readonly graph: Graph;
}

/**
 * Works out what a batch costs, by ingredient, load, batch and bowl, and what to buy for it.
 *
 * Costs are those of the weights as weighed, dusting starch with them, and of nothing but ingredients. Tap water without a
 * price costs nothing. Problems: those of `pricesOf`.
 * Source of the decimal places: ISO 4217.
 */
export function costOf(spec: Spec, formula: Formula, batch: Batch): Outcome<Cost> {
  const prices = pricesOf(spec, formula);
  if (!prices.ok) return prices;
  const weighed = [...batch.lines, ...(batch.dusting ? [batch.dusting] : [])];
  const unpriced = prices.value.lines.flatMap((line) => (line.material.price || isTap(line) ? [] : [line.name]));
  const bowls = dec(batch.target.bowls?.value ?? 0).gt(0) ? batch.target.bowls : undefined;
  const parts = costColumns(weighed, prices.value, bowls, unpriced.length > 0);
  const shopping = shoppingFor(weighed, prices.value, batch);
  const { places, currency } = prices.value;
  const coin = dec(10).pow(-places);
  const loads = dec(batch.loads.count.value);
  const shared = [
    ...(loads.gt(1) ? [shareOut("load", parts.batch.total, batch.loads.count, coin)] : []),
    ...(bowls ? [shareOut("bowl", parts.batch.total, bowls, coin)] : []),
  ];
  const label = `raw strands${unpriced.length > 0 ? ", what is priced of them" : ""}`;
  const naming = { id: "cost.kilogram", label, unit: `${currency}/kg`, places: places + finerPlaces };
  const from = { cost: parts.unrounded, strands: batch.target.strands };
  const kilogram = worked(naming, "1000 * cost / strands", from, massBalance);
  const cost: Omit<Cost, "graph"> = {
    currency,
    lines: weighed.map((one) => costLine(one, prices.value, parts)),
    batch: parts.batch.total,
    load: parts.load.total,
    ...(parts.bowl && { bowl: parts.bowl.total }),
    kilogram,
    shared,
    unpriced,
    shopping,
  };
  const notes = [
    ...prices.notes,
    ...costNotes(prices.value, unpriced),
    ...(batch.rework ? [note("cost.rework-free", ["rework"], {})] : []),
    ...shopping.notes,
  ];
  return answer(published(cost, formula.graph, batch.graph), notes);
}

function costLine(weighed: WeighedLine, prices: Prices, parts: Columns): CostLine {
  const { id } = weighed.line;
  const priced = prices.lines.find((line) => line.id === id)?.material.price;
  const batch = parts.batch.byLine.get(id);
  const load = parts.load.byLine.get(id);
  const bowl = parts.bowl?.byLine.get(id);
  const text = priced?.text ?? (isTap(weighed.line) ? "free" : undefined);
  return {
    weighed,
    ...(text && { priced: text }),
    ...(batch && { batch }),
    ...(load && { load }),
    ...(bowl && { bowl }),
  };
}

function costNotes({ lines }: Prices, unpriced: readonly string[]): readonly Note[] {
  const tap = lines.find((line) => isTap(line) && !line.material.price && !dec(line.parts.value).isZero());
  return [
    ...(unpriced.length === 0 ? [] : [note("cost.not-priced", ["prices"], { names: unpriced })]),
    ...(tap ? [note("cost.water-free", ["prices"], {})] : []),
    note("cost.ingredients-only", [], {}),
  ];
}
