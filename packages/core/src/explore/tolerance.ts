import type { Cause, Model, Output } from "../blend/cause.ts";
import { type Bounds, boundsOf } from "../blend/interval.ts";
import { type Figure, found } from "../figure/figure.ts";
import { answer, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import { type Decimal, dec, decimalText, HUNDRED } from "../number/decimal.ts";
import { type Simulated, simulate } from "./simulate.ts";
import { type VarianceShare, varianceShares } from "./variance-share.ts";

/** A question to `tolerance`. */
export interface ToleranceQuestion {
  readonly causes: readonly Cause[];
  readonly outputs: readonly Output[];
  readonly model: Model;
  /** 1 to 2147483646; 1 unless given. */
  readonly seed?: number;
  /** Random trials; 2000 unless given, 100 to 100000. */
  readonly draws?: number;
}

/** One output: its value with the exact range, the trials beside it and the share of each cause. */
export interface Tolerance {
  /** Value with every input as it should be, and the exact range. */
  readonly figure: Figure;
  readonly simulated: Simulated;
  /** Standard deviation by the slopes of the model. */
  readonly deviation: Figure;
  /** Largest first. */
  readonly shares: readonly CauseShare[];
}

/** How much of the spread of an output one cause makes. */
export interface CauseShare {
  readonly id: string;
  readonly label: string;
  /** % of the variance. */
  readonly share: Figure;
  /** How far this cause alone moves the output, up or down. */
  readonly reach: Figure;
}

/**
 * Tells what errors of the inputs do to the outputs: the exact range, a seeded simulation beside it, and the share of each cause.
 *
 * Problems: `tolerance.causes`, `tolerance.plus-minus`, `tolerance.seed`, `tolerance.draws`.
 * Source: rectangular distributions and propagation after JCGM 100:2008, 4.3.7 and 5.1.2, from memory.
 *
 * @example tolerance({ causes: [{ id: "flour", label: "flour", value: "1000", plusMinus: "1", unit: "g" }], outputs: [{ id: "half", label: "half", unit: "g", places: 1 }], model: (inputs) => (inputs["flour"] ?? dec(0)).div(2) }).ok // => true
 */
export function tolerance(question: ToleranceQuestion): Outcome<readonly Tolerance[]> {
  const { causes, outputs, model, seed = 1, draws = 2000 } = question;
  const problems = problemsOf(causes, seed, draws);
  if (problems.length > 0) return refuse(...problems);
  const trials = simulate(causes, model, outputs, seed, draws);
  return answer(
    outputs.flatMap((output, index) => {
      const one = (inputs: Readonly<Record<string, Decimal>>): Decimal => model(inputs, output.id);
      const simulated = trials[index];
      if (simulated === undefined) return [];
      return [describe(output, boundsOf(causes, one), simulated, varianceShares(causes, one))];
    }),
  );
}

function describe(output: Output, bounds: Bounds, simulated: Simulated, shares: VarianceShare): Tolerance {
  const make = (id: string, label: string, unit: string, places: number, value: Decimal, by: string): Figure =>
    found({ id: `tolerance.${output.id}.${id}`, label, unit, places, value, by, sources: [] });
  const figure = make(
    "value",
    output.label,
    output.unit,
    output.places,
    bounds.nominal,
    "the model with every input as it should be",
  );
  const range = {
    low: decimalText(bounds.low),
    high: decimalText(bounds.high),
    why: "every cause at its worst, exactly",
  };
  const slope = "slopes of the model, rectangular distributions";
  return {
    figure: { ...figure, range },
    simulated,
    deviation: make(
      "deviation",
      `standard deviation of ${output.label}`,
      output.unit,
      output.places + 1,
      shares.variance.sqrt(),
      slope,
    ),
    shares: shares.causes
      .map(({ cause, part, reach }) => ({
        id: cause.id,
        label: cause.label,
        share: make(`${cause.id}.share`, `share of ${cause.label}`, "%", 1, part.times(HUNDRED), slope),
        reach: make(`${cause.id}.reach`, `${cause.label} alone`, output.unit, output.places + 1, reach, slope),
      }))
      .toSorted((a, b) => dec(b.share.value).cmp(a.share.value)),
  };
}

function problemsOf(causes: readonly Cause[], seed: number, draws: number): readonly Problem[] {
  const problems: Problem[] = [];
  const ids = new Set(causes.map(({ id }) => id));
  if (causes.length === 0 || ids.size < causes.length) {
    problems.push(problem("tolerance.causes", ["causes"], { causes: causes.length, names: ids.size }));
  }
  for (const [index, { label, plusMinus }] of causes.entries()) {
    if (dec(plusMinus).gte(0)) continue;
    problems.push(problem("tolerance.plus-minus", ["causes", index, "plusMinus"], { plusMinus, label }));
  }
  if (!Number.isInteger(seed) || seed < 1 || seed > 2_147_483_646) {
    problems.push(problem("tolerance.seed", ["seed"], { seed: String(seed) }));
  }
  if (!Number.isInteger(draws) || draws < 100 || draws > 100_000) {
    problems.push(problem("tolerance.draws", ["draws"], { draws: String(draws) }));
  }
  return problems;
}
