import { type Decimal, dec, sum } from "../number/decimal.ts";

/** Whole steps to be found, one number for each flour: together `total`, each between its least and its most, every row held. */
export interface StepProblem {
  readonly total: number;
  readonly least: readonly number[];
  readonly most: readonly number[];
  readonly rows: readonly Row[];
  /** A flour's steps come in whole multiples of this; in any number unless given. */
  readonly every?: readonly number[];
  /** Fewest steps of a flour that is in the blend at all; one unless given. */
  readonly ifUsed?: readonly number[];
  /** Most flours that may be in the blend; any number unless given. */
  readonly mostFlours?: number;
}

/** A limit in whole numbers: the coefficients times the steps, added up with the constant, must not be below zero. */
export interface Row {
  readonly id: string;
  readonly coefficients: readonly number[];
  readonly constant: number;
}

/** A whole number that is to be as small as it can be. */
export type Objective =
  /** The weights times the steps, added up. */
  | { readonly kind: "weighted"; readonly weights: readonly number[] }
  /** The same without its sign. */
  | { readonly kind: "off-zero"; readonly weights: readonly number[] }
  /** The steps moved away from a blend, each flour's with its weight; `from` holds that blend in a fraction of a step. */
  | {
      readonly kind: "moved";
      readonly from: readonly number[];
      readonly perStep: number;
      readonly weights: readonly number[];
    }
  /** What rows lack to be held, added up. */
  | { readonly kind: "missed"; readonly rows: readonly (readonly number[])[] }
  /** How many flours have another share than in a blend, which is in a fraction of a step. */
  | { readonly kind: "changed"; readonly from: readonly number[]; readonly perStep: number };

/** An objective that has reached its smallest value and has to stay there. */
export interface Reached {
  readonly objective: Objective;
  readonly value: number;
}

/** The steps found; or that there are none; or that the search was given up before it found any. */
export type StepAnswer = StepsFound | { readonly kind: "none" } | { readonly kind: "unfinished" };

/** Steps that hold, and how good they are. */
export interface StepsFound {
  readonly kind: "found";
  readonly steps: readonly number[];
  /** Where the search was given up: the objective that is not proven to be smallest, and what it cannot go below. */
  readonly open?: { readonly objective: Objective; readonly value: number; readonly bound: number };
}

/** Whole multiples that a flour's steps come in. */
export function everyOf({ every }: StepProblem, index: number): number {
  return every?.[index] ?? 1;
}

/** Fewest steps of a flour that is in the blend at all. */
export function fewestOf(problem: StepProblem, index: number): number {
  return Math.max(problem.ifUsed?.[index] ?? 1, everyOf(problem, index));
}

/**
 * The value of an objective: whole-number arithmetic, exact because weights stay below 10^10 and steps below 1001.
 *
 * @example measure({ kind: "moved", from: [70, 30], perStep: 1, weights: [1, 3] }, [65, 35]) // => 20
 */
export function measure(objective: Objective, steps: ArrayLike<number>): number {
  let total = 0;
  switch (objective.kind) {
    case "weighted":
      return weigh(objective.weights, steps);
    case "off-zero":
      return Math.abs(weigh(objective.weights, steps));
    case "moved":
      for (let at = 0; at < steps.length; at += 1)
        total +=
          Math.abs((objective.from[at] ?? 0) - (steps[at] ?? 0) * objective.perStep) * (objective.weights[at] ?? 0);
      return total;
    case "missed":
      for (const row of objective.rows) total += Math.max(0, -weigh(row, steps));
      return total;
    case "changed":
      for (let at = 0; at < steps.length; at += 1)
        total += objective.from[at] === (steps[at] ?? 0) * objective.perStep ? 0 : 1;
      return total;
  }
}

/**
 * The value of an objective where so many steps go over from one flour to another, the steps of the others being as they are.
 *
 * @example measureAlong({ kind: "missed", rows: [[1, -1]] }, [5, 5], 0, 1)(-2) // => 4
 */
export function measureAlong(
  objective: Objective,
  steps: ArrayLike<number>,
  to: number,
  from: number,
): (count: number) => number {
  if (objective.kind === "moved" || objective.kind === "changed") {
    const part = (index: number): ((by: number) => number) => {
      const [now, start] = [steps[index] ?? 0, objective.from[index] ?? 0];
      const weight = objective.kind === "moved" ? (objective.weights[index] ?? 0) : undefined;
      return (by) => {
        const far = Math.abs(start - (now + by) * objective.perStep);
        return weight === undefined ? Math.sign(far) : far * weight;
      };
    };
    const [more, less] = [part(to), part(from)];
    const rest = measure(objective, steps) - more(0) - less(0);
    return (count) => rest + more(count) + less(-count);
  }
  const { kind } = objective;
  const rows = kind === "missed" ? objective.rows : [objective.weights];
  const sums = rows.map((row) => weigh(row, steps));
  const slopes = rows.map((row) => (row[to] ?? 0) - (row[from] ?? 0));
  return (count) => {
    let total = 0;
    for (let at = 0; at < sums.length; at += 1) {
      const value = (sums[at] ?? 0) + (slopes[at] ?? 0) * count;
      total += kind === "weighted" ? value : kind === "off-zero" ? Math.abs(value) : Math.max(0, -value);
    }
    return total;
  };
}

/** Weights times steps, added up. @example weigh([2, -1], [3, 4]) // => 2 */
export function weigh(weights: ArrayLike<number>, steps: ArrayLike<number>): number {
  let total = 0;
  for (let at = 0; at < weights.length; at += 1) total += (weights[at] ?? 0) * (steps[at] ?? 0);
  return total;
}

/** Whether steps meet the total, their limits, their shape and every row, the rows worked out in decimals, apart from the search. */
export function holds(problem: StepProblem, steps: readonly number[]): boolean {
  const value = ({ coefficients, constant }: Row): Decimal =>
    sum(coefficients.map((coefficient, index) => dec(coefficient).times(steps[index] ?? 0))).plus(constant);
  const hasPlace = (count: number, index: number): boolean =>
    count >= (problem.least[index] ?? 0) &&
    count <= (problem.most[index] ?? 0) &&
    count % everyOf(problem, index) === 0 &&
    (count === 0 || count >= fewestOf(problem, index));
  return (
    steps.every((count, index) => Number.isInteger(count) && hasPlace(count, index)) &&
    steps.reduce((total, count) => total + count, 0) === problem.total &&
    steps.filter((count) => count > 0).length <= (problem.mostFlours ?? steps.length) &&
    problem.rows.every((row) => value(row).gte(0))
  );
}
