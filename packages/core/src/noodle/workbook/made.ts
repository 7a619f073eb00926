import type { Batch } from "../../batch/batch.ts";
import type { Cost } from "../../batch/cost.ts";
import type { Scale, WeighedLine } from "../../batch/weighing.ts";
import type { HeldWant } from "../../explore/wanted-checks.ts";
import type { Graph } from "../../figure/graph.ts";
import type { Rule } from "../../render/workbook/workbook.ts";
import type { Noodle } from "../noodle.ts";

/** Formulas of figures that a procedure found, by id. */
export type Rules = Record<string, Rule>;

/** What the pieces of a workbook are made from. */
export interface Made {
  readonly noodle: Noodle;
  readonly batch: Batch;
  /** As if what has no price were free; which those are, `unpriced` tells. */
  readonly cost: Cost | undefined;
  readonly unpriced: readonly string[];
  readonly scales: readonly Scale[];
  readonly weighed: readonly WeighedLine[];
  readonly graph: Graph;
  readonly wants: readonly HeldWant[];
  /** Of what is wanted, what cannot be told, in words. */
  readonly untold: readonly string[];
}
