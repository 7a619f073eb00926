import type { Outcome } from "@noodlewright/core";
import type { Cost } from "@noodlewright/core/answers";
import { planBatch } from "#core/batch/batch.ts";
import { costOf } from "#core/batch/cost.ts";
import { type Written, workedOut } from "../formula/worked-out.ts";
import { answered } from "../told-of.ts";
import { plain } from "./planned.ts";

/** Works out what the batch of a written spec costs. */
export function cost(written: Partial<Written>): Outcome<Cost> {
  const { spec, formula } = workedOut({ ...plain, batch: { dough: "10 kg" }, ...written });
  return costOf(spec, formula, answered(planBatch(spec, formula)));
}

/** The cost of a written spec; the test fails where there is none. */
export function costed(written: Partial<Written>): Cost {
  return answered(cost(written));
}
