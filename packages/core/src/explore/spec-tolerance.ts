import { type Delivered, linesAsWeighed, waterOfLines } from "../batch/as-weighed.ts";
import type { Batch } from "../batch/batch.ts";
import { runStages } from "../batch/losses.ts";
import { type Figure, worked } from "../figure/figure.ts";
import { type Graph, graphOf, published, scoped } from "../figure/graph.ts";
import { answer, type Outcome } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import { sumAlkali } from "../formula/alkali.ts";
import { mixFlours } from "../formula/blend.ts";
import { ofDough, percent } from "../formula/naming.ts";
import { flourBasis } from "../materials/moisture.ts";
import { plainName } from "../materials/nearest.ts";
import type { Spec } from "../spec/spec.ts";
import type { Cause, Output } from "./cause.ts";
import { type BatchCauses, causesOf } from "./spec-causes.ts";
import { toldApart } from "./told-apart.ts";
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
  protein: percent("protein", `protein of the blend at ${flourBasis.value} % mb`),
  water: ofDough("water", "dough water"),
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
  const { causes, exact, outputs: asked, graph } = erringLoad(spec, batch);
  const outcome = tolerance({
    graph,
    causes,
    outputs: asked.map(({ figure, ...output }) => ({ ...output, figure: figure.id })),
    ...(seed !== undefined && { seed }),
    ...(draws !== undefined && { draws }),
  });
  if (!outcome.ok) return outcome;
  return answer(published({ causes, exact, outputs: outcome.value }));
}

/** A weight without what it was rounded from: as weighed, the formula works out figures of the same names from it. */
function asItIs(load: Figure): Figure {
  const { working } = load;
  return working.kind === "procedure" ? { ...load, working: { kind: "procedure", by: working.by } } : load;
}

/** A load with what may be off in it, and the figures of which that is asked. */
function erringLoad(spec: Spec, batch: Batch) {
  const { causes: all, exact, lines: weighed } = causesOf(spec, batch);
  const lines = weighed.map((one) => ({ ...one, load: asItIs(one.load) }));
  const load = linesAsWeighed(lines);
  const shown: readonly (readonly [Omit<Output, "figure">, Figure | undefined])[] = [
    [outputs.protein, mixFlours(load.filter(({ role }) => role === "flour")).protein?.at14],
    [outputs.water, waterOfLines(load).doughWater],
    [outputs.alkali, sumAlkali(load)?.alkalinityM],
    [outputs.portion, portionFigure(batch, lines)],
  ];
  const asked = shown.flatMap(([output, figure]) => (figure === undefined ? [] : [{ ...output, figure }]));
  const graph = graphOf(
    asked.map(({ figure }) => figure),
    batch.graph,
  );
  // Losses matter to bowls alone, and the protein of one flour to nothing where that of another is not known.
  const causes = all.filter(({ id }) => Object.hasOwn(graph, id));
  return { causes, exact, outputs: asked, graph };
}

/**
 * Tells what errors do to how the figures of one load differ from those of another, by the graphs of both. What both share,
 * such as the lot of a flour or a loss, is off by the same in both, and the less does it move the difference; each weighing errs
 * by itself. A flour of the same name and the same figures is taken for the same lot.
 *
 * Problems: those of `tolerance`.
 */
export function differenceTolerance(
  first: readonly [Spec, Batch],
  other: readonly [Spec, Batch],
): Outcome<readonly Tolerance[]> {
  const [one, two] = [erringLoad(...first), erringLoad(...other)];
  const inOne = new Map(scoped("first", Object.values(one.graph)).map((figure) => [figure.id, figure]));
  const inTwo = new Map(scoped("other", Object.values(two.graph)).map((figure) => [figure.id, figure]));
  const shared = new Map(sharedKeys(one.causes).map((key, index) => [key, one.causes[index]]));
  const twins = sharedKeys(two.causes).map((key) => shared.get(key));
  const own: Cause[] = one.causes.map((cause) => ({ ...cause, id: `first.${cause.id}` }));
  for (const [index, cause] of two.causes.entries()) {
    const id = `other.${cause.id}`;
    const twin = cause.kind === "weighing" ? undefined : inOne.get(`first.${twins[index]?.id}`);
    const figure = inTwo.get(id);
    if (twin === undefined || figure === undefined) own.push({ ...cause, id });
    else inTwo.set(id, worked(figure, "same", { same: twin }, ...figure.sources));
  }
  const asked = two.outputs.flatMap(({ figure, ...output }) => {
    const [of, at] = [inTwo.get(`other.${figure.id}`), inOne.get(`first.${figure.id}`)];
    if (of === undefined || at === undefined) return [];
    const { id, label, unit, places } = output;
    const naming = { id: `difference.${id}`, label: `difference of ${label}`, unit, places };
    return [{ ...output, figure: worked(naming, "other - first", { other: of, first: at }) }];
  });
  const all = [...inOne.values(), ...inTwo.values(), ...asked.map(({ figure }) => figure)];
  return tolerance({
    graph: Object.fromEntries(all.map((figure) => [figure.id, figure])),
    causes: own,
    outputs: asked.map(({ figure, ...output }) => ({ ...output, figure: figure.id })),
    draws: 100,
  });
}

/** What is off by the same in two loads has the same key in both. */
function sharedKeys(causes: readonly Cause[]): readonly string[] {
  const alike = ({ kind, name, basis, value, plusMinus, unit }: Cause): string =>
    JSON.stringify([kind, plainName(name), basis, value, plusMinus, unit]);
  return toldApart(causes.map(alike));
}

/** Raw strands of a load in each of its bowls; nothing where the spec tells no bowls. */
function portionFigure({ target, loads, rework }: Batch, lines: readonly Delivered[]): Figure | undefined {
  if (target.bowls === undefined) return undefined;
  const mass = [...lines.map(({ load }) => load), ...(rework ? [rework.mass] : [])];
  const naming = { id: "weighed.dough", label: "dough of the load as weighed", unit: "g", places: 1 };
  const dough = worked(naming, "sum(mass)", { mass }, massBalance);
  const [mixing, sheeting, cutting] = target.stages.map(({ loss }) => loss);
  if (mixing === undefined || sheeting === undefined || cutting === undefined) return undefined;
  const strands = runStages(dough, { mixing, sheeting, cutting }).at(-1)?.after ?? dough;
  // The numbers of loads and bowls were chosen: no error moves them.
  const from = { strands, loads: loads.count.value, bowls: target.bowls.value };
  const portion = { id: "weighed.portion", label: "raw strands of a bowl", unit: "g", places: 1 };
  return worked(portion, "strands * loads / bowls", from, massBalance);
}
