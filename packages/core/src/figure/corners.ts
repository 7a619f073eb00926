import { type Decimal, type DecimalText, dec } from "../number/decimal.ts";
import { figureIn, type Graph } from "./graph.ts";
import { changedGraph, fastGraph } from "./recalculate.ts";

/** Which end of its range each input is at: -1 the low one, 1 the high one, 0 the middle. */
export type Sides = readonly (-1 | 0 | 1)[];

/** An input that may be so much more or less. */
export interface Open {
  readonly id: string;
  readonly value: DecimalText;
  readonly plusMinus: DecimalText;
}

/** The values of inputs at the ends of their ranges, by id. */
function inputsAt(inputs: readonly Open[], sides: Sides): Readonly<Record<string, Decimal>> {
  const moved = inputs.map(({ id, value, plusMinus }, index) => {
    return [
      id,
      dec(plusMinus)
        .times(sides[index] ?? 0)
        .plus(value),
    ] as const;
  });
  return Object.fromEntries(moved);
}

/**
 * The least and the greatest that a figure of a graph comes to, with inputs anywhere in their ranges: exactly.
 *
 * @throws {RangeError} on a figure that the graph does not know: a bug of the caller.
 */
export function rangeOf(
  graph: Graph,
  id: string,
  inputs: readonly Open[],
): { readonly low: DecimalText; readonly high: DecimalText } {
  const fast = fastGraph(
    graph,
    inputs.map((input) => input.id),
    [id],
  );
  const ends = inputs.map(({ value, plusMinus }) => [Number(value), Number(plusMinus)] as const);
  const model = (sides: Sides): number =>
    fast.valuesAt(ends.map(([middle, off], index) => middle + off * (sides[index] ?? 0)))[0] ?? 0;
  const { low, high } = cornersOf(inputs.length, model);
  const at = (sides: Sides): DecimalText => figureIn(id, changedGraph(graph, inputsAt(inputs, sides))).value;
  return { low: at(low), high: at(high) };
}

/** Where a model is least and where it is greatest. */
interface Corners {
  readonly low: Sides;
  readonly high: Sides;
}

/** Differences of less than this part of the values are the noise of doubles. */
const noise = 1e-12;

/**
 * Finds the corners at which a model that rises or falls steadily in each input is least and greatest, every input at an
 * end. What it is there, the caller works out exactly.
 *
 * An input that moves the output the same way from the middle and from the two outermost corners is set to its end at once;
 * of the others every combination is tried. Where they are too many, one after the other is moved to its better end until
 * none helps, which finds the corner for quotients of sums, such as every share of a mixture: what is best for one term then
 * depends on the quotient alone.
 *
 * @param count - how many inputs there are
 * @example cornersOf(2, ([a = 0, b = 0]) => a - 2 * b) // => { low: [-1, 1], high: [1, -1] }
 */
export function cornersOf(count: number, model: (sides: Sides) => number): Corners {
  const middle: Sides = Array.from({ length: count }, () => 0 as const);
  const rising = middle.map((_, index) => directionOf(model, middle, index));
  const down = rising.map((direction) => (direction === 1 ? -1 : 1));
  const unsure = [...middle.keys()].filter((index) =>
    [rising, down].some((corner) => directionOf(model, corner, index) !== rising[index]),
  );
  if (unsure.length > mostUnsure) return { low: walkedTo(model, down, -1), high: walkedTo(model, rising, 1) };
  let [low, high]: readonly Sides[] = [middle, middle];
  let [least, most] = [model(middle), model(middle)];
  for (const base of [rising, down]) {
    for (const corner of corners(base, unsure)) {
      const value = model(corner);
      if (value < least) [low, least] = [corner, value];
      if (value > most) [high, most] = [corner, value];
    }
  }
  return { low: low ?? middle, high: high ?? middle };
}

/** Inputs of which every combination is tried. */
const mostUnsure = 7;

/** The corner that is reached by moving one input after the other to the end that is better, from a corner on. */
function walkedTo(model: (sides: Sides) => number, from: Sides, sign: 1 | -1): Sides {
  let corner = from;
  let best = model(corner);
  for (let still = 0, index = 0; still < corner.length; index = (index + 1) % corner.length) {
    const other = corner.with(index, corner[index] === 1 ? -1 : 1);
    const value = model(other);
    still += 1;
    if (apart(value, best) === sign) [corner, best, still] = [other, value, 0];
  }
  return corner;
}

/** Which way the output goes when one input goes up, the others where they are. */
function directionOf(model: (sides: Sides) => number, sides: Sides, index: number): -1 | 0 | 1 {
  return apart(model(sides.with(index, 1)), model(sides.with(index, -1)));
}

function apart(value: number, other: number): -1 | 0 | 1 {
  const difference = value - other;
  if (Math.abs(difference) <= noise * Math.max(Math.abs(value), Math.abs(other))) return 0;
  return difference > 0 ? 1 : -1;
}

/** All corners that agree with a base in every input but the unsure ones. */
function* corners(base: Sides, unsure: readonly number[]): Generator<Sides> {
  const [first, ...rest] = unsure;
  if (first === undefined) {
    yield base;
    return;
  }
  for (const side of [-1, 1] as const) yield* corners(base.with(first, side), rest);
}
