import type { Outcome } from "@noodlewright/core";
import type { Batch, WeighedLine } from "@noodlewright/core/answers";
import { planBatch } from "#core/batch/batch.ts";
import { formulaOf } from "#core/formula/formula.ts";
import type { Written } from "../formula/worked-out.ts";
import { answered } from "../told-of.ts";

/** Bread flour, 36 % water, 1 % salt: what most tests of batches start from. */
export const plain: Written = {
  flours: [{ name: "bread flour", amount: "100 %" }],
  water: { tap: "36 %" },
  salt: "1 %",
};

/** Works out a written spec and plans its batch. */
export function plan(written: Partial<Written>, us = false): Outcome<Batch> {
  const { spec, formula } = answered(formulaOf({ name: "test", ...plain, ...written }));
  return planBatch(spec, formula, us);
}

/** The batch of a written spec; the test fails where there is none. */
export function planned(written: Partial<Written>, us = false): Batch {
  return answered(plan(written, us));
}

/** A weighed line by its id. */
export function lineOf(batch: Batch, id: string): WeighedLine {
  const found = batch.lines.find(({ line }) => line.id === id);
  if (found === undefined) throw new Error(`no line ${id}`);
  return found;
}
