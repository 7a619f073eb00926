import {
  type Batch,
  type Formula,
  formulaOf,
  type Note,
  type OwnMachines,
  type Problem,
  planBatch,
  type Spec,
  type UnitSystem,
} from "@noodlewright/core";
import type { PlacedProblem } from "../input/document.ts";
import { loadSpec, type Override } from "../input/load-spec.ts";
import type { Io } from "../io.ts";
import type { Asked } from "./command.ts";

/** A spec with its formula and its batch, for commands that go on from there. */
export interface LoadedBatch {
  readonly spec: Spec;
  readonly formula: Formula;
  readonly batch: Batch;
  readonly machines: OwnMachines;
  readonly formulaNotes: readonly Note[];
  readonly batchNotes: readonly Note[];
  /** Both, less the one about an assumed scale, for answers that weigh nothing. */
  readonly notes: readonly Note[];
  readonly units: UnitSystem;
  readonly place: (problem: Problem) => PlacedProblem;
}

export type BatchLoading =
  | { readonly ok: true; readonly loaded: LoadedBatch }
  | { readonly ok: false; readonly problems: readonly PlacedProblem[] };

/** The notes without those on the figures of single materials, for what is done with the dough once it is weighed. */
export function notesOnDough(notes: readonly Note[]): readonly Note[] {
  const ofMaterials: readonly string[] = ["materials.note", "alkali.product"];
  return notes.filter(({ code }) => !ofMaterials.includes(code) && !code.startsWith("blend."));
}

/** Reads a spec, merges flags in, and works out its formula and its batch. */
export async function loadBatch(asked: Asked, overrides: readonly Override[], io: Io): Promise<BatchLoading> {
  const loading = await loadSpec(asked.text("spec") ?? "-", overrides, io, "machines");
  if (!loading.ok) return loading;
  const { data, included, machines, place } = loading.spec;
  const outcome = formulaOf(data, included);
  if (!outcome.ok) return { ok: false, problems: outcome.problems.map(place) };
  const { spec, formula } = outcome.value;
  const units = asked.text("units") === "us" ? "us" : "metric";
  const batch = planBatch(spec, formula, units === "us");
  if (!batch.ok) return { ok: false, problems: batch.problems.map(place) };
  const notes = [...outcome.notes, ...batch.notes].filter(({ code }) => code !== "scales.assumed");
  return {
    ok: true,
    loaded: {
      spec,
      formula,
      batch: batch.value,
      machines,
      formulaNotes: outcome.notes,
      batchNotes: batch.notes,
      notes,
      units,
      place,
    },
  };
}
