import type { Note } from "../figure/problem.ts";
import { planSheet, shortPortionsNotes } from "../sheet/sheet-plan.ts";
import { once } from "./answer.ts";
import type { Noodle } from "./noodle.ts";
import { plannedBatch } from "./planned-batch.ts";

/** The sheet of a noodle with no more than its own notes. */
export const plannedSheet = once((noodle) => {
  const batch = plannedBatch(noodle);
  return batch.ok ? planSheet(noodle.spec, noodle.formula, batch.value, noodle.kitchen.machines) : batch;
});

/**
 * Says where the sheets give fewer portions than are wanted; `Beyond` takes it. A sheet at fault is left to `askSheet`.
 *
 * @example shortPortions(example("school-noodle")) // => []
 */
export function shortPortions(noodle: Noodle): readonly Note[] {
  const batch = plannedBatch(noodle);
  return batch.ok ? shortPortionsNotes(noodle.spec, noodle.formula, batch.value, noodle.kitchen.machines) : [];
}
