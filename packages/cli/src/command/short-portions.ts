import { type Batch, type Formula, type Note, type OwnMachines, planSheet, type Spec } from "@noodlewright/core";

/** Says where the sheets of a spec give fewer portions than are wanted. A sheet at fault is left to `noodlewright sheet`. */
export function shortPortions(spec: Spec, formula: Formula, batch: Batch, machines: OwnMachines): readonly Note[] {
  if (spec.sheet === undefined) return [];
  const sheet = planSheet(spec, formula, batch, machines);
  return sheet.ok ? sheet.notes.filter(({ code }) => code === "sheet.portions-short") : [];
}
