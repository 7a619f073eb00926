import { type Constraint, solve } from "yalps";
import type { Box } from "./step-bounds.ts";
import { type Objective, type Reached, rowValue, type StepProblem, weigh } from "./step-problem.ts";

/** What the question comes to when steps need not be whole: a bound for the whole-number answer, and where it lies. */
export type Relaxed =
  | { readonly kind: "found"; readonly bound: number; readonly steps: readonly number[] }
  | { readonly kind: "none" }
  | { readonly kind: "unknown" };

type Term = readonly [name: string, weight: number];
type Model = {
  readonly constraints: Map<string, Constraint>;
  readonly variables: Map<string, Map<string, number>>;
};

/**
 * Solves the question in fractions of a step with the linear solver.
 *
 * Rows and objectives are whole numbers, so each limit is given half a unit of slack: no whole steps lie in that half,
 * and no rounding in the solver can cut an answer off.
 */
export function relax(
  problem: StepProblem,
  box: Box,
  objective: Objective | undefined,
  kept: readonly Reached[],
): Relaxed {
  const model: Model = { constraints: new Map(), variables: new Map() };
  putBox(model, problem.total, box);
  for (const [index, row] of problem.rows.entries()) {
    const terms = stepTerms(row.coefficients, box);
    putScaled(model, `row ${index}`, terms, "min", -0.5 - rowValue(row, box.least));
  }
  for (const [index, reached] of kept.entries()) {
    const { terms, constant } = objectiveTerms(model, reached.objective, box, `kept ${index}`);
    putScaled(model, `kept ${index}`, terms, "max", reached.value + 0.5 - constant);
  }
  putShape(model, problem, box);
  const aim = objective === undefined ? noAim : objectiveTerms(model, objective, box, "aim");
  return runSolver(model, box, aim);
}

interface Aim {
  readonly terms: readonly Term[];
  readonly constant: number;
}

const noAim: Aim = { terms: [], constant: 0 };

function runSolver(model: Model, box: Box, aim: Aim): Relaxed {
  const scale = scaleOf(aim.terms);
  for (const [name, weight] of aim.terms) variable(model, name).set("aim", weight * scale);
  const solution = solve<string, string>({
    direction: "minimize",
    objective: "aim",
    constraints: model.constraints,
    variables: model.variables,
  });
  if (solution.status === "infeasible") return { kind: "none" };
  if (solution.status !== "optimal") return { kind: "unknown" };
  const found = new Map(solution.variables);
  return {
    kind: "found",
    bound: solution.result / scale + aim.constant,
    steps: box.least.map((count, index) => count + (found.get(stepName(index)) ?? 0)),
  };
}

/** Every flour counts from its least, so that the solver's variables begin at zero. */
function putBox(model: Model, total: number, box: Box): void {
  const spare = total - box.least.reduce((sum, count) => sum + count, 0);
  const free = box.least.flatMap((low, index): readonly Term[] =>
    box.most[index] === low ? [] : [[stepName(index), 1]],
  );
  put(model, "total", free, { equal: spare });
  for (const [index, low] of box.least.entries()) {
    const room = (box.most[index] ?? 0) - low;
    if (room > 0 && room < spare) put(model, `most ${index}`, [[stepName(index), 1]], { max: room });
  }
}

/** No more flours than may be in: each counts by the part of its greatest share that is used. */
function putShape(model: Model, { mostFlours }: StepProblem, box: Box): void {
  if (mostFlours === undefined) return;
  const { terms, constant } = changedTerms({ kind: "changed", from: box.least.map(() => 0), perStep: 1 }, box);
  putScaled(model, "flours", terms, "max", mostFlours - constant + 1e-6);
}

function objectiveTerms(model: Model, objective: Objective, box: Box, tag: string): Aim {
  switch (objective.kind) {
    case "weighted":
      return { terms: stepTerms(objective.weights, box), constant: weigh(objective.weights, box.least) };
    case "off-zero": {
      const base = weigh(objective.weights, box.least);
      return aside(model, `${tag} off`, stepTerms(objective.weights, box), -base);
    }
    case "moved": {
      const parts = objective.from.map((from, index) => movedTerms(model, objective, from, index, box, tag));
      return {
        terms: parts.flatMap(({ terms }) => terms),
        constant: parts.reduce((total, { constant }) => total + constant, 0),
      };
    }
    case "missed": {
      const names = objective.rows.map((row, index) => {
        const scale = scaleOf(stepTerms(row, box));
        const name = `${tag} missed ${index}`;
        const terms = stepTerms(row, box).map(([step, weight]): Term => [step, weight * scale]);
        put(model, name, [...terms, [name, 1]], { min: -weigh(row, box.least) * scale });
        return [name, 1 / scale] as const;
      });
      return { terms: names, constant: 0 };
    }
    case "changed":
      return changedTerms(objective, box);
  }
}

/** A flour that can only move one way is a plain term; one that can move both ways needs a distance. */
function movedTerms(
  model: Model,
  { perStep, weights }: Extract<Objective, { kind: "moved" }>,
  from: number,
  index: number,
  box: Box,
  tag: string,
): Aim {
  const [low, high] = [(box.least[index] ?? 0) * perStep, (box.most[index] ?? 0) * perStep];
  const weight = weights[index] ?? 0;
  if (low === high) return { terms: [], constant: weight * Math.abs(from - low) };
  if (from <= low) return { terms: [[stepName(index), weight * perStep]], constant: weight * (low - from) };
  if (from >= high) return { terms: [[stepName(index), -weight * perStep]], constant: weight * (from - low) };
  const { terms } = aside(model, `${tag} moved ${index}`, [[stepName(index), perStep]], from - low);
  return { terms: terms.map(([name, own]) => [name, own * weight]), constant: 0 };
}

/** A flour that starts at an end of its box counts by the part of its room that it moves: never more than it truly counts. */
function changedTerms({ from, perStep }: Extract<Objective, { kind: "changed" }>, box: Box): Aim {
  const terms: Term[] = [];
  let constant = 0;
  for (const [index, start] of from.entries()) {
    const [low, high] = [box.least[index] ?? 0, box.most[index] ?? 0];
    const point = start / perStep;
    if (point < low || point > high || !Number.isInteger(point)) constant += 1;
    else if (low < high && point === low) terms.push([stepName(index), 1 / (high - low)]);
    else if (low < high && point === high) {
      constant += 1;
      terms.push([stepName(index), -1 / (high - low)]);
    }
  }
  return { terms, constant };
}

/** A variable that is at least the distance of the terms from a point. */
function aside(model: Model, name: string, terms: readonly Term[], point: number): Aim {
  const scale = scaleOf(terms);
  const scaled = terms.map(([step, weight]): Term => [step, weight * scale]);
  put(model, `${name} over`, [...scaled, [name, -1]], { max: point * scale });
  put(model, `${name} under`, [...scaled, [name, 1]], { min: point * scale });
  return { terms: [[name, 1 / scale]], constant: 0 };
}

function putScaled(model: Model, key: string, terms: readonly Term[], side: "min" | "max", limit: number): void {
  const scale = scaleOf(terms);
  const scaled = terms.map(([name, weight]): Term => [name, weight * scale]);
  put(model, key, scaled, side === "min" ? { min: limit * scale } : { max: limit * scale });
}

function put(model: Model, key: string, terms: readonly Term[], constraint: Constraint): void {
  model.constraints.set(key, constraint);
  for (const [name, weight] of terms) variable(model, name).set(key, weight);
}

function variable(model: Model, name: string): Map<string, number> {
  const known = model.variables.get(name) ?? new Map<string, number>();
  model.variables.set(name, known);
  return known;
}

function stepName(index: number): string {
  return `steps ${index}`;
}

/** The terms of the flours that a box leaves open; the others stand in the constant. */
function stepTerms(weights: readonly number[], box: Box): readonly Term[] {
  return weights.flatMap((weight, index): readonly Term[] =>
    weight === 0 || box.least[index] === box.most[index] ? [] : [[stepName(index), weight]],
  );
}

/** Brings the largest weight of a row down to ten thousand, where the solver's tolerance is far below half a unit. */
function scaleOf(terms: readonly Term[]): number {
  const largest = terms.reduce((most, [, weight]) => Math.max(most, Math.abs(weight)), 1);
  return Math.min(1, 10_000 / largest);
}
