import type { Cause, Model, Output } from "../blend/cause.ts";
import { inputsAt } from "../blend/interval.ts";
import { type Decimal, type DecimalText, dec, decimalText, ONE, sum, ZERO } from "../number/decimal.ts";
import { Spread } from "./random.ts";

/** What many trials with random errors came to. */
export interface Simulated {
  readonly draws: number;
  readonly seed: number;
  readonly mean: DecimalText;
  readonly deviation: DecimalText;
  readonly low: DecimalText;
  readonly high: DecimalText;
  /** 95 of 100 trials lay between these. */
  readonly middle: { readonly low: DecimalText; readonly high: DecimalText };
  readonly classes: readonly TrialClass[];
}

/** Trials that came out between two values. */
export interface TrialClass {
  readonly from: DecimalText;
  readonly to: DecimalText;
  readonly count: number;
}

/**
 * Runs the model with every input somewhere within its error, evenly spread and independent of the others.
 *
 * The same seed gives the same trials; one trial gives every output.
 */
export function simulate(
  causes: readonly Cause[],
  model: Model,
  outputs: readonly Output[],
  seed: number,
  draws: number,
): readonly Simulated[] {
  const spread = new Spread(seed);
  const trials: Decimal[][] = outputs.map(() => []);
  for (let draw = 0; draw < draws; draw += 1) {
    const inputs = inputsAt(causes, () => spread.fraction().times(2).minus(ONE));
    for (const [index, { id }] of outputs.entries()) trials[index]?.push(model(inputs, id));
  }
  return outputs.map((output, index) => summary(trials[index] ?? [], output, seed));
}

function summary(unsorted: readonly Decimal[], output: Output, seed: number): Simulated {
  const trials = unsorted.toSorted((a, b) => a.cmp(b));
  const draws = trials.length;
  const mean = sum(trials).div(draws);
  const squares = sum(trials.map((value) => value.minus(mean).pow(2)));
  const at = (part: number): DecimalText => text(trials[Math.round(part * (draws - 1))] ?? ZERO, output);
  return {
    draws,
    seed,
    mean: text(mean, output),
    deviation: text(squares.div(draws - 1).sqrt(), output),
    low: at(0),
    high: at(1),
    middle: { low: at(0.025), high: at(0.975) },
    classes: classesOf(trials, output),
  };
}

const classCount = 11;

function classesOf(trials: readonly Decimal[], output: Output): readonly TrialClass[] {
  const [low, high] = [trials[0] ?? ZERO, trials.at(-1) ?? ZERO];
  const width = high.minus(low).div(classCount);
  if (width.isZero()) return [{ from: text(low, output), to: text(high, output), count: trials.length }];
  const counts = Array.from({ length: classCount }, () => 0);
  for (const value of trials) {
    const index = Math.min(classCount - 1, value.minus(low).div(width).floor().toNumber());
    counts[index] = (counts[index] ?? 0) + 1;
  }
  return counts.map((count, index) => ({
    from: text(low.plus(width.times(index)), output),
    to: text(low.plus(width.times(index + 1)), output),
    count,
  }));
}

/** Trials are kept to six places more than are shown. */
function text(value: Decimal, output: Output): DecimalText {
  return decimalText(dec(value).toDecimalPlaces(output.places + 6));
}
