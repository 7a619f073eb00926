import { planBatch } from "../batch/batch.ts";
import type { Note } from "../figure/problem.ts";
import { once } from "./answer.ts";
import type { Noodle } from "./noodle.ts";

/** The batch of a noodle with no more than its own notes. */
export const plannedBatch = once(({ spec, formula, units }) => planBatch(spec, formula, units === "us"));

/** Notes of the formula and the batch, for answers that weigh nothing: which scale was assumed does not matter there. */
export function unweighedNotes(noodle: Noodle): readonly Note[] {
  const batch = plannedBatch(noodle);
  return [...noodle.notes, ...(batch.ok ? batch.notes : [])].filter(({ code }) => code !== "scales.assumed");
}

/** The same without those on single materials, for what is done with the dough once it is weighed. */
export function doughNotes(noodle: Noodle): readonly Note[] {
  const ofMaterials: readonly string[] = ["materials.note", "alkali.product"];
  return unweighedNotes(noodle).filter(({ code }) => !ofMaterials.includes(code) && !code.startsWith("blend."));
}
