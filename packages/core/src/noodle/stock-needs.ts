import { saltsOfLoad } from "../batch/remedy.ts";
import { type Scale, scalesOf } from "../batch/weighing.ts";
import type { Weighed } from "../chemistry/carried.ts";
import { answer, type Outcome, problem, refuse } from "../figure/problem.ts";
import { type DecimalText, dec, decimalText } from "../number/decimal.ts";
import type { Noodle } from "./noodle.ts";
import { plannedBatch } from "./planned-batch.ts";

/** A scale that a stock is weighed on. */
export interface KitchenScale {
  readonly division: DecimalText;
  readonly capacity?: DecimalText;
  /** Unit it shows. */
  readonly unit: string;
}

/** What a stock solution for the loads of a noodle has to go by. Masses in g. */
export interface StockNeeds {
  /** Salts of one load that can be kept in water. */
  readonly salts: readonly Weighed[];
  readonly scales: readonly KitchenScale[];
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
 * @example stockNeeds(example("school-noodle")).value.salts.map(({ name }) => name) // => ["sodium carbonate", "potassium carbonate", "table salt"]
 */
export function stockNeeds(noodle: Noodle): Outcome<StockNeeds> {
  const batch = plannedBatch(noodle);
  if (!batch.ok) return batch;
  const { tolerance, loads, lines } = batch.value;
  const scales = scalesOf(noodle.spec, noodle.units === "us");
  if (!scales.ok) return scales;
  if (!lines.some(({ line }) => line.role === "alkali")) return refuse(problem("stock.no-alkali", [], {}));
  const water = lines.find(({ line }) => line.role === "water")?.exact.value;
  const salts = saltsOfLoad(batch.value);
  return answer({
    salts,
    scales: scales.value.map(inText),
    tolerance,
    loads: loads.count.value,
    ...(water && { water }),
  });
}

function inText({ division, capacity, unit }: Scale): KitchenScale {
  return { division: decimalText(division), unit, ...(capacity && { capacity: decimalText(capacity) }) };
}

/** Loads that a stock is made for: those of a day for so many days, whole. @example loadsInStock("4", "1.3") // => "6" */
export function loadsInStock(loads: DecimalText, days: DecimalText): DecimalText {
  return decimalText(dec(loads).times(days).ceil());
}
