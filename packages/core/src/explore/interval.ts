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
 * middle and from the two outermost corners is set to its end at once; of the others every combination is tried.
 */
export function boundsOf(causes: readonly Cause[], model: OneOutput): Bounds {
  const middle = causes.map((): Side => 0);
  const rising = causes.map((_, index) => directionOf(causes, model, middle, index));
  const up = rising.map((direction): Side => direction);
  const down = up.map((direction): Side => (direction === 1 ? -1 : 1));
  const unsure = [...causes.keys()].filter((index) =>
    [up, down].some((corner) => directionOf(causes, model, corner, index) !== rising[index]),
  );
  if (unsure.length > mostUnsure) throw new RangeError("the model does not rise or fall steadily in its inputs");
  const nominal = valueAt(causes, model, middle);
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

const mostUnsure = 14;

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
