import { type Batch, planBatch } from "../batch/batch.ts";
import { answer, type Note, type Outcome } from "../figure/problem.ts";
import { once } from "./answer.ts";
import type { Noodle } from "./noodle.ts";

/** The batch of a noodle, whatever its spec wants beside it. */
export const weighedBatch = once(({ spec, formula, units }) => planBatch(spec, formula, units === "us"));

/** What the spec wants and the noodle does not come to, as far as the program takes that in. */
export const missedWants = once((noodle): readonly Note[] => noodle.beyond.missed?.(noodle) ?? []);

/**
 * The batch of a noodle with no more than its own notes; what its spec wants and it does not come to is among them. A program
 * that shows neither reports nor sentences is smaller with it and `noodle.formula` than with answers.
 *
 * Problems: those of `askBatch`.
 * @example shown(plannedBatch(example("school-noodle")).value.loadTotal) // => "12280.3 g"
 */
export const plannedBatch: (noodle: Noodle) => Outcome<Batch> = once((noodle) => {
  const batch = weighedBatch(noodle);
  if (!batch.ok) return batch;
  return answer(batch.value, [...missedWants(noodle), ...batch.notes]);
});

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
