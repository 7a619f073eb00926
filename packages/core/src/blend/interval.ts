import { type Decimal, dec } from "../number/decimal.ts";
import type { Cause } from "./cause.ts";

/** Value of a model with all inputs as they should be, and the least and greatest it can have. */
export interface Bounds {
  readonly nominal: Decimal;
  readonly low: Decimal;
  readonly high: Decimal;
}

type OneOutput = (inputs: Readonly<Record<string, Decimal>>) => Decimal;
type Side = -1 | 0 | 1;

/**
 * The exact range of a model that rises or falls steadily in each input.
 *
 * Such a model is greatest and smallest at corners, every input at an end. An input that moves the output the same way from the
 * middle and from the two outermost corners is set to its end at once; of the others every combination is tried. Where they
 * are too many, one after the other is moved to its better end until none helps, which finds the corner for quotients of
 * sums, such as every share of a mixture: what is best for one term then depends on the quotient alone.
 */
export function boundsOf(causes: readonly Cause[], model: OneOutput): Bounds {
  const middle = causes.map((): Side => 0);
  const rising = causes.map((_, index) => directionOf(causes, model, middle, index));
  const up = rising.map((direction): Side => direction);
  const down = up.map((direction): Side => (direction === 1 ? -1 : 1));
  const unsure = [...causes.keys()].filter((index) =>
    [up, down].some((corner) => directionOf(causes, model, corner, index) !== rising[index]),
  );
  const nominal = valueAt(causes, model, middle);
  if (unsure.length > mostUnsure) {
    const end = (base: readonly Side[], sign: 1 | -1): Decimal => walkedTo(causes, model, base, sign);
    return { nominal, low: end(down, -1), high: end(up, 1) };
  }
  let [low, high] = [nominal, nominal];
  for (const base of [up, down]) {
    for (const corner of corners(base, unsure)) {
      const value = valueAt(causes, model, corner);
      if (value.lt(low)) low = value;
      if (value.gt(high)) high = value;
    }
  }
  return { nominal, low, high };
}

/** Inputs of which every combination is tried. */
const mostUnsure = 7;

/** The corner that is reached by moving one input after the other to the end that is better, from a corner on. */
function walkedTo(causes: readonly Cause[], model: OneOutput, from: readonly Side[], sign: 1 | -1): Decimal {
  let corner = from;
  let best = valueAt(causes, model, corner);
  for (let still = 0, index = 0; still < causes.length; index = (index + 1) % causes.length) {
    const other = corner.with(index, corner[index] === 1 ? -1 : 1);
    const value = valueAt(causes, model, other);
    still += 1;
    if (value.cmp(best) * sign > 0) [corner, best, still] = [other, value, 0];
  }
  return best;
}

/** Which way the output goes when one input goes up, the others where they are. */
function directionOf(causes: readonly Cause[], model: OneOutput, sides: readonly Side[], index: number): Side {
  const [below, above] = ([-1, 1] as const).map((side) => valueAt(causes, model, sides.with(index, side)));
  return below === undefined || above === undefined ? 0 : (above.cmp(below) as Side);
}

function valueAt(causes: readonly Cause[], model: OneOutput, sides: readonly Side[]): Decimal {
  return model(inputsAt(causes, (_, index) => dec(sides[index] ?? 0)));
}

/** Inputs moved from where they should be by a part of their error: -1 the whole of it down, 1 up. */
export function inputsAt(
  causes: readonly Cause[],
  part: (cause: Cause, index: number) => Decimal,
): Readonly<Record<string, Decimal>> {
  return Object.fromEntries(
    causes.map((cause, index) => [cause.id, dec(cause.value).plus(dec(cause.plusMinus).times(part(cause, index)))]),
  );
}

/** All corners that agree with a base in every input but the unsure ones. */
function* corners(base: readonly Side[], unsure: readonly number[]): Generator<readonly Side[]> {
  const [first, ...rest] = unsure;
  if (first === undefined) {
    yield base;
    return;
  }
  for (const side of [-1, 1] as const) yield* corners(base.with(first, side), rest);
}
