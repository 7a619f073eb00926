import type { Batch } from "../batch/batch.ts";
import { missedNotes, type WantedChecks, wantedChecks } from "../explore/wanted-checks.ts";
import type { Note, Outcome } from "../figure/problem.ts";
import type { Noodle } from "./noodle.ts";
import { plannedBatch, weighedBatch } from "./planned-batch.ts";

/** What the spec of a noodle wants, beside what the noodle comes to. */
export function heldAgainst({ spec, formula, kitchen }: Noodle, batch: Outcome<Batch>): WantedChecks {
  return wantedChecks(spec, formula, batch.ok ? batch.value : undefined, kitchen.materials);
}

/**
 * What the spec of a noodle wants and the noodle, or its batch where it has one, does not come to, a loud note each, and what of it cannot be told; `Beyond`
 * takes it.
 *
 * @example missed(example("school-noodle")) // => []
 */
export function missed(noodle: Noodle): readonly Note[] {
  const held = heldAgainst(noodle, weighedBatch(noodle));
  return [...missedNotes(held), ...held.notes];
}

/**
 * What a noodle wants and no longer comes to, of what another came to: one loud note each.
 *
 * @example newlyMissed(example("school-noodle"), example("school-noodle")) // => []
 */
export function newlyMissed(before: Noodle, after: Noodle): readonly Note[] {
  const was = heldAgainst(before, plannedBatch(before)).checks;
  const { checks, notes } = heldAgainst(after, plannedBatch(after));
  const held = checks.filter(({ label }) => was.some((one) => one.label === label && one.holds));
  return missedNotes({ checks: held, notes });
}
