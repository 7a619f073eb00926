import type { Box } from "./step-bounds.ts";
import type { Budget } from "./step-budget.ts";
import {
  everyOf,
  hasShape,
  measure,
  type Objective,
  type Reached,
  rowValue,
  type StepProblem,
} from "./step-problem.ts";

/** Steps with the value of the objective. */
export interface Scored {
  readonly steps: readonly number[];
  readonly value: number;
}

/** How many shares a box leaves a flour. */
export function choices(problem: StepProblem, box: Box, index: number): number {
  return Math.floor(((box.most[index] ?? 0) - (box.least[index] ?? 0)) / everyOf(problem, index)) + 1;
}

/** The flours a box leaves open, the one with most choices last. */
export function openFlours(problem: StepProblem, box: Box): readonly number[] {
  const room = (index: number): number => choices(problem, box, index);
  return [...box.least.keys()].filter((index) => room(index) > 1).sort((a, b) => room(a) - room(b));
}

/** How many blends would have to be tried to go through a box: the two flours with most room are settled by one line. */
export function triesIn(problem: StepProblem, box: Box, open: readonly number[]): number {
  return open.slice(0, -2).reduce((tries, index) => tries * choices(problem, box, index), 1);
}

/** Goes through all blends of a small box and gives the best one below `limit`, the first of equals. */
export function bestInBox(
  problem: StepProblem,
  box: Box,
  objective: Objective | undefined,
  kept: readonly Reached[],
  limit: number,
  budget: Budget,
): Scored | undefined {
  const open = openFlours(problem, box);
  const steps = [...box.least];
  let best: Scored | undefined;
  let work = 0;
  const consider = (): void => {
    work += steps.length * (1 + kept.length);
    const value = objective === undefined ? 0 : measure(objective, steps);
    if (value >= (best?.value ?? limit) || !hasShape(problem, steps)) return;
    if (kept.every((reached) => measure(reached.objective, steps) <= reached.value))
      best = { steps: [...steps], value };
  };
  const settled = (): boolean => best !== undefined && objective === undefined;
  const descend = (depth: number, rest: number): void => {
    work += steps.length * (problem.rows.length + 1);
    const index = open[depth];
    if (index === undefined) {
      if (rest === 0 && problem.rows.every((row) => rowValue(row, steps) >= 0)) consider();
      return;
    }
    const low = box.least[index] ?? 0;
    const partner = open[depth + 1];
    if (partner !== undefined && depth + 2 === open.length) {
      walkLine(problem, box, steps, index, partner, rest, () => {
        consider();
        return !settled();
      });
      return;
    }
    const high = Math.min(box.most[index] ?? 0, low + rest);
    const start = depth + 1 === open.length ? low + rest : low;
    for (let count = start; count <= high && !settled(); count += everyOf(problem, index)) {
      steps[index] = count;
      descend(depth + 1, rest - (count - low));
    }
    steps[index] = low;
  };
  descend(0, problem.total - box.least.reduce((total, count) => total + count, 0));
  budget.spend(work);
  return best;
}

/** Two flours share `rest` steps above their least: every row cuts a piece off that line. */
function walkLine(
  problem: StepProblem,
  box: Box,
  steps: number[],
  first: number,
  second: number,
  rest: number,
  visit: () => boolean,
): void {
  const [lowFirst, lowSecond] = [box.least[first] ?? 0, box.least[second] ?? 0];
  const every = everyOf(problem, first);
  let from = Math.max(0, rest - ((box.most[second] ?? 0) - lowSecond));
  let to = Math.min(rest, (box.most[first] ?? 0) - lowFirst);
  steps[first] = lowFirst;
  steps[second] = lowSecond + rest;
  for (const row of problem.rows) {
    const start = rowValue(row, steps);
    const slope = (row.coefficients[first] ?? 0) - (row.coefficients[second] ?? 0);
    if (slope === 0 && start < 0) to = -1;
    if (slope > 0) from = Math.max(from, Math.ceil(-start / slope));
    if (slope < 0) to = Math.min(to, Math.floor(start / -slope));
  }
  for (let count = Math.ceil(from / every) * every; count <= to; count += every) {
    steps[first] = lowFirst + count;
    steps[second] = lowSecond + rest - count;
    if (!visit()) break;
  }
  steps[first] = lowFirst;
  steps[second] = lowSecond;
}
