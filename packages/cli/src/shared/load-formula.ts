import { type Formula, formulaOf, type Note, type OwnMaterials, type Problem, type Spec } from "@noodlewright/core";
import type { PlacedProblem } from "../input/document.ts";
import { loadSpec, type Override } from "../input/load-spec.ts";
import type { Io } from "../io.ts";
import type { Asked } from "./command.ts";

/** A spec with its formula, for commands that go on from there. */
export interface LoadedFormula {
  readonly spec: Spec;
  readonly formula: Formula;
  readonly included: OwnMaterials;
  readonly notes: readonly Note[];
  readonly place: (problem: Problem) => PlacedProblem;
}

export type FormulaLoading =
  | { readonly ok: true; readonly loaded: LoadedFormula }
  | { readonly ok: false; readonly problems: readonly PlacedProblem[] };

/** Reads a spec, merges flags in, and works out its formula. */
export async function loadFormula(asked: Asked, overrides: readonly Override[], io: Io): Promise<FormulaLoading> {
  const loading = await loadSpec(asked.text("spec") ?? "-", overrides, io);
  if (!loading.ok) return loading;
  const { data, included, place } = loading.spec;
  const outcome = formulaOf(data, included);
  if (!outcome.ok) return { ok: false, problems: outcome.problems.map(place) };
  const { spec, formula } = outcome.value;
  return { ok: true, loaded: { spec, formula, included, notes: outcome.notes, place } };
}
