import { type Box, narrow } from "./step-bounds.ts";
import { bestInBox, openFlours, type Scored, triesIn } from "./step-leaf.ts";
import { holds, measure, type Objective, type Reached, type StepAnswer, type StepProblem } from "./step-problem.ts";
import { relax } from "./step-relaxation.ts";

/** Boxes of at most so many tries are gone through one by one. */
const smallBox = 2000;
/** Boxes looked at before the search is given up. */
const patience = 20_000;

/**
 * Finds the steps that make the first objective smallest, among those the second, and so on; then the first flour gets as
 * many steps as it can, then the second, and so on, so that there is one answer only.
 *
 * Branch and bound: the linear solver bounds a box of steps from below, small boxes are gone through one by one in whole
 * numbers, and whatever is found is checked once more in decimals.
 * (The whole-number mode of the linear solver is not used: on narrow protein ranges it ran for seconds, and it takes a
 * simplex run that cycles for a box without answers.)
 */
export function bestSteps(problem: StepProblem, objectives: readonly Objective[]): StepAnswer {
  const reached: Reached[] = [];
  let best: readonly number[] | undefined;
  for (const objective of objectives) {
    const answer = smallest(problem, objective, reached);
    if (answer.kind !== "found") return answer;
    best = answer.steps;
    reached.push({ objective, value: measure(objective, best) });
  }
  return settleTies(problem, reached, best);
}

/** Finds steps that make one objective smallest, without a say in which of equals: always the same ones. */
export function smallestSteps(problem: StepProblem, objective: Objective): StepAnswer {
  return smallest(problem, objective, []);
}

/** Finds any steps that hold. */
export function anySteps(problem: StepProblem): StepAnswer {
  return smallest(problem, undefined, []);
}

function settleTies(problem: StepProblem, kept: readonly Reached[], start: readonly number[] | undefined): StepAnswer {
  const least = [...problem.least];
  const most = [...problem.most];
  let best = start;
  for (const index of least.keys()) {
    const box = narrow(problem, { least, most });
    if (box === undefined) return { kind: "none" };
    if (best === undefined || (best[index] ?? 0) < (box.most[index] ?? 0)) {
      const weights = least.map((_, other) => (other === index ? -1 : 0));
      const answer = smallest({ ...problem, ...box }, { kind: "weighted", weights }, kept, best);
      if (answer.kind !== "found") return answer;
      best = answer.steps;
    }
    least[index] = best[index] ?? 0;
    most[index] = best[index] ?? 0;
  }
  return best === undefined ? { kind: "none" } : { kind: "found", steps: best };
}

/** One objective at a time, with those before it kept; `known` is an answer to start from. */
function smallest(
  problem: StepProblem,
  objective: Objective | undefined,
  kept: readonly Reached[],
  known?: readonly number[],
): StepAnswer {
  const search = new Search(problem, objective, kept, known);
  const finished = search.run({ least: problem.least, most: problem.most });
  if (search.best !== undefined) {
    if (!holds(problem, search.best.steps)) throw new Error("the search gave steps that break a limit");
    if (finished) return { kind: "found", steps: search.best.steps };
  }
  return { kind: finished ? "none" : "unfinished" };
}

class Search {
  best: Scored | undefined;
  readonly #problem: StepProblem;
  readonly #objective: Objective | undefined;
  readonly #kept: readonly Reached[];
  #looked = 0;

  constructor(
    problem: StepProblem,
    objective: Objective | undefined,
    kept: readonly Reached[],
    known: readonly number[] | undefined,
  ) {
    this.#problem = problem;
    this.#objective = objective;
    this.#kept = kept;
    if (known !== undefined) this.#offer(known);
  }

  /** Goes through a box, the more promising half first; false when patience ran out. */
  run(start: Box): boolean {
    const waiting: Box[] = [start];
    for (let box = waiting.pop(); box !== undefined; box = waiting.pop()) {
      this.#looked += 1;
      if (this.#looked > patience) return false;
      waiting.push(...this.#look(box));
      if (this.best !== undefined && this.#objective === undefined) return true;
    }
    return true;
  }

  #look(wide: Box): readonly Box[] {
    const box = narrow(this.#problem, wide);
    if (box === undefined) return [];
    const open = openFlours(box);
    if (triesIn(box, open) <= smallBox) {
      const limit = this.best?.value ?? Number.POSITIVE_INFINITY;
      this.best = bestInBox(this.#problem, box, this.#objective, this.#kept, limit) ?? this.best;
      return [];
    }
    const relaxed = relax(this.#problem, box, this.#objective, this.#kept);
    if (relaxed.kind === "none") return [];
    if (relaxed.kind === "unknown") return halves(box, open, undefined);
    if (this.best !== undefined && Math.ceil(relaxed.bound - 1e-3) >= this.best.value) return [];
    this.#offer(roundToTotal(relaxed.steps, this.#problem.total));
    if (this.best !== undefined && Math.ceil(relaxed.bound - 1e-3) >= this.best.value) return [];
    return halves(box, open, relaxed.steps);
  }

  #offer(steps: readonly number[]): void {
    const value = this.#objective === undefined ? 0 : measure(this.#objective, steps);
    if (this.best !== undefined && value >= this.best.value) return;
    const keeps = this.#kept.every((reached) => measure(reached.objective, steps) <= reached.value);
    if (keeps && holds(this.#problem, steps)) this.best = { steps, value };
  }
}

/** Splits a box at the flour furthest from whole steps, or in the middle of the flour with most room; the likelier half last. */
function halves(box: Box, open: readonly number[], steps: readonly number[] | undefined): readonly Box[] {
  const off = (index: number): number => Math.abs((steps?.[index] ?? 0) - Math.round(steps?.[index] ?? 0));
  const furthest = open.reduce((most, index) => (off(index) > off(most) ? index : most), open[0] ?? 0);
  const split = off(furthest) > 1e-6 ? furthest : (open.at(-1) ?? 0);
  const [low, high] = [box.least[split] ?? 0, box.most[split] ?? 0];
  const at = off(furthest) > 1e-6 ? (steps?.[split] ?? 0) : (low + high) / 2;
  const cut = Math.min(high - 1, Math.max(low, Math.floor(at)));
  const below = { least: box.least, most: box.most.with(split, cut) };
  const above = { least: box.least.with(split, cut + 1), most: box.most };
  return at - cut < 0.5 ? [above, below] : [below, above];
}

/** Rounds steps to whole ones that keep the total: the largest remainders go up. */
function roundToTotal(steps: readonly number[], total: number): readonly number[] {
  const whole = steps.map((count) => Math.floor(count + 1e-9));
  const missing = total - whole.reduce((sum, count) => sum + count, 0);
  const order = [...steps.keys()].sort((a, b) => fraction(steps[b]) - fraction(steps[a]) || a - b);
  const raised = new Set(order.slice(0, Math.max(0, missing)));
  return whole.map((count, index) => (raised.has(index) ? count + 1 : count));
}

function fraction(value = 0): number {
  return value - Math.floor(value + 1e-9);
}
