import { type Decimal, dec, sum } from "../number/decimal.ts";

/** Whole steps to be found, one number for each flour: together `total`, each between its least and its most, every row held. */
export interface StepProblem {
  readonly total: number;
  readonly least: readonly number[];
  readonly most: readonly number[];
  readonly rows: readonly Row[];
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
  /** The steps moved away from a blend, counted in a fraction of a step: `from` holds that blend in the same fraction. */
  | { readonly kind: "moved"; readonly from: readonly number[]; readonly perStep: number };

/** An objective that has reached its smallest value and has to stay there. */
export interface Reached {
  readonly objective: Objective;
  readonly value: number;
}

/** The steps found; or that there are none; or that the search was given up before it knew. */
export type StepAnswer =
  | { readonly kind: "found"; readonly steps: readonly number[] }
  | { readonly kind: "none" }
  | { readonly kind: "unfinished" };

/**
 * The value of an objective: whole-number arithmetic, exact because weights stay below 10^10 and steps below 1001.
 *
 * @example measure({ kind: "moved", from: [70, 30], perStep: 1 }, [65, 35]) // => 10
 */
export function measure(objective: Objective, steps: readonly number[]): number {
  if (objective.kind === "moved") {
    return objective.from.reduce(
      (total, from, index) => total + Math.abs(from - (steps[index] ?? 0) * objective.perStep),
      0,
    );
  }
  const value = weigh(objective.weights, steps);
  return objective.kind === "off-zero" ? Math.abs(value) : value;
}

/** Weights times steps, added up. @example weigh([2, -1], [3, 4]) // => 2 */
export function weigh(weights: readonly number[], steps: readonly number[]): number {
  return weights.reduce((total, weight, index) => total + weight * (steps[index] ?? 0), 0);
}

/** What a row leaves over: not below zero when it holds. */
export function rowValue(row: Row, steps: readonly number[]): number {
  return weigh(row.coefficients, steps) + row.constant;
}

/** Whether steps meet the total, their limits and every row; worked out in decimals, apart from the search. */
export function holds(problem: StepProblem, steps: readonly number[]): boolean {
  const within = steps.every(
    (count, index) =>
      Number.isInteger(count) && count >= (problem.least[index] ?? 0) && count <= (problem.most[index] ?? 0),
  );
  const whole = sum(steps.map((count) => dec(count))).eq(problem.total);
  return (
    within && whole && problem.rows.every((row) => decimalValue(row.coefficients, steps).plus(row.constant).gte(0))
  );
}

function decimalValue(coefficients: readonly number[], steps: readonly number[]): Decimal {
  return sum(coefficients.map((coefficient, index) => dec(coefficient).times(steps[index] ?? 0)));
}
