import type { Batch } from "../batch/batch.ts";
import { missedNotes, type WantedChecks, wantedChecks } from "../explore/wanted-checks.ts";
import type { Note } from "../figure/problem.ts";
import type { Noodle } from "./noodle.ts";

/** What the spec of a noodle wants, beside what the noodle comes to. */
export function heldAgainst({ spec, formula, kitchen }: Noodle, batch: Batch | undefined): WantedChecks {
  return wantedChecks(spec, formula, batch, kitchen.materials);
}

/**
 * What the spec of a noodle wants and its batch does not come to, a loud note each; `Beyond` takes it.
 *
 * @example missed(example("school-noodle"), askBatch(example("school-noodle")).value) // => []
 */
export function missed(noodle: Noodle, batch: Batch): readonly Note[] {
  return missedNotes(heldAgainst(noodle, batch));
}
