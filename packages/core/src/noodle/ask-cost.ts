import { type Cost, costOf } from "../batch/cost.ts";
import { costReport } from "../report/cost-report.ts";
import { type Answer, answered } from "./answer.ts";
import type { Noodle } from "./noodle.ts";
import { plannedBatch } from "./planned-batch.ts";

/**
 * What the batch costs, what to buy and how far the store goes.
 *
 * Problems: those of `askBatch`; prices in several currencies.
 * @example shown(askCost(example("school-noodle")).value.kilogram) // => "0.8202 EUR/kg"
 */
export function askCost(noodle: Noodle): Answer<Cost> {
  const batch = plannedBatch(noodle);
  if (!batch.ok) return batch;
  return answered(costOf(noodle.spec, noodle.formula, batch.value), {
    notes: (own) => [
      ...noodle.notes.filter(({ loud }) => loud),
      ...batch.notes,
      ...own,
      ...(noodle.beyond.shortPortions?.(noodle) ?? []),
    ],
    report: (cost, notes) => costReport(noodle.formula, batch.value, cost, { notes, units: noodle.units }),
  });
}
