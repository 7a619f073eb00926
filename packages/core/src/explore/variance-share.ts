import type { Cause } from "../blend/cause.ts";
import { inputsAt } from "../blend/interval.ts";
import { type Decimal, dec, sum, ZERO } from "../number/decimal.ts";

/** The variance of an output by the slopes of its model, and the part of each cause. */
export interface VarianceShare {
  readonly variance: Decimal;
  readonly causes: readonly {
    readonly cause: Cause;
    /** Part of the variance, 0 to 1. */
    readonly part: Decimal;
    /** Half the way the output goes while this cause goes from one end to the other. */
    readonly reach: Decimal;
  }[];
}

/** A reach is told to so many places: what is smaller is the rounding of the model's own divisions. */
const exactPlaces = 20;

/**
 * Adds up the variance of independent causes, each evenly spread: the square of its reach, by 3.
 *
 * Source: JCGM 100:2008, 4.3.7 (rectangular distribution) and 5.1.2 (propagation), from memory.
 */
export function varianceShares(
  causes: readonly Cause[],
  model: (inputs: Readonly<Record<string, Decimal>>) => Decimal,
): VarianceShare {
  const reaches = causes.map((_, index) => {
    const at = (end: number): Decimal => model(inputsAt(causes, (__, other) => dec(other === index ? end : 0)));
    return at(1).minus(at(-1)).div(2).abs().toDecimalPlaces(exactPlaces);
  });
  const variances = reaches.map((reach) => reach.times(reach).div(3));
  const variance = sum(variances);
  const part = (index: number): Decimal => (variance.isZero() ? ZERO : (variances[index] ?? ZERO).div(variance));
  return {
    variance,
    causes: causes.map((cause, index) => ({ cause, part: part(index), reach: reaches[index] ?? ZERO })),
  };
}
