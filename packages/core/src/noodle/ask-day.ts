import { planReport } from "../report/plan-report.ts";
import { type DayPlan, planDay } from "../sheet/day/day-plan.ts";
import { type Answer, answered } from "./answer.ts";
import { asRead, type Noodle } from "./noodle.ts";
import { plannedBatch, unweighedNotes } from "./planned-batch.ts";
import { plannedSheet, shortPortions } from "./planned-sheet.ts";

/**
 * The day, backwards from service: when each load is weighed, mixed, rolled, cut and boiled. Times in min.
 *
 * Problems: those of `askBatch`, and of `askSheet` where the spec has a sheet; of the stages and the time of service.
 * @example askDay(example("evening-class")).value.time.start.text // => "17:40"
 */
export function askDay(noodle: Noodle): Answer<DayPlan> {
  const { spec, formula, units } = asRead(noodle);
  const batch = plannedBatch(noodle);
  if (!batch.ok) return batch;
  const sheet = spec.sheet && plannedSheet(noodle);
  if (sheet?.ok === false) return sheet;
  return answered(planDay(spec, formula, batch.value, sheet?.value), {
    notes: (own) => [...unweighedNotes(noodle), ...shortPortions(noodle), ...own],
    report: (day, notes) => planReport(formula, batch.value, day, { notes, units }),
  });
}
