import { type BatchTolerance, batchTolerance } from "../explore/spec-tolerance.ts";
import { answer } from "../figure/problem.ts";
import { count, optional, section } from "../materials/fields.ts";
import { toleranceReport } from "../report/tolerance-report.ts";
import { type Answer, answered } from "./answer.ts";
import type { Noodle } from "./noodle.ts";
import { plannedBatch, unweighedNotes } from "./planned-batch.ts";
import { readWish } from "./wishes.ts";

const toleranceWish = section({ description: "Random trials" }, () => ({
  seed: optional(count(1, 2_147_483_646), "Where the random trials begin", [7]),
  draws: optional(count(100, 100_000), "Number of random trials", [5000]),
}));

/**
 * What errors of weighing, flours, strength and losses do to protein, dough water, alkalinity and bowls, and which matters.
 *
 * @param wish - where the random trials begin, and how many there are
 * Problems: those of `askBatch`; of the wish.
 * @example shown(askTolerance(example("school-noodle"), { draws: 100 }).value.outputs[0].figure) // => "12.32 %"
 */
export function askTolerance(
  noodle: Noodle,
  wish: { readonly seed?: number | undefined; readonly draws?: number | undefined } = {},
): Answer<BatchTolerance> {
  const batch = plannedBatch(noodle);
  const wished = readWish(toleranceWish, wish);
  if (!wished.ok) return wished;
  if (!batch.ok) return batch;
  return answered(answer(batchTolerance(noodle.spec, noodle.formula, batch.value, wished.value)), {
    notes: (own) => [...unweighedNotes(noodle), ...own],
    report: (tolerance, notes) => toleranceReport(noodle.formula, tolerance, { notes, units: noodle.units }),
  });
}
