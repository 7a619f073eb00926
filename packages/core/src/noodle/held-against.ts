import type { Batch } from "../batch/batch.ts";
import { missedNotes, type WantedChecks, wantedChecks } from "../explore/wanted-checks.ts";
import type { Note } from "../figure/problem.ts";
import type { Noodle } from "./noodle.ts";
import { plannedBatch, weighedBatch } from "./planned-batch.ts";

/** What the spec of a noodle wants, beside what the noodle comes to. */
export function heldAgainst({ spec, formula, kitchen }: Noodle, batch: Batch | undefined): WantedChecks {
  return wantedChecks(spec, formula, batch, kitchen.materials);
}

/**
 * What the spec of a noodle wants and the noodle, or its batch where it has one, does not come to, a loud note each, and what of it cannot be told; `Beyond`
 * takes it.
 *
 * @example missed(example("school-noodle")) // => []
 */
export function missed(noodle: Noodle): readonly Note[] {
  const batch = weighedBatch(noodle);
  const held = heldAgainst(noodle, batch.ok ? batch.value : undefined);
  return [...missedNotes(held), ...held.notes];
}

/**
 * What a noodle wants and no longer comes to, of what another came to: one loud note each.
 *
 * @example newlyMissed(example("school-noodle"), example("school-noodle")) // => []
 */
export function newlyMissed(before: Noodle, after: Noodle): readonly Note[] {
  const checksOf = (noodle: Noodle): WantedChecks => {
    const batch = plannedBatch(noodle);
    return heldAgainst(noodle, batch.ok ? batch.value : undefined);
  };
  const held = new Set(checksOf(before).checks.flatMap(({ label, holds }) => (holds ? [label] : [])));
  const { checks, notes } = checksOf(after);
  return missedNotes({ checks: checks.filter(({ label }) => held.has(label)), notes });
}
