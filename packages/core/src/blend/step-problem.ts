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
export function measure(objective: Objective, steps: readonly number[]): number {
  switch (objective.kind) {
    case "weighted":
      return weigh(objective.weights, steps);
    case "off-zero":
      return Math.abs(weigh(objective.weights, steps));
    case "moved":
      return objective.from.reduce((total, from, index) => {
        const far = Math.abs(from - (steps[index] ?? 0) * objective.perStep);
        return total + far * (objective.weights[index] ?? 0);
      }, 0);
    case "missed":
      return objective.rows.reduce((total, row) => total + Math.max(0, -weigh(row, steps)), 0);
    case "changed":
      return objective.from.filter((from, index) => from !== (steps[index] ?? 0) * objective.perStep).length;
  }
}

/** Weights times steps, added up. @example weigh([2, -1], [3, 4]) // => 2 */
export function weigh(weights: readonly number[], steps: readonly number[]): number {
  return weights.reduce((total, weight, index) => total + weight * (steps[index] ?? 0), 0);
}

/** What a row leaves over: not below zero when it holds. */
export function rowValue(row: Row, steps: readonly number[]): number {
  return weigh(row.coefficients, steps) + row.constant;
}

/** Whether steps have the shape asked for: whole multiples, enough of each flour used, few enough flours. */
export function hasShape(problem: StepProblem, steps: readonly number[]): boolean {
  const used = steps.filter((count) => count > 0).length;
  const each = (count: number, index: number): boolean =>
    count === 0 || (count >= fewestOf(problem, index) && count % everyOf(problem, index) === 0);
  return used <= (problem.mostFlours ?? steps.length) && steps.every(each);
}

/** Whether steps meet the total, their limits and every row: in whole numbers, all of them below 2^53 and so exact. */
export function meets(problem: StepProblem, steps: readonly number[]): boolean {
  return hasPlace(problem, steps) && problem.rows.every((row) => rowValue(row, steps) >= 0);
}

/** The same, the rows worked out in decimals, apart from the search. */
export function holds(problem: StepProblem, steps: readonly number[]): boolean {
  const value = ({ coefficients, constant }: Row): Decimal => decimalValue(coefficients, steps).plus(constant);
  return hasPlace(problem, steps) && problem.rows.every((row) => value(row).gte(0));
}

function hasPlace(problem: StepProblem, steps: readonly number[]): boolean {
  const within = steps.every(
    (count, index) =>
      Number.isInteger(count) && count >= (problem.least[index] ?? 0) && count <= (problem.most[index] ?? 0),
  );
  return within && steps.reduce((total, count) => total + count, 0) === problem.total && hasShape(problem, steps);
}

function decimalValue(coefficients: readonly number[], steps: readonly number[]): Decimal {
  return sum(coefficients.map((coefficient, index) => dec(coefficient).times(steps[index] ?? 0)));
}
