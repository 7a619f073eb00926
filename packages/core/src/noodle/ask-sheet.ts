import { sheetReport } from "../report/sheet-report.ts";
import type { SheetPlan } from "../sheet/sheet-plan.ts";
import { type Answer, answered } from "./answer.ts";
import type { Noodle } from "./noodle.ts";
import { doughNotes } from "./planned-batch.ts";
import { plannedSheet } from "./planned-sheet.ts";

/**
 * The passes on the machine at hand; with a cutter the strands, the portions, and where the dough goes. Lengths in mm.
 *
 * Problems: those of `askBatch`; of the machine, its settings, the thickness and the cutter.
 * @example askSheet(example("school-noodle")).value.schedule.passes.length // => 7
 */
export function askSheet(noodle: Noodle): Answer<SheetPlan> {
  return answered(plannedSheet(noodle), {
    notes: (own) => [...doughNotes(noodle), ...own],
    report: (sheet, notes) => sheetReport(noodle.formula, sheet, { notes, units: noodle.units }),
  });
}
