import type { Order } from "./blend-preference.ts";
import type { StepProblem } from "./step-problem.ts";

/**
 * Whether two blends differ in a way that matters: one uses a flour the other does without, or the share of some flour
 * differs by at least `gap` steps.
 *
 * @example differs([60, 40, 0], [58, 42, 0], 5) // => false
 */
export function differs(one: readonly number[], other: readonly number[], gap: number): boolean {
  return one.some((count, index) => {
    const { up, down } = reaches(other[index] ?? 0, gap);
    return count >= up || count <= down;
  });
}

/**
 * Gives the best blends in order, each different from all before it in a way that matters.
 *
 * Around each blend that was given (or was too near to one that was) the room left is cut into boxes that do not overlap;
 * the best of every box waits until it is the best of all.
 */
export function bestBlends(problem: StepProblem, order: Order, gap: number, count: number): Alternatives {
  const shown: (readonly number[])[] = [];
  const waiting: Waiting[] = [];
  let unfinished = false;
  const enqueue = (region: StepProblem): void => {
    const answer = order.best(region);
    if (answer.kind === "found") waiting.push({ region, steps: answer.steps });
    if (answer.kind === "unfinished") unfinished = true;
  };
  enqueue(problem);
  while (shown.length < count && waiting.length > 0) {
    const { region, steps } = takeFirst(waiting, order);
    const near = shown.find((other) => !differs(other, steps, gap));
    if (near === undefined) shown.push(steps);
    if (shown.length < count) for (const part of around(region, near ?? steps, gap)) enqueue(part);
  }
  return { shown, unfinished };
}

/** Blends in order; `unfinished` when some part of the room could not be searched to the end. */
export interface Alternatives {
  readonly shown: readonly (readonly number[])[];
  readonly unfinished: boolean;
}

interface Waiting {
  readonly region: StepProblem;
  readonly steps: readonly number[];
}

function takeFirst(waiting: Waiting[], order: Order): Waiting {
  const first = waiting.reduce((best, next) => (order.comesFirst(next.steps, best.steps) ? next : best));
  waiting.splice(waiting.indexOf(first), 1);
  return first;
}

/** From where up, and from where down, a share differs in a way that matters. */
function reaches(count: number, gap: number): { readonly up: number; readonly down: number } {
  return count === 0 ? { up: 1, down: -1 } : { up: count + gap, down: Math.max(0, count - gap) };
}

/** The room outside the neighbourhood of a blend, in boxes that do not overlap. */
function around(region: StepProblem, steps: readonly number[], gap: number): readonly StepProblem[] {
  const parts: StepProblem[] = [];
  let rest = region;
  for (const [index, count] of steps.entries()) {
    const { up, down } = reaches(count, gap);
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
