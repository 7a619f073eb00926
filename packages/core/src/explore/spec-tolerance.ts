import { asWeighed } from "../batch/as-weighed.ts";
import type { Batch } from "../batch/batch.ts";
import { type Figure, found, worked } from "../figure/figure.ts";
import { type Graph, graphOf, published, scoped } from "../figure/graph.ts";
import { workedAnew } from "../figure/recalculate.ts";
import { massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { flourBasis } from "../materials/moisture.ts";
import { plainName } from "../materials/nearest.ts";
import type { Spec } from "../spec/spec.ts";
import type { Cause } from "./cause.ts";
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

/** What the figures of a load as its scales weigh it are under. */
const scope = "tolerance";

/**
 * Tells what errors of weighing, flours, moisture, strength and losses do to the protein of the blend, the dough water, the
 * alkalinity and the weight of a bowl, in one load of a batch.
 */
export function batchTolerance(
  spec: Spec,
  formula: Formula,
  batch: Batch,
  wish: Pick<ToleranceQuestion, "seed" | "draws"> = {},
): BatchTolerance {
  const { causes: all, exact } = causesOf(spec, batch);
  const weighed = asWeighed(formula, batch.lines, scope);
  const { blend, water, alkali } = formula;
  const shown: readonly (readonly [id: string, label: string, figure: Figure | undefined])[] = [
    ["protein", `protein of the blend at ${flourBasis.value} % mb`, blend.protein && weighed(blend.protein.at14)],
    ["water", "dough water", weighed(water.doughWater)],
    ["alkali", "alkalinity M", alkali && weighed(alkali.alkalinityM)],
    ["portion", "raw weight of a bowl", portionFigure(batch)],
  ];
  const figures = shown.flatMap(([, , figure]) => figure ?? []);
  const graph = graphOf(figures, formula.graph, batch.graph);
  // Losses matter to bowls alone, and the protein of one flour to nothing where that of another is not known.
  const causes = all.filter(({ id }) => Object.hasOwn(graph, id));
  const outputs = shown.flatMap(([id, label, figure]) =>
    figure === undefined ? [] : [{ id, label, figure: figure.id }],
  );
  return published({ causes, exact, outputs: tolerance({ graph, causes, outputs, ...wish }) }, graph);
}

/**
 * Tells what errors do to how the figures of one load differ from those of another, by the graphs of both. What both share,
 * such as the lot of a flour or a loss, is off by the same in both, and the less does it move the difference; each weighing errs
 * by itself. A flour of the same name and the same figures is taken for the same lot.
 */
export function differenceTolerance(first: BatchTolerance, other: BatchTolerance): readonly Tolerance[] {
  const inOne = byId(scoped("first", Object.values(first.graph)));
  const inTwo = byId(scoped("other", Object.values(other.graph)));
  const shared = new Map(sharedKeys(first.causes).map((key, index) => [key, first.causes[index]]));
  const twins = sharedKeys(other.causes).map((key) => shared.get(key));
  const causes: Cause[] = first.causes.map((cause) => ({ ...cause, id: `first.${cause.id}` }));
  for (const [index, cause] of other.causes.entries()) {
    const id = `other.${cause.id}`;
    const twin = cause.kind === "weighing" ? undefined : inOne.get(`first.${twins[index]?.id}`);
    const figure = inTwo.get(id);
    if (twin === undefined || figure === undefined) causes.push({ ...cause, id });
    else inTwo.set(id, worked(figure, "same", { same: twin }, ...figure.sources));
  }
  const asked = other.outputs.flatMap(({ id, figure: { id: figure, label, unit, places } }) => {
    const [of, at] = [inTwo.get(`other.${figure}`), inOne.get(`first.${figure}`)];
    if (of === undefined || at === undefined) return [];
    const naming = { id: `difference.${id}`, label: `difference of ${label}`, unit, places };
    return [{ id, label, figure: worked(naming, "other - first", { other: of, first: at }) }];
  });
  return tolerance({
    graph: Object.fromEntries([...inOne, ...inTwo, ...byId(asked.map(({ figure }) => figure))]),
    causes,
    outputs: asked.map(({ figure, ...output }) => ({ ...output, figure: figure.id })),
    draws: 100,
  });
}

function byId(figures: readonly Figure[]): Map<string, Figure> {
  return new Map(figures.map((figure) => [figure.id, figure]));
}

/** What is off by the same in two loads has the same key in both. */
function sharedKeys(causes: readonly Cause[]): readonly string[] {
  const alike = ({ kind, name, basis, value, plusMinus, unit }: Cause): string =>
    JSON.stringify([kind, plainName(name), basis, value, plusMinus, unit]);
  return toldApart(causes.map(alike));
}

/** Raw strands of a load in each of its bowls, by the batch's own graph; nothing where the spec tells no bowls. */
function portionFigure({ target, loads, rework, lines, graph }: Batch): Figure | undefined {
  if (target.bowls === undefined) return undefined;
  const mass = [...lines.map(({ load }) => load), ...(rework ? [rework.mass] : [])];
  const naming = { ...target.dough, id: `${scope}.${target.dough.id}`, label: "dough of the load as weighed" };
  const dough = worked(naming, "sum(mass)", { mass }, massBalance);
  const strands = workedAnew(graph, new Map([[target.dough.id, dough]]), scope)(target.strands.id);
  // The numbers of loads and bowls were chosen: no error moves them.
  const chosen = (figure: Figure): Figure =>
    found({ ...figure, id: `${scope}.${figure.id}` }, figure.value, "as it is planned", [figure]);
  const from = { strands, loads: chosen(loads.count), bowls: chosen(target.bowls) };
  const portion = { id: `${scope}.raw-weight`, label: "raw strands of a bowl", unit: "g", places: 1 };
  return worked(portion, "strands * loads / bowls", from, massBalance);
}
