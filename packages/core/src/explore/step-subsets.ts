import { measure, type Objective, type StepAnswer, type StepProblem } from "./step-problem.ts";
import { anySteps, bestSteps } from "./step-search.ts";

/**
 * Finds the steps that change the fewest flours of a blend (in steps; a flour whose share is no whole step is changed in
 * any case), and among those the best by `bestSteps`. With a blend of nothing but zeros it finds the fewest flours.
 */
export function fewestChanged(
  problem: StepProblem,
  from: readonly number[],
  objectives: readonly Objective[],
): StepAnswer {
  const must = [...from.keys()].filter((index) => !canStay(problem, from, index));
  const may = [...from.keys()].filter((index) => canStay(problem, from, index));
  const reachable = anySteps(problem);
  if (reachable.kind === "none") return reachable;
  let unfinished = false;
  for (let size = 0; size <= may.length; size += 1) {
    let best: readonly number[] | undefined;
    for (const chosen of subsets(may, size)) {
      const answer = bestSteps(keepOthers(problem, from, [...must, ...chosen]), objectives);
      if (answer.kind === "unfinished") unfinished = true;
      if (answer.kind === "found" && (best === undefined || isBetter(answer.steps, best, objectives)))
        best = answer.steps;
    }
    if (unfinished) return { kind: "unfinished" };
    if (best !== undefined) return { kind: "found", steps: best };
  }
  return { kind: "none" };
}

/** Which of two blends of steps comes first in the stated order: by the objectives, then more of the flour listed first. */
export function isBetter(one: readonly number[], other: readonly number[], objectives: readonly Objective[]): boolean {
  for (const objective of objectives) {
    const difference = measure(objective, one) - measure(objective, other);
    if (difference !== 0) return difference < 0;
  }
  const index = one.findIndex((count, at) => count !== other[at]);
  return index >= 0 && (one[index] ?? 0) > (other[index] ?? 0);
}

function canStay(problem: StepProblem, from: readonly number[], index: number): boolean {
  const count = from[index] ?? 0;
  return Number.isInteger(count) && count >= (problem.least[index] ?? 0) && count <= (problem.most[index] ?? 0);
}

function keepOthers(problem: StepProblem, from: readonly number[], free: readonly number[]): StepProblem {
  const open = new Set(free);
  return {
    ...problem,
    least: problem.least.map((count, index) => (open.has(index) ? count : (from[index] ?? 0))),
    most: problem.most.map((count, index) => (open.has(index) ? count : (from[index] ?? 0))),
  };
}

/** All choices of so many items, in the order of the list. @example [...subsets([1, 2, 3], 2)] // => [[1, 2], [1, 3], [2, 3]] */
export function* subsets(items: readonly number[], size: number): Generator<readonly number[]> {
  if (size === 0) yield [];
  for (const [at, item] of items.entries()) {
    if (size === 0) return;
    for (const rest of subsets(items.slice(at + 1), size - 1)) yield [item, ...rest];
  }
}
