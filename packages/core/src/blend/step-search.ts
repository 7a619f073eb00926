import { joinAlike } from "./step-alike.ts";
import { type Box, narrow } from "./step-bounds.ts";
import type { Budget } from "./step-budget.ts";
import { bestInBox, openFlours, type Scored, triesIn } from "./step-leaf.ts";
import {
  everyOf,
  fewestOf,
  holds,
  measure,
  meets,
  type Objective,
  type Reached,
  type StepAnswer,
  type StepProblem,
  type StepsFound,
} from "./step-problem.ts";
import { Relaxation, slackOf } from "./step-relaxation.ts";

/** Boxes of at most so many tries are gone through one by one. */
const smallBox = 60;
/** So many flours are moved around an answer in fractions, to come by a first answer in whole steps. */
const nearbyFlours = 5;

/**
 * Finds the steps that make the first objective smallest, among those the second, and so on; then the first flour gets as
 * many steps as it can, then the second, and so on, so that there is one answer only.
 *
 * Branch and bound: the linear solver bounds a box of steps from below, small boxes are gone through one by one in whole
 * numbers, and whatever is found is checked once more in decimals. Where the budget ends first, the best found comes with
 * what the objective cannot go below.
 */
export function bestSteps(problem: StepProblem, objectives: readonly Objective[], budget: Budget): StepAnswer {
  const reached: Reached[] = [];
  let best: StepsFound | undefined;
  for (const objective of objectives) {
    const answer: StepAnswer = smallest(problem, objective, reached, budget.part(0.7), best?.steps);
    if (answer.kind !== "found" || answer.open !== undefined) return answer;
    best = answer;
    reached.push({ objective, value: measure(objective, best.steps) });
  }
  return settleTies(problem, reached, best, budget);
}

/** Finds steps that make one objective smallest, without a say in which of equals: always the same ones. */
export function smallestSteps(problem: StepProblem, objective: Objective, budget: Budget): StepAnswer {
  return smallest(problem, objective, [], budget);
}

/** Finds any steps that hold. */
export function anySteps(problem: StepProblem, budget: Budget): StepAnswer {
  return smallest(problem, undefined, [], budget);
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

/** Among equals it is only a matter of order, so that where the budget ends the equal found last stands. */
function settleTies(
  problem: StepProblem,
  kept: readonly Reached[],
  start: StepsFound | undefined,
  budget: Budget,
): StepAnswer {
  const least = [...problem.least];
  const most = [...problem.most];
  let best = start?.steps;
  for (const index of least.keys()) {
    const box = narrow(problem, { least, most });
    if (box === undefined) return { kind: "none" };
    if (best === undefined || (best[index] ?? 0) < (box.most[index] ?? 0)) {
      const weights = least.map((_, other) => (other === index ? -1 : 0));
      const answer = smallest({ ...problem, ...box }, { kind: "weighted", weights }, kept, budget, best);
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
  budget: Budget,
  known?: readonly number[],
): StepAnswer {
  if (problem.least.some((low, index) => low > (problem.most[index] ?? 0))) return { kind: "none" };
  const joined = joinAlike(problem, objective, kept);
  const search = new Search(joined.problem, joined.objective, joined.kept, budget, known && joined.join(known));
  const bound = search.run({ least: joined.problem.least, most: joined.problem.most });
  if (search.best === undefined) return { kind: bound === undefined ? "none" : "unfinished" };
  const steps = joined.split(search.best.steps);
  if (!holds(problem, steps)) throw new Error("the search gave steps that break a limit");
  if (objective === undefined || bound === undefined || bound >= search.best.value) return { kind: "found", steps };
  const value = measure(objective, steps);
  return { kind: "found", steps, open: { objective, value, bound: Math.min(value, bound + joined.extra) } };
}

/** A box still to be looked at, with what the objective cannot go below in it. */
interface Waiting extends Box {
  readonly bound: number;
}

class Search {
  best: Scored | undefined;
  readonly #problem: StepProblem;
  readonly #objective: Objective | undefined;
  readonly #kept: readonly Reached[];
  readonly #budget: Budget;
  #relaxation: Relaxation | undefined;

  constructor(
    problem: StepProblem,
    objective: Objective | undefined,
    kept: readonly Reached[],
    budget: Budget,
    known: readonly number[] | undefined,
  ) {
    this.#problem = problem;
    this.#objective = objective;
    this.#kept = kept;
    this.#budget = budget;
    if (known !== undefined) this.#offer(known);
  }

  /** Goes through a box, the more promising part first; where the budget ends, gives what the rest cannot go below. */
  run(start: Box): number | undefined {
    const waiting: Waiting[] = [{ ...start, bound: Number.NEGATIVE_INFINITY }];
    for (let box = waiting.pop(); box !== undefined; box = waiting.pop()) {
      if (this.#budget.isSpent) return Math.min(box.bound, ...waiting.map(({ bound }) => bound));
      if (this.best !== undefined && box.bound >= this.best.value) continue;
      waiting.push(...this.#look(box));
      if (this.best !== undefined && this.#objective === undefined) return undefined;
    }
    return undefined;
  }

  #look(wide: Waiting): readonly Waiting[] {
    const box = this.#narrowed(wide);
    if (box === undefined) return [];
    this.#relaxation ??= new Relaxation(this.#problem, this.#objective, this.#kept);
    const before = this.#relaxation.work;
    const relaxed = this.#relaxation.solve(box, this.best?.value);
    this.#budget.spend(this.#relaxation.work - before);
    if (relaxed === undefined) return [];
    const least = Math.ceil(relaxed.bound - slackOf(relaxed.bound));
    const bound = this.#objective === undefined ? 0 : Math.max(wide.bound, least);
    const { steps } = relaxed;
    if (steps !== undefined && !this.#isBeaten(bound)) {
      this.#offer(this.#rounded(steps));
      if (this.best === undefined) this.#goThrough(this.#nearby(box, steps));
    }
    if (this.#isBeaten(bound)) return [];
    const inner = this.#narrowed(relaxed.box);
    return inner === undefined ? [] : this.#parts(inner, steps).map((part) => ({ ...part, bound }));
  }

  /** The box without what breaks a limit; a small one is gone through at once. */
  #narrowed(wide: Box): Box | undefined {
    this.#budget.spend(wide.least.length * (this.#problem.rows.length + 2) * 8);
    const box = narrow(this.#problem, wide);
    if (box === undefined || triesIn(this.#problem, box, openFlours(this.#problem, box)) > smallBox) return box;
    this.#goThrough(box);
    return undefined;
  }

  #isBeaten(bound: number): boolean {
    return this.best !== undefined && bound >= this.best.value;
  }

  #goThrough(box: Box): void {
    const limit = this.best?.value ?? Number.POSITIVE_INFINITY;
    this.best = bestInBox(this.#problem, box, this.#objective, this.#kept, limit, this.#budget) ?? this.best;
  }

  #offer(steps: readonly number[]): void {
    const value = this.#objective === undefined ? 0 : measure(this.#objective, steps);
    if (this.best !== undefined && value >= this.best.value) return;
    const keeps = this.#kept.every((reached) => measure(reached.objective, steps) <= reached.value);
    if (keeps && meets(this.#problem, steps)) this.best = { steps, value };
  }

  /** Cuts a box where fractions of a step are furthest from an answer; the likelier part last. */
  #parts(box: Box, steps: readonly number[] | undefined): readonly Box[] {
    const open = openFlours(this.#problem, box);
    const at = (index: number): number => steps?.[index] ?? 0;
    const widest = open.at(-1) ?? 0;
    if (steps === undefined) return cut(box, widest, middle(box, widest));
    const crumb = open.find((index) => at(index) > tiny && at(index) < fewestOf(this.#problem, index) - tiny);
    if (crumb !== undefined && box.least[crumb] === 0)
      return cut(box, crumb, at(crumb) < fewestOf(this.#problem, crumb) / 2 ? 0.4 : 0.6);
    const used = open.filter((index) => at(index) > tiny && box.least[index] === 0);
    if (steps.filter((count) => count > tiny).length > (this.#problem.mostFlours ?? steps.length)) {
      const least = used.reduce((low, index) => (at(index) < at(low) ? index : low), used[0] ?? widest);
      return cut(box, least, 0.4);
    }
    const off = (index: number): number =>
      Math.abs(at(index) / this.#every(index) - Math.round(at(index) / this.#every(index)));
    const furthest = open.reduce((most, index) => (off(index) > off(most) ? index : most), widest);
    if (off(furthest) > tiny) return cut(box, furthest, at(furthest));
    const counted = this.#objective?.kind === "changed" ? this.#objective : undefined;
    const moved = open.find((index) => {
      const from = (counted?.from[index] ?? 0) / (counted?.perStep ?? 1);
      return (
        counted !== undefined &&
        Math.abs(at(index) - from) > tiny &&
        from >= (box.least[index] ?? 0) &&
        from <= (box.most[index] ?? 0)
      );
    });
    if (counted !== undefined && moved !== undefined)
      return apart(box, moved, (counted.from[moved] ?? 0) / counted.perStep);
    return cut(box, widest, middle(box, widest));
  }

  #every(index: number): number {
    return everyOf(this.#problem, index);
  }

  /** Rounds steps to whole multiples that keep the total: the largest remainders go up, and what is left to the finest. */
  #rounded(steps: readonly number[]): readonly number[] {
    const whole = steps.map((count, index) => Math.floor(count / this.#every(index) + 1e-9) * this.#every(index));
    const over = (index: number): number => ((steps[index] ?? 0) - (whole[index] ?? 0)) / this.#every(index);
    let missing = this.#problem.total - whole.reduce((sum, count) => sum + count, 0);
    const raise = (index: number, by: number): void => {
      whole[index] = (whole[index] ?? 0) + by;
      missing -= by;
    };
    for (const index of [...steps.keys()].sort((a, b) => over(b) - over(a) || a - b)) {
      if (this.#every(index) <= missing && over(index) > tiny) raise(index, this.#every(index));
    }
    const finest = [...steps.keys()]
      .filter((index) => (whole[index] ?? 0) > 0)
      .sort((a, b) => this.#every(a) - this.#every(b));
    const [last] = finest;
    if (last !== undefined && missing > 0) raise(last, Math.floor(missing / this.#every(last)) * this.#every(last));
    return whole;
  }

  /** The blends around an answer in fractions: two flours go as far as they can, some others a few steps. */
  #nearby(box: Box, steps: readonly number[]): Box {
    const least = steps.map((count, index) =>
      Math.max(box.least[index] ?? 0, Math.floor(count / this.#every(index)) * this.#every(index)),
    );
    const most = [...least];
    const likely = openFlours(this.#problem, box)
      .toReversed()
      .sort((a, b) => Number((steps[b] ?? 0) > tiny) - Number((steps[a] ?? 0) > tiny));
    for (const [rank, index] of likely.slice(0, nearbyFlours).entries()) {
      const reach = rank < 2 ? this.#problem.total : 2 * this.#every(index);
      least[index] = Math.max(box.least[index] ?? 0, (least[index] ?? 0) - reach);
      most[index] = Math.min(box.most[index] ?? 0, (most[index] ?? 0) + reach + this.#every(index));
    }
    return { least, most };
  }
}

const tiny = 1e-6;

function middle(box: Box, index: number): number {
  return ((box.least[index] ?? 0) + (box.most[index] ?? 0)) / 2;
}

/** Two boxes, below and above a point. */
function cut(box: Box, index: number, at: number): readonly Box[] {
  const [low, high] = [box.least[index] ?? 0, box.most[index] ?? 0];
  const border = Math.min(high - 1, Math.max(low, Math.floor(at)));
  const below = { least: box.least, most: box.most.with(index, border) };
  const above = { least: box.least.with(index, border + 1), most: box.most };
  return at - border < 0.5 ? [above, below] : [below, above];
}

/** Three boxes, or two at an end: below a point, above it, and on it. */
function apart(box: Box, index: number, at: number): readonly Box[] {
  const [low, high] = [box.least[index] ?? 0, box.most[index] ?? 0];
  return [
    ...(at > low ? [{ least: box.least, most: box.most.with(index, at - 1) }] : []),
    ...(at < high ? [{ least: box.least.with(index, at + 1), most: box.most }] : []),
    { least: box.least.with(index, at), most: box.most.with(index, at) },
  ];
}
