import { type Joined, joinAlike } from "./step-alike.ts";
import type { Budget } from "./step-budget.ts";
import {
  everyOf,
  fewestOf,
  holds,
  measure,
  measureAlong,
  type Objective,
  type Reached,
  type StepAnswer,
  type StepProblem,
  weigh,
} from "./step-problem.ts";
import { type Box, Relaxation } from "./step-relaxation.ts";

/** Boxes of at most so many lines are gone through one by one. */
const smallBox = 60;
/** So many flours are moved around an answer in fractions, to come by a first answer in whole steps. */
const nearbyFlours = 5;

/**
 * Finds the steps that make the first objective smallest, among those the second, and so on; then the first flour gets as
 * many steps as it can, then the second, and so on, so that there is one answer only.
 *
 * Branch and bound: the linear solver bounds a box of steps from below, small boxes are gone through one by one in whole
 * numbers, and the best is checked once more in decimals. Where the budget ends first, the best found comes with
 * what the objective cannot go below.
 */
export function bestSteps(problem: StepProblem, objectives: readonly Objective[], budget: Budget): StepAnswer {
  return inOrder(problem, objectives, budget, true);
}

/**
 * Finds steps that make one objective smallest, without a say in which of equals: always the same ones.
 *
 * @param known - steps that hold, where there are any: they stand unless others are better
 */
export function smallestSteps(
  problem: StepProblem,
  objective: Objective,
  budget: Budget,
  known?: readonly number[],
): StepAnswer {
  return inOrder(problem, [objective], budget, false, known);
}

/** Finds any steps that hold. */
export function anySteps(problem: StepProblem, budget: Budget): StepAnswer {
  return inOrder(problem, [], budget, false);
}

/** Whether anything holds where steps need not be whole. */
export function anyFractions(problem: StepProblem): boolean {
  const box = { least: [...problem.least], most: [...problem.most] };
  const isPossible = box.least.every((low, at) => low <= (box.most[at] ?? 0));
  return isPossible && new Relaxation(problem, undefined, []).solve(box, Number.POSITIVE_INFINITY) !== "none";
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

function inOrder(
  problem: StepProblem,
  objectives: readonly Objective[],
  budget: Budget,
  settles: boolean,
  known?: readonly number[],
): StepAnswer {
  if (problem.least.some((low, index) => low > (problem.most[index] ?? 0))) return { kind: "none" };
  const joined = joinAlike(problem, objectives);
  const kept: Reached[] = [];
  let best = known && joined.total(known);
  const found = (): StepAnswer & { readonly kind: "found" } => {
    const steps = joined.split(best ?? []);
    if (settles && !holds(problem, steps)) throw new Error("the search gave steps that break a limit");
    return { kind: "found", steps };
  };
  for (const at of objectives.length === 0 ? [-1] : objectives.keys()) {
    const objective = joined.objectives[at];
    const search = new Search(joined.problem, objective, kept, settles ? budget.part(0.7) : budget, best);
    const bound = search.run(search.whole());
    best = search.best;
    if (best === undefined) return { kind: bound === undefined ? "none" : "unfinished" };
    const asked = objectives[at];
    if (objective === undefined || asked === undefined) break;
    if (bound !== undefined && bound < search.value) {
      const answer = found();
      const value = measure(asked, answer.steps);
      return { ...answer, open: { objective: asked, value, bound: Math.min(value, bound + joined.extra(asked)) } };
    }
    kept.push({ objective, value: search.value });
  }
  if (settles && best !== undefined) best = settleTies(joined, kept, best, budget);
  return found();
}

/** Among equals it is only a matter of order, so that where the budget ends the equal found last stands. */
function settleTies(
  joined: Joined,
  kept: readonly Reached[],
  start: readonly number[],
  budget: Budget,
): readonly number[] {
  const { problem, groups, split } = joined;
  const search = new Search(problem, undefined, kept, budget, start);
  const box = search.whole();
  let best = start;
  for (const index of groups.flat().sort((one, other) => one - other)) {
    const at = groups.findIndex((group) => group.includes(index));
    search.narrow(box);
    if ((best[at] ?? 0) < (box.most[at] ?? 0)) best = search.most(at, box) ?? best;
    const [every, most] = [everyOf(problem, at), best[at] ?? 0];
    // a flour that is alike to others keeps what it has where the others of its group give some of theirs away
    const share = (count: number): number | undefined => split(best.with(at, count))[index];
    let least = most;
    while (least > (box.least[at] ?? 0) && groups[at]?.length !== 1 && share(least - every) === share(most))
      least -= every;
    box.least[at] = least;
    box.most[at] = most;
  }
  return best;
}

/** A box still to be looked at, with what the objective cannot go below in it. */
interface Waiting extends Box {
  readonly bound: number;
}

class Search {
  /** The best steps found, and what the objective comes to in them. */
  best: readonly number[] | undefined;
  value = Number.POSITIVE_INFINITY;
  readonly #problem: StepProblem;
  #objective: Objective | undefined;
  readonly #kept: readonly Reached[];
  readonly #budget: Budget;
  readonly #flours: number;
  readonly #rows: StepProblem["rows"];
  readonly #every: readonly number[];
  readonly #fewest: readonly number[];
  readonly #mostFlours: number;
  #relaxation: Relaxation | undefined;
  #nodes = 0;
  #work = 0;
  /** The steps being tried, and what each row comes to in them. */
  #steps: number[];
  readonly #sums: number[];

  constructor(
    problem: StepProblem,
    objective: Objective | undefined,
    kept: readonly Reached[],
    budget: Budget,
    known: readonly number[] | undefined,
  ) {
    const keptRows = kept.flatMap(({ objective: one, value }) =>
      one.kind === "weighted"
        ? [{ id: "kept", coefficients: one.weights.map((weight) => 0 - weight), constant: value }]
        : [],
    );
    this.#problem = { ...problem, rows: [...problem.rows, ...keptRows] };
    this.#objective = objective;
    this.#kept = kept.filter(({ objective: one }) => one.kind !== "weighted");
    this.#budget = budget;
    this.#flours = problem.least.length;
    this.#rows = this.#problem.rows;
    this.#every = problem.least.map((_, index) => everyOf(problem, index));
    this.#fewest = problem.least.map((_, index) => fewestOf(problem, index));
    this.#mostFlours = problem.mostFlours ?? this.#flours;
    this.#steps = [...problem.least];
    this.#sums = this.#rows.map(() => 0);
    if (known !== undefined) this.#take(known);
  }

  whole(): Box {
    return { least: [...this.#problem.least], most: [...this.#problem.most] };
  }

  /** Of one flour as many steps as a box lets it have, the answer known being inside. */
  most(at: number, box: Box): readonly number[] | undefined {
    const weights = this.#problem.least.map((_, index) => (index === at ? -1 : 0));
    this.#objective = { kind: "weighted", weights };
    this.#relaxation ??= new Relaxation(this.#problem, undefined, this.#kept);
    this.#relaxation.aim(weights);
    if (this.best !== undefined) this.#take(this.best);
    this.run({ least: box.least.slice(), most: box.most.slice() });
    return this.best;
  }

  /** Goes through a box, the more promising part first; where the budget ends, gives what the rest cannot go below. */
  run(start: Box): number | undefined {
    const waiting: Waiting[] = [{ ...start, bound: Number.NEGATIVE_INFINITY }];
    for (let box = waiting.pop(); box !== undefined; box = waiting.pop()) {
      this.#budget.spend(this.#work);
      this.#work = 0;
      if (this.#budget.isSpent) return waiting.reduce((low, { bound }) => Math.min(low, bound), box.bound);
      if (box.bound >= this.value) continue;
      this.#look(box, waiting);
      if (this.best !== undefined && this.#objective === undefined) return undefined;
    }
    return undefined;
  }

  #look(box: Waiting, waiting: Waiting[]): void {
    if (!this.#narrows(box)) return;
    this.#relaxation ??= new Relaxation(this.#problem, this.#objective, this.#kept);
    const relaxation = this.#relaxation;
    const before = relaxation.work;
    const kind = relaxation.solve(box, this.value - 1 + slackOf(this.value));
    this.#work += relaxation.work - before;
    if (kind === "none") return;
    const least = Math.ceil(relaxation.bound - slackOf(relaxation.bound));
    const bound = this.#objective === undefined ? 0 : Math.max(box.bound, least);
    if (bound >= this.value) return;
    const steps = kind === "smallest" ? relaxation.steps() : undefined;
    if (steps !== undefined) {
      this.#offer(this.#rounded(steps));
      this.#nodes += 1;
      // now and then, until there is a first answer
      if (this.best === undefined && (this.#nodes & (this.#nodes - 1)) === 0) this.#goThrough(this.#nearby(box, steps));
    }
    if (bound >= this.value) return;
    if (this.value < Number.POSITIVE_INFINITY) {
      relaxation.narrow(box, this.value - 1 + slackOf(relaxation.bound));
      if (!this.#narrows(box)) return;
    }
    for (const part of this.#parts(box, steps)) waiting.push({ ...part, bound });
  }

  /** Takes out of a box what breaks a limit; a small one is gone through at once. Whether anything is left to look at. */
  #narrows(box: Box): boolean {
    if (!this.narrow(box)) return false;
    const open = this.#open(box);
    let tries = 1;
    for (let at = 0; at < open.length - 2; at += 1) tries *= this.#choices(box, open[at] ?? 0);
    if (tries > smallBox) return true;
    this.#goThrough(box);
    return false;
  }

  /** Narrows a box to what the total, the shape and each row leave open, without losing any answer; `false` when nothing is left. */
  narrow(box: Box): boolean {
    const { least, most } = box;
    for (let round = 0; round < 8; round += 1) {
      this.#work += this.#flours * (2 * this.#rows.length + 4);
      let changed = false;
      let [lowest, highest, used] = [0, 0, 0];
      for (let at = 0; at < this.#flours; at += 1) {
        lowest += least[at] ?? 0;
        highest += most[at] ?? 0;
        if ((least[at] ?? 0) > 0) used += 1;
      }
      const { total } = this.#problem;
      if (lowest > total || highest < total || used > this.#mostFlours) return false;
      const full = used === this.#mostFlours;
      for (let at = 0; at < this.#flours; at += 1) {
        const [low, high, every, fewest] = [least[at] ?? 0, most[at] ?? 0, this.#every[at] ?? 1, this.#fewest[at] ?? 1];
        const newLow = Math.max(low, total - (highest - high));
        const newHigh = Math.min(high, total - (lowest - low));
        // whole multiples only, nothing between none of a flour and its fewest steps, and none beyond those that may be in
        least[at] = newLow === 0 ? 0 : Math.ceil(Math.max(newLow, fewest) / every) * every;
        most[at] = newHigh < fewest || (full && newLow === 0) ? 0 : Math.floor(newHigh / every) * every;
        if (least[at] !== low || most[at] !== high) changed = true;
        if ((least[at] ?? 0) > (most[at] ?? 0)) return false;
      }
      for (const { coefficients, constant } of this.#rows) {
        // with all flours at their best for the row, how far may each go to the other side?
        let top = constant;
        for (let at = 0; at < this.#flours; at += 1) {
          const coefficient = coefficients[at] ?? 0;
          top += coefficient * ((coefficient > 0 ? most[at] : least[at]) ?? 0);
        }
        if (top < 0) return false;
        for (let at = 0; at < this.#flours; at += 1) {
          const coefficient = coefficients[at] ?? 0;
          const [low, high] = [least[at] ?? 0, most[at] ?? 0];
          if (Math.abs(coefficient) * (high - low) <= top) continue;
          changed = true;
          // a quotient that rounding may have pushed past a whole number is given the benefit of the doubt
          if (coefficient > 0) least[at] = Math.ceil(high - top / coefficient - benefit);
          else most[at] = Math.floor(low - top / coefficient + benefit);
        }
      }
      if (!changed) break;
    }
    return true;
  }

  /** How many shares a box leaves a flour. */
  #choices({ least, most }: Box, at: number): number {
    return Math.floor(((most[at] ?? 0) - (least[at] ?? 0)) / (this.#every[at] ?? 1)) + 1;
  }

  /** The flours a box leaves open, the one with most choices last. */
  #open(box: Box): readonly number[] {
    const open: number[] = [];
    for (let at = 0; at < this.#flours; at += 1) if (this.#choices(box, at) > 1) open.push(at);
    return open.sort((one, other) => this.#choices(box, one) - this.#choices(box, other));
  }

  /** Goes through all blends of a small box. */
  #goThrough(box: Box): void {
    this.#steps = box.least.slice();
    let rest = this.#problem.total;
    for (let at = 0; at < this.#flours; at += 1) rest -= box.least[at] ?? 0;
    for (const [row, { coefficients, constant }] of this.#rows.entries())
      this.#sums[row] = weigh(coefficients, this.#steps) + constant;
    this.#descend(box, this.#open(box), 0, rest);
  }

  #descend(box: Box, open: readonly number[], depth: number, rest: number): void {
    const [index, partner] = [open[depth], open[depth + 1]];
    if (index === undefined) {
      if (rest === 0 && this.#sums.every((sum) => sum >= 0)) this.#consider();
      return;
    }
    if (partner !== undefined && depth + 2 === open.length) {
      this.#walk(box, index, partner, rest);
      return;
    }
    const every = this.#every[index] ?? 1;
    const high = Math.min((box.most[index] ?? 0) - (box.least[index] ?? 0), rest);
    const start = depth + 1 === open.length ? rest : 0;
    this.#shift(index, start);
    let count = start;
    for (; count <= high && !this.#isSettled; count += every) {
      this.#descend(box, open, depth + 1, rest - count);
      this.#shift(index, every);
    }
    this.#shift(index, -count);
  }

  get #isSettled(): boolean {
    return this.#objective === undefined && this.best !== undefined;
  }

  #shift(index: number, by: number): void {
    this.#steps[index] = (this.#steps[index] ?? 0) + by;
    for (const [row, { coefficients }] of this.#rows.entries())
      this.#sums[row] = (this.#sums[row] ?? 0) + by * (coefficients[index] ?? 0);
  }

  /** Two flours share `rest` steps above their least: every row cuts a piece off that line. */
  #walk(box: Box, first: number, second: number, rest: number): void {
    const steps = this.#steps;
    const [lowFirst, lowSecond] = [steps[first] ?? 0, steps[second] ?? 0];
    let from = Math.max(0, rest - ((box.most[second] ?? 0) - lowSecond));
    let to = Math.min(rest, (box.most[first] ?? 0) - lowFirst);
    for (const [row, { coefficients }] of this.#rows.entries()) {
      const start = (this.#sums[row] ?? 0) + rest * (coefficients[second] ?? 0);
      const slope = (coefficients[first] ?? 0) - (coefficients[second] ?? 0);
      if (slope === 0 && start < 0) return;
      if (slope > 0) from = Math.max(from, Math.ceil(-start / slope));
      if (slope < 0) to = Math.min(to, Math.floor(start / -slope));
    }
    const every = this.#every[first] ?? 1;
    const start = Math.ceil(from / every) * every;
    steps[first] = lowFirst + start;
    steps[second] = lowSecond + rest - start;
    this.#tryLine(first, second, Math.floor((to - start) / every));
    steps[first] = lowFirst;
    steps[second] = lowSecond;
  }

  /**
   * Goes along a line from its best place, `last` times a step of the first flour long. But for the count of flours, what is
   * measured falls along a line and then rises.
   */
  #tryLine(first: number, second: number, last: number): void {
    const steps = this.#steps;
    const every = this.#every[first] ?? 1;
    const objective = this.#objective;
    const along = (one: Objective): ((count: number) => number) => {
      this.#work += 6 * this.#flours;
      const value = measureAlong(one, steps, first, second);
      return (count) => value(count * every);
    };
    let [low, high] = [0, last];
    const deepest = (valueAt: (count: number) => number): number =>
      firstWhere(low, high, (count) => valueAt(count + 1) >= valueAt(count));
    if (low > high) return;
    const valueAt = objective?.kind === "changed" ? undefined : along(objective ?? noWeights);
    if (valueAt !== undefined && valueAt(deepest(valueAt)) >= this.value) return;
    for (const { objective: one, value } of this.#kept) {
      if (one.kind === "changed") continue;
      const keptAt = along(one);
      const middle = deepest(keptAt);
      if (keptAt(middle) > value) return;
      low = firstWhere(low, middle, (count) => keptAt(count) <= value);
      high = firstWhere(middle, high, (count) => keptAt(count + 1) > value);
    }
    const best = valueAt === undefined ? low : deepest(valueAt);
    const [firstNow, secondNow] = [steps[first] ?? 0, steps[second] ?? 0];
    for (const by of [1, -1]) {
      for (let count = by > 0 ? best : best - 1; count >= low && count <= high; count += by) {
        steps[first] = firstNow + count * every;
        steps[second] = secondNow - count * every;
        if (this.#consider() && valueAt !== undefined) break;
      }
    }
  }

  /** Takes the steps being tried, which hold every row, where they are better. Whether there is nothing more to be won nearby. */
  #consider(): boolean {
    const value = this.#measured(this.#steps);
    if (value >= this.value) return true;
    if (!this.#hasShape(this.#steps)) return false;
    this.best = this.#steps.slice();
    this.value = value;
    return true;
  }

  #measured(steps: readonly number[]): number {
    this.#work += this.#flours * 2;
    return this.#objective === undefined ? 0 : measure(this.#objective, steps);
  }

  #take(steps: readonly number[]): void {
    this.best = steps;
    this.value = this.#measured(steps);
  }

  /** Whether steps are whole multiples, enough of each flour used, few enough flours, and keep what has been reached. */
  #hasShape(steps: readonly number[]): boolean {
    let used = 0;
    for (let at = 0; at < this.#flours; at += 1) {
      const count = steps[at] ?? 0;
      if (count === 0) continue;
      used += 1;
      if (count < (this.#fewest[at] ?? 1) || count % (this.#every[at] ?? 1) !== 0) return false;
    }
    return used <= this.#mostFlours && this.#kept.every(({ objective, value }) => measure(objective, steps) <= value);
  }

  /** Takes steps that may break a limit, where they do not and are better: in whole numbers, all below 2^53 and so exact. */
  #offer(steps: readonly number[]): void {
    const value = this.#measured(steps);
    if (value >= this.value) return;
    const { least, most, total } = this.#problem;
    const isWithin = steps.every((count, at) => count >= (least[at] ?? 0) && count <= (most[at] ?? 0));
    const holdsRows = this.#rows.every(({ coefficients, constant }) => weigh(coefficients, steps) + constant >= 0);
    if (isWithin && holdsRows && steps.reduce((sum, count) => sum + count, 0) === total && this.#hasShape(steps)) {
      this.best = steps;
      this.value = value;
    }
  }

  /** Cuts a box where fractions of a step are furthest from an answer; the likelier part last. */
  #parts(box: Box, steps: readonly number[] | undefined): readonly Box[] {
    const open = this.#open(box);
    const widest = open.at(-1) ?? 0;
    const middle = ((box.least[widest] ?? 0) + (box.most[widest] ?? 0)) / 2;
    if (steps === undefined) return cut(box, widest, middle);
    const at = (index: number): number => steps[index] ?? 0;
    const fewest = (index: number): number => this.#fewest[index] ?? 1;
    const crumb = open.find((index) => at(index) > tiny && at(index) < fewest(index) - tiny);
    if (crumb !== undefined && box.least[crumb] === 0)
      return cut(box, crumb, at(crumb) < fewest(crumb) / 2 ? 0.4 : 0.6);
    const used = open.filter((index) => at(index) > tiny && box.least[index] === 0);
    if (steps.filter((count) => count > tiny).length > this.#mostFlours) {
      const least = used.reduce((low, index) => (at(index) < at(low) ? index : low), used[0] ?? widest);
      return cut(box, least, 0.4);
    }
    const off = (index: number): number => {
      const count = at(index) / (this.#every[index] ?? 1);
      return Math.abs(count - Math.round(count));
    };
    const furthest = open.reduce((most, index) => (off(index) > off(most) ? index : most), widest);
    if (off(furthest) > tiny) return cut(box, furthest, at(furthest));
    if (this.#objective?.kind === "changed") {
      const { from, perStep } = this.#objective;
      const start = (index: number): number => (from[index] ?? 0) / perStep;
      const moved = open.find(
        (index) =>
          Math.abs(at(index) - start(index)) > tiny &&
          start(index) >= (box.least[index] ?? 0) &&
          start(index) <= (box.most[index] ?? 0),
      );
      if (moved !== undefined) return apart(box, moved, start(moved));
    }
    return cut(box, widest, middle);
  }

  /** Rounds steps to whole multiples that keep the total: the largest remainders go up, and what is left to the finest. */
  #rounded(steps: readonly number[]): readonly number[] {
    const every = (index: number): number => this.#every[index] ?? 1;
    const whole = steps.map((count, index) => Math.floor(count / every(index) + benefit) * every(index));
    const over = (index: number): number => ((steps[index] ?? 0) - (whole[index] ?? 0)) / every(index);
    let missing = this.#problem.total - whole.reduce((sum, count) => sum + count, 0);
    if (missing === 0) return whole;
    const raise = (index: number, by: number): void => {
      whole[index] = (whole[index] ?? 0) + by;
      missing -= by;
    };
    for (const index of [...steps.keys()].sort((a, b) => over(b) - over(a) || a - b)) {
      if (every(index) <= missing && over(index) > tiny) raise(index, every(index));
    }
    const [last] = [...steps.keys()].filter((index) => (whole[index] ?? 0) > 0).sort((a, b) => every(a) - every(b));
    if (last !== undefined && missing > 0) raise(last, Math.floor(missing / every(last)) * every(last));
    return whole;
  }

  /** The blends around an answer in fractions: two flours go as far as they can, some others a few steps. */
  #nearby(box: Box, steps: readonly number[]): Box {
    const every = (index: number): number => this.#every[index] ?? 1;
    const least = steps.map((count, index) =>
      Math.max(box.least[index] ?? 0, Math.floor(count / every(index)) * every(index)),
    );
    const most = least.slice();
    const likely = this.#open(box)
      .toReversed()
      .sort((a, b) => Number((steps[b] ?? 0) > tiny) - Number((steps[a] ?? 0) > tiny));
    for (const [rank, index] of likely.slice(0, nearbyFlours).entries()) {
      const reach = rank < 2 ? this.#problem.total : 2 * every(index);
      least[index] = Math.max(box.least[index] ?? 0, (least[index] ?? 0) - reach);
      most[index] = Math.min(box.most[index] ?? 0, (most[index] ?? 0) + reach + every(index));
    }
    return { least, most };
  }
}

/** A fraction of a step that counts as none, and what rounding may do to a quotient that is a whole number. */
const noWeights: Objective = { kind: "weighted", weights: [] };
const tiny = 1e-6;
const benefit = 1e-9;

/** What rounding may have put on a bound: objectives are whole numbers. */
function slackOf(bound: number): number {
  return Math.max(1e-3, Math.abs(bound) * 1e-11);
}

/** The first number from `low` to `high` where something holds that goes on to hold; `high` where it nowhere does. */
function firstWhere(low: number, high: number, holdsAt: (count: number) => boolean): number {
  let [from, to] = [low, high];
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    if (holdsAt(middle)) to = middle;
    else from = middle + 1;
  }
  return from;
}

/** Two boxes, below and above a point. */
function cut({ least, most }: Box, index: number, at: number): readonly Box[] {
  const border = Math.min((most[index] ?? 0) - 1, Math.max(least[index] ?? 0, Math.floor(at)));
  const below = { least: least.slice(), most: most.with(index, border) };
  const above = { least: least.with(index, border + 1), most: most.slice() };
  return at - border < 0.5 ? [above, below] : [below, above];
}

/** Three boxes, or two at an end: below a point, above it, and on it. */
function apart({ least, most }: Box, index: number, at: number): readonly Box[] {
  return [
    ...(at > (least[index] ?? 0) ? [{ least: least.slice(), most: most.with(index, at - 1) }] : []),
    ...(at < (most[index] ?? 0) ? [{ least: least.with(index, at + 1), most: most.slice() }] : []),
    { least: least.with(index, at), most: most.with(index, at) },
  ];
}
