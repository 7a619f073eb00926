import { saltsOfLoad } from "../batch/remedy.ts";
import { type Scale, scalesOf } from "../batch/weighing.ts";
import type { Weighed } from "../chemistry/carried.ts";
import { answer, type Outcome, problem, refuse } from "../figure/problem.ts";
import type { DecimalText } from "../number/decimal.ts";
import type { Noodle } from "./noodle.ts";
import { plannedBatch } from "./planned-batch.ts";

/** What a stock solution for the loads of a noodle has to go by. Masses in g. */
export interface StockNeeds {
  /** Salts of one load that can be kept in water. */
  readonly salts: readonly Weighed[];
  readonly scales: readonly Scale[];
  /** Most that weighing may be off, %. */
  readonly tolerance: DecimalText;
  readonly loads: DecimalText;
  /** Water of one load. */
  readonly water?: DecimalText;
}

/**
 * What a stock solution for the loads of a noodle has to go by.
 *
 * Problems: those of `askBatch`; `stock.no-alkali`.
 */
export function stockNeeds(noodle: Noodle): Outcome<StockNeeds> {
  const batch = plannedBatch(noodle);
  if (!batch.ok) return batch;
  const { tolerance, loads, lines } = batch.value;
  const scales = scalesOf(noodle.spec, noodle.units === "us");
  if (!scales.ok) return scales;
  if (!lines.some(({ line }) => line.role === "alkali")) {
    return refuse(problem("stock.no-alkali", [], {}));
  }
  const water = lines.find(({ line }) => line.role === "water")?.exact.value;
  const salts = saltsOfLoad(batch.value);
  return answer({ salts, scales: scales.value, tolerance, loads: loads.count.value, ...(water && { water }) });
}
