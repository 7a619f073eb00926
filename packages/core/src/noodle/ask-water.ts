import type { Published } from "../figure/graph.ts";
import { temperatureReport } from "../report/temperature-report.ts";
import { type DoughWater, loadWater } from "../sheet/water/dough-water.ts";
import { type Answer, answered } from "./answer.ts";
import type { Noodle } from "./noodle.ts";
import { doughNotes, plannedBatch } from "./planned-batch.ts";

/**
 * How warm the water of one load has to be, and how much of it is ice. Temperatures in °C, masses in g.
 *
 * Problems: those of `askBatch`; of the temperatures, and of a dough that no water brings to them.
 * @example shown(askWater(example("school-noodle")).value.plan.temperature) // => "14.8 °C"
 */
export function askWater(noodle: Noodle): Answer<Published<DoughWater>> {
  const batch = plannedBatch(noodle);
  if (!batch.ok) return batch;
  return answered(loadWater(noodle.spec, batch.value), {
    notes: (own) => [...doughNotes(noodle), ...own],
    report: (water, notes) =>
      temperatureReport(`${noodle.formula.name}, water for one load`, water, notes, noodle.units),
  });
}
