import type { Figure } from "../figure/figure.ts";
import type { FastGraph } from "../figure/recalculate.ts";
import { type DecimalText, dec, decimalText } from "../number/decimal.ts";
import type { Cause } from "./cause.ts";
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
 * Works the graph out with every input somewhere within its error, evenly spread and independent of the others, in doubles.
 *
 * The same seed gives the same trials; one trial gives every output.
 */
export function simulate(
  graph: FastGraph,
  causes: readonly Cause[],
  outputs: readonly Figure[],
  seed: number,
  draws: number,
): readonly Simulated[] {
  const spread = new Spread(seed);
  const inputs = causes.map(({ value, plusMinus }) => ({ middle: Number(value), error: Number(plusMinus) }));
  const trials = outputs.map(() => new Float64Array(draws));
  for (let draw = 0; draw < draws; draw += 1) {
    const values = graph.valuesAt(inputs.map(({ middle, error }) => middle + error * (2 * spread.fraction() - 1)));
    for (const [index, trial] of trials.entries()) trial[draw] = values[index] ?? 0;
  }
  return outputs.map((output, index) => summary(trials[index] ?? new Float64Array(1), output, seed));
}

function summary(trials: Float64Array, output: Figure, seed: number): Simulated {
  trials.sort();
  const draws = trials.length;
  const mean = total(trials) / draws;
  const squares = total(trials.map((value) => (value - mean) ** 2));
  const at = (part: number): DecimalText => text(trials[Math.round(part * (draws - 1))] ?? 0, output);
  return {
    draws,
    seed,
    mean: text(mean, output),
    deviation: text(Math.sqrt(squares / (draws - 1)), output),
    low: at(0),
    high: at(1),
    middle: { low: at(0.025), high: at(0.975) },
    classes: classesOf(trials, output),
  };
}

function total(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}

const classCount = 11;

function classesOf(trials: Float64Array, output: Figure): readonly TrialClass[] {
  const [low, high] = [trials[0] ?? 0, trials.at(-1) ?? 0];
  const width = (high - low) / classCount;
  if (width === 0) return [{ from: text(low, output), to: text(high, output), count: trials.length }];
  const counts = Array.from({ length: classCount }, () => 0);
  for (const value of trials) {
    const index = Math.min(classCount - 1, Math.floor((value - low) / width));
    counts[index] = (counts[index] ?? 0) + 1;
  }
  return counts.map((count, index) => ({
    from: text(low + width * index, output),
    to: text(low + width * (index + 1), output),
    count,
  }));
}

/** Trials are kept to six places more than are shown, where the doubles still tell them apart. */
function text(value: number, output: Figure): DecimalText {
  return decimalText(dec(value).toDecimalPlaces(output.places + 6));
}
