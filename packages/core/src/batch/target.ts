import { type Figure, worked } from "../figure/figure.ts";
import { answer, type Outcome } from "../figure/problem.ts";
import { definition } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import type { Spec } from "../spec/spec.ts";
import { bowlWeight } from "./bowl.ts";
import { bowlsNaming, doughSize, type LeftUnused, statedBowls } from "./dough-size.ts";
import { lossFigures, runStages, type Stage } from "./losses.ts";

/** Size of a batch and what happens to it on the way to the bowls. Masses in g. */
export interface Target {
  /** Dough in the mixer, before any loss. */
  readonly dough: Figure;
  /** What is left after each stage: mixing, sheeting, cutting. */
  readonly stages: readonly Stage[];
  /** Raw strands at the end. */
  readonly strands: Figure;
  /** Raw strands in a bowl, where it is stated. */
  readonly rawWeight?: Figure;
  readonly cookedWeight?: Figure;
  readonly bowls?: Figure;
}

/**
 * Finds the dough that has to be mixed for a batch, losses worked backwards.
 *
 * Problems: those of `bowlWeight` and `doughSize`.
 */
export function findTarget(spec: Spec, formula: Formula, left?: LeftUnused): Outcome<Target> {
  const bowl = bowlWeight(spec);
  if (!bowl.ok) return bowl;
  const losses = lossFigures(spec);
  const size = doughSize(spec, formula, bowl.value.raw, losses, left);
  if (!size.ok) return size;
  const dough = size.value;
  const stages = runStages(dough, losses);
  const strands = { ...(stages.at(-1)?.after ?? dough), id: "batch.strands", label: "raw strands" };
  const { raw, cooked } = bowl.value;
  const bowls = raw && bowlCount(spec, strands, raw);
  const weights = { ...(raw && { rawWeight: raw }), ...(cooked && { cookedWeight: cooked }) };
  return answer({ dough, stages, strands, ...weights, ...(bowls && { bowls }) }, bowl.notes);
}

function bowlCount(spec: Spec, strands: Figure, raw: Figure): Figure {
  const stated = spec.batch?.bowls;
  if (stated !== undefined) return statedBowls(stated);
  return worked(bowlsNaming, "floor(strands / raw)", { strands, raw }, definition);
}
