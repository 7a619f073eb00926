import type { Order } from "./blend-preference.ts";
import type { Budget } from "./step-budget.ts";
import { measure, type StepProblem, type StepsFound } from "./step-problem.ts";
import { bestSteps, isBetter, smallestSteps } from "./step-search.ts";

/**
 * Whether two blends differ in a way that matters: one uses a flour the other does without, or the share of some flour
 * differs by at least its gap, in steps.
 *
 * @example differs([60, 40, 0], [58, 42, 0], [5, 5, 5]) // => false
 */
export function differs(one: readonly number[], other: readonly number[], gaps: readonly number[]): boolean {
  return one.some((count, index) => {
    const { up, down } = reaches(other[index] ?? 0, gaps[index] ?? 1);
    return count >= up || count <= down;
  });
}

/**
 * Gives the best blends in order, each different from all before it in a way that matters.
 *
 * Around each blend that was given (or was too near to one that was) the room left is cut into boxes that do not overlap;
 * the best of every box waits until it is the best of all. Which of equals is the best of a box is settled when its turn comes.
 *
 * @param known - the first of them, where another order has chosen it
 */
export function bestBlends(
  problem: StepProblem,
  order: Order,
  gaps: readonly number[],
  count: number,
  budget: Budget,
  known?: StepsFound,
): Alternatives {
  const first = known ?? bestSteps(problem, order.objectives, budget.part(0.6));
  if (first.kind !== "found") return { shown: [], given: first.kind === "unfinished" };
  const shown: (readonly number[])[] = [];
  const waiting: Waiting[] = [{ region: problem, steps: first.steps, settled: true }];
  let given = first.open !== undefined;
  const [objective] = order.objectives;
  const enqueue = (region: StepProblem): void => {
    const own = budget.part(0.3);
    const answer = objective === undefined ? bestSteps(region, [], own) : smallestSteps(region, objective, own);
    if (answer.kind === "found") waiting.push({ region, steps: answer.steps, settled: false });
    if (answer.kind === "unfinished" || (answer.kind === "found" && answer.open !== undefined)) given = true;
  };
  while (shown.length < count && waiting.length > 0 && !(shown.length > 0 && budget.isSpent)) {
    const next = takeFirst(waiting, order);
    if (!next.settled) {
      const answer = bestSteps(next.region, order.objectives, budget.part(0.3));
      waiting.push({ ...next, settled: true, ...(answer.kind === "found" && { steps: answer.steps }) });
      continue;
    }
    const near = shown.find((other) => !differs(other, next.steps, gaps));
    if (near === undefined) shown.push(next.steps);
    if (shown.length < count) for (const part of around(next.region, near ?? next.steps, gaps)) enqueue(part);
  }
  return { shown, given: given || (shown.length < count && budget.isSpent), ...(first.open && { open: first.open }) };
}

/** Blends in order. */
export interface Alternatives {
  readonly shown: readonly (readonly number[])[];
  /** Whether some part of the room could not be searched to the end. */
  readonly given: boolean;
  /** Where the first blend itself is not proven to be the best. */
  readonly open?: NonNullable<StepsFound["open"]>;
}

interface Waiting {
  readonly region: StepProblem;
  readonly steps: readonly number[];
  /** Whether it is known to be the first of equals in its region. */
  readonly settled: boolean;
}

/** The one that comes first; of those that may come first, one that is not settled yet. */
function takeFirst(waiting: Waiting[], { objectives }: Order): Waiting {
  const [objective] = objectives;
  const value = ({ steps }: Waiting): number => (objective === undefined ? 0 : measure(objective, steps));
  const least = Math.min(...waiting.map(value));
  const among = waiting.filter((one) => value(one) === least);
  const first =
    among.find(({ settled }) => !settled) ??
    among.reduce((best, next) => (isBetter(next.steps, best.steps, objectives) ? next : best));
  waiting.splice(waiting.indexOf(first), 1);
  return first;
}

/** From where up, and from where down, a share differs in a way that matters. */
function reaches(count: number, gap: number): { readonly up: number; readonly down: number } {
  return count === 0 ? { up: 1, down: -1 } : { up: count + gap, down: Math.max(0, count - gap) };
}

/** The room outside the neighbourhood of a blend, in boxes that do not overlap. */
function around(region: StepProblem, steps: readonly number[], gaps: readonly number[]): readonly StepProblem[] {
  const parts: StepProblem[] = [];
  let rest = region;
  for (const [index, count] of steps.entries()) {
    const { up, down } = reaches(count, gaps[index] ?? 1);
    const [low, high] = [rest.least[index] ?? 0, rest.most[index] ?? 0];
    if (high >= up) parts.push({ ...rest, least: rest.least.with(index, Math.max(low, up)) });
    if (low <= down) parts.push({ ...rest, most: rest.most.with(index, Math.min(high, down)) });
    rest = {
      ...rest,
      least: rest.least.with(index, Math.max(low, down + 1)),
      most: rest.most.with(index, Math.min(high, up - 1)),
    };
    if (Math.max(low, down + 1) > Math.min(high, up - 1)) break;
  }
  return parts;
}
