import type { Box } from "./step-bounds.ts";
import { measure, type Objective, type Reached, rowValue, type StepProblem } from "./step-problem.ts";

/** Steps with the value of the objective. */
export interface Scored {
  readonly steps: readonly number[];
  readonly value: number;
}

/** The flours a box leaves open, the one with most room last. */
export function openFlours(box: Box): readonly number[] {
  const room = (index: number): number => (box.most[index] ?? 0) - (box.least[index] ?? 0);
  return [...box.least.keys()].filter((index) => room(index) > 0).sort((a, b) => room(a) - room(b));
}

/** How many blends would have to be tried to go through a box: the two flours with most room are settled by one line. */
export function triesIn(box: Box, open: readonly number[]): number {
  return open.slice(0, -2).reduce((tries, index) => tries * ((box.most[index] ?? 0) - (box.least[index] ?? 0) + 1), 1);
}

/** Goes through all blends of a small box and gives the best one below `limit`, the first of equals. */
export function bestInBox(
  problem: StepProblem,
  box: Box,
  objective: Objective | undefined,
  kept: readonly Reached[],
  limit: number,
): Scored | undefined {
  const open = openFlours(box);
  const steps = [...box.least];
  let best: Scored | undefined;
  const consider = (): void => {
    const value = objective === undefined ? 0 : measure(objective, steps);
    if (value >= (best?.value ?? limit)) return;
    if (kept.every((reached) => measure(reached.objective, steps) <= reached.value))
      best = { steps: [...steps], value };
  };
  const settled = (): boolean => best !== undefined && objective === undefined;
  const descend = (depth: number, rest: number): void => {
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
    for (let count = depth + 1 === open.length ? low + rest : low; count <= high && !settled(); count += 1) {
      steps[index] = count;
      descend(depth + 1, rest - (count - low));
    }
    steps[index] = low;
  };
  descend(0, problem.total - box.least.reduce((total, count) => total + count, 0));
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
  for (let count = from; count <= to; count += 1) {
    steps[first] = lowFirst + count;
    steps[second] = lowSecond + rest - count;
    if (!visit()) break;
  }
  steps[first] = lowFirst;
  steps[second] = lowSecond;
}
