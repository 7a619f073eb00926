import { findRemedies, type Remedies, type ScaledMass, type StockedWeight, weightsWithStock } from "../batch/remedy.ts";
import { scalesOf, type WeighedLine, weighingTolerance, weighLoad } from "../batch/weighing.ts";
import { type Figure, given } from "../figure/figure.ts";
import { figureIn, type Graph, graphOf, type Published, published, scoped } from "../figure/graph.ts";
import { answer, type Outcome } from "../figure/problem.ts";
import { definition } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { inUse } from "../formula/line.ts";
import type { Spec } from "../spec/spec.ts";
import type { Trial } from "./water-trial.ts";

/** The doughs of a trial as the scales of the kitchen weigh them. */
export interface TrialWeights {
  /** What to weigh for each dough, in one order. */
  readonly doughs: readonly (readonly ScaledMass[])[];
  /** What is too little for its scale; a stock is one for all doughs. */
  readonly remedies: Remedies;
}

/** A trial of the water, and its doughs as the scales show them. */
export interface WeighedTrial {
  readonly trial: Trial;
  readonly weights: TrialWeights;
  readonly graph: Graph;
}

/**
 * Weighs the doughs of a trial on the scales of the spec, each with its total kept. Salts too little for them come from one
 * stock solution for all doughs, with no more water than the driest has.
 *
 * @param us - weigh in ounces where the spec names no scale
 * Problems: those of `scalesOf`.
 */
export function weighTrial(spec: Spec, formula: Formula, trial: Published<Trial>, us: boolean): Outcome<WeighedTrial> {
  const scales = scalesOf(spec, us);
  if (!scales.ok) return scales;
  const flour = figureIn("trial.flour", trial.graph);
  const count = (id: string, value: number, label: string): Figure =>
    given({ id, label, unit: "", places: 0 }, value, "the trial", definition);
  const weighed = trial.doughs.map(({ water }) => {
    const lines = inUse(formula.lines).map((line) => (line.role === "water" ? { ...line, parts: water } : line));
    return weighLoad(lines, flour, count("trial.at-a-time", 1, "doughs at a time"), scales.value);
  });
  const tolerance = weighingTolerance(spec);
  const remedies = findRemedies(
    weighed[0] ?? [],
    scales.value,
    count("trial.count", trial.doughs.length, "doughs"),
    tolerance,
  );
  const graphs: Graph[] = [formula.graph];
  const doughs = weighed.map((lines, index) => {
    const weights = remedies.stock ? weightsWithStock(...inDough(lines, remedies.stock)) : lines.map(plainly);
    const scope = `trial.dough.${index + 1}`;
    const own = graphOf(
      weights.map(({ mass }) => mass),
      trial.graph,
      formula.graph,
    );
    graphs.push(own);
    const figures = scoped(
      scope,
      Object.values(own).filter(({ id }) => !/^(?:trial|scale)\./u.test(id) && !Object.hasOwn(formula.graph, id)),
    );
    return weights.map((one): ScaledMass => {
      const { name, division, unit, scale } = one;
      const mass = figures.find(({ id }) => id === `${scope}.${one.mass.id}`) ?? one.mass;
      return { name, mass, division, unit, scale };
    });
  });
  return answer(published({ trial, weights: { doughs, remedies } }, ...graphs), scales.notes);
}

/** The stock, with the salts and the water of another dough in it. */
function inDough(lines: readonly WeighedLine[], stock: NonNullable<Remedies["stock"]>) {
  const same = (one: WeighedLine): WeighedLine => lines.find(({ line }) => line.id === one.line.id) ?? one;
  return [lines, { ...stock, salts: stock.salts.map(same), carrier: same(stock.carrier) }] as const;
}

function plainly(weighed: WeighedLine): StockedWeight {
  const { line, load, division, unit, scale } = weighed;
  return { name: line.name, mass: load, division, unit, scale, weighed };
}
