import { type Note, planSheet } from "@noodlewright/core";
import type { LoadedBatch } from "./load-batch.ts";

/** Says where the sheets of a spec give fewer portions than are wanted. A sheet at fault is left to `noodlewright sheet`. */
export function shortPortions({ spec, formula, batch, machines }: LoadedBatch): readonly Note[] {
  if (spec.sheet === undefined) return [];
  const sheet = planSheet(spec, formula, batch, machines);
  return sheet.ok ? sheet.notes.filter(({ code }) => code === "sheet.portions-short") : [];
}
