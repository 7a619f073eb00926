import type { Batch } from "../batch/batch.ts";
import { batchReport } from "../report/batch-report.ts";
import { type Answer, answered } from "./answer.ts";
import type { Noodle } from "./noodle.ts";
import { plannedBatch } from "./planned-batch.ts";

/**
 * The weights of each load, and what the batch comes to. Masses in g.
 *
 * Problems: of the size of the batch, the losses, the mixer, the scales and the rework.
 * @example shown(askBatch(example("school-noodle")).value.loadTotal) // => "12280.3 g"
 */
export function askBatch(noodle: Noodle): Answer<Batch> {
  return answered(plannedBatch(noodle), {
    notes: (own) => [...noodle.notes, ...own, ...(noodle.beyond.shortPortions?.(noodle) ?? [])],
    report: (batch, notes) => batchReport(noodle.formula, batch, { notes, units: noodle.units }),
  });
}
