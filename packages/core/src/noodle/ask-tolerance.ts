import { type BatchTolerance, batchTolerance } from "../explore/spec-tolerance.ts";
import { toleranceReport } from "../report/tolerance-report.ts";
import { type Answer, answered } from "./answer.ts";
import type { Noodle } from "./noodle.ts";
import { plannedBatch, unweighedNotes } from "./planned-batch.ts";

/**
 * What errors of weighing, flours, strength and losses do to protein, dough water, alkalinity and bowls, and which matters.
 *
 * @param wish - where the random trials begin, and how many there are
 * Problems: those of `askBatch`; a seed or a number of trials that is none.
 * @example shown(askTolerance(example("school-noodle"), { draws: 100 }).value.outputs[0].figure) // => "12.32 %"
 */
export function askTolerance(
  noodle: Noodle,
  wish: { readonly seed?: number; readonly draws?: number } = {},
): Answer<BatchTolerance> {
  const batch = plannedBatch(noodle);
  if (!batch.ok) return batch;
  return answered(batchTolerance(noodle.spec, noodle.formula, batch.value, wish), {
    notes: (own) => [...unweighedNotes(noodle), ...own],
    report: (tolerance, notes) => toleranceReport(noodle.formula, tolerance, notes, noodle.units),
  });
}
