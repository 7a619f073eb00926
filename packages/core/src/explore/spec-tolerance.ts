import { type Delivered, linesAsWeighed, waterOfLines } from "../batch/as-weighed.ts";
import type { Batch } from "../batch/batch.ts";
import { runStages } from "../batch/losses.ts";
import { type Figure, worked } from "../figure/figure.ts";
import { type Graph, graphOf, published } from "../figure/graph.ts";
import { answer, type Outcome } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import { sumAlkali } from "../formula/alkali.ts";
import { flourBasis, mixFlours } from "../formula/blend.ts";
import type { Spec } from "../spec/spec.ts";
import type { Output } from "./cause.ts";
import { type BatchCauses, causesOf } from "./spec-causes.ts";
import { type Tolerance, type ToleranceQuestion, tolerance } from "./tolerance.ts";

/** What the errors of a kitchen do to a load. */
export interface BatchTolerance {
  readonly causes: BatchCauses["causes"];
  /** What nobody states the error of, and nothing tells. */
  readonly exact: BatchCauses["exact"];
  readonly outputs: readonly Tolerance[];
  readonly graph: Graph;
}

const outputs: Readonly<Record<"protein" | "water" | "alkali" | "portion", Omit<Output, "figure">>> = {
  protein: { id: "protein", label: `protein of the blend at ${flourBasis} % mb`, unit: "%", places: 2 },
  water: { id: "water", label: "dough water", unit: "% of dough", places: 2 },
  alkali: { id: "alkali", label: "alkalinity M", unit: "meq/100 g flour", places: 2 },
  portion: { id: "portion", label: "raw weight of a bowl", unit: "g", places: 1 },
};

/**
 * Tells what errors of weighing, flours, moisture, strength and losses do to the protein of the blend, the dough water, the
 * alkalinity and the weight of a bowl, in one load of a batch.
 *
 * Problems: those of `tolerance`.
 */
export function batchTolerance(
  spec: Spec,
  batch: Batch,
  { seed, draws }: Pick<ToleranceQuestion, "seed" | "draws"> = {},
): Outcome<BatchTolerance> {
  const known = causesOf(spec, batch);
  const load = linesAsWeighed(known.lines);
  const portion = portionFigure(batch, known.lines);
  const shown: readonly (readonly [Omit<Output, "figure">, Figure | undefined])[] = [
    [outputs.protein, mixFlours(load.filter(({ role }) => role === "flour")).protein?.at14],
    [outputs.water, waterOfLines(load).doughWater],
    [outputs.alkali, sumAlkali(load)?.alkalinityM],
    [outputs.portion, portion],
  ];
  const asked = shown.flatMap(([output, figure]) => (figure === undefined ? [] : [{ ...output, figure }]));
  const outcome = tolerance({
    graph: graphOf(
      asked.map(({ figure }) => figure),
      batch.graph,
    ),
    causes: known.causes,
    outputs: asked.map(({ figure, ...output }) => ({ ...output, figure: figure.id })),
    ...(seed !== undefined && { seed }),
    ...(draws !== undefined && { draws }),
  });
  if (!outcome.ok) return outcome;
  return answer(published({ causes: known.causes, exact: known.exact, outputs: outcome.value }));
}

/** Raw strands of a load in each of its bowls; nothing where the spec tells no bowls. */
function portionFigure({ target, loads, rework }: Batch, lines: readonly Delivered[]): Figure | undefined {
  if (target.bowls === undefined) return undefined;
  const mass = [...lines.map(({ load }) => load), ...(rework ? [rework.mass] : [])];
  const naming = { unit: "g", places: 1, sources: [massBalance] };
  const dough = worked({
    ...naming,
    id: "weighed.dough",
    label: "dough of the load as weighed",
    formula: "sum(mass)",
    from: { mass },
  });
  const [mixing, sheeting, cutting] = target.stages.map(({ loss }) => loss);
  if (mixing === undefined || sheeting === undefined || cutting === undefined) return undefined;
  const strands = runStages(dough, { mixing, sheeting, cutting }).at(-1)?.after ?? dough;
  // The numbers of loads and bowls were chosen: no error moves them.
  const from = { strands, loads: loads.count.value, bowls: target.bowls.value };
  return worked({
    ...naming,
    id: "weighed.portion",
    label: "raw strands of a bowl",
    formula: "strands * loads / bowls",
    from,
  });
}
