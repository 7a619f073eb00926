import { cookGainSource, usualCookGain } from "../../batch/bowl.ts";
import { type Figure, given, type Range, worked } from "../../figure/figure.ts";
import { frozen } from "../../figure/frozen.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { type Outcome, type Problem, problem, refuse } from "../../figure/problem.ts";
import { fromSpec } from "../../figure/source.ts";
import { type Decimal, type DecimalText, dec, decimalText } from "../../number/decimal.ts";
import { asked, askedFigure, type Given, numberOf, outsideLimits } from "../inputs.ts";
import { cookedNoodles, rawNoodles } from "./cook-gain.ts";

/** Cooked mass by raw mass, and the range it may have; without limits it has none. */
export interface CookGain {
  readonly gain: DecimalText;
  readonly low?: DecimalText;
  readonly high?: DecimalText;
}

/** The usual gain of a boiled alkaline noodle. Boiled only to its optimum a noodle gains less, about 1.57. */
export const usualGain = frozen({
  gain: usualCookGain.value,
  low: usualCookGain.least,
  high: usualCookGain.most,
} as const satisfies CookGain);

/**
 * Finds the cooked mass of raw noodles, g, with its range.
 *
 * @param raw - g, above 0
 * @param gain - 1 to 4; 1.8 with 1.7 to 1.9 where it is left out
 * Problems: `sheet.out-of-range`, `cook.range-reversed`. Source: trade portions and food composition tables.
 *
 * @example shown(cookedMass("112").value) // => "202 g"
 */
export function cookedMass(raw: Given, gain?: CookGain): Outcome<Published<Figure>> {
  const problems = gainProblems("raw", numberOf(raw), gain);
  if (problems.length > 0) return refuse(...problems);
  const from = { raw: askedFigure(rawNoodles, raw), gain: gainFigure(gain) };
  const figure = worked(cookedNoodles, "raw * gain", from, ...from.gain.sources);
  const { low, high } = limitsOf(gain);
  return publish(ranged(figure, low.times(numberOf(raw)), high.times(numberOf(raw))));
}

/**
 * Finds the raw mass that gives a cooked mass, g, with its range.
 *
 * @param cooked - g, above 0
 * Problems: `sheet.out-of-range`, `cook.range-reversed`. Source: as for `cookedMass`.
 *
 * @example shown(rawMass("210").value) // => "117 g"
 */
export function rawMass(cooked: DecimalText, gain?: CookGain): Outcome<Published<Figure>> {
  const problems = gainProblems("cooked", cooked, gain);
  if (problems.length > 0) return refuse(...problems);
  const from = { cooked: asked(cookedNoodles, cooked), gain: gainFigure(gain) };
  const figure = worked(rawNoodles, "cooked / gain", from, ...from.gain.sources);
  const { low, high } = limitsOf(gain);
  return publish(ranged(figure, dec(cooked).div(high), dec(cooked).div(low)));
}

function gainFigure(gain: CookGain | undefined): Figure {
  const { gain: value } = gain ?? usualGain;
  const { low, high } = limitsOf(gain);
  const figure = given(
    { id: "bowl.cook-gain", label: "cook gain", unit: "", places: 2 },
    value,
    gain === undefined ? "the usual value" : "the spec",
    gain === undefined ? cookGainSource : fromSpec,
  );
  return ranged(figure, low, high);
}

function ranged(figure: Figure, low: Decimal, high: Decimal): Figure {
  if (low.eq(high)) return figure;
  const range: Range = { low: decimalText(low), high: decimalText(high), why: "range of the cook gain" };
  return { ...figure, range };
}

function limitsOf(gain: CookGain = usualGain): { readonly low: Decimal; readonly high: Decimal } {
  return { low: dec(gain.low ?? gain.gain), high: dec(gain.high ?? gain.gain) };
}

function gainProblems(name: string, mass: DecimalText, gain: CookGain | undefined): readonly Problem[] {
  const share = { unit: "", least: "1", most: "4" };
  const problems = outsideLimits([
    { path: [name], value: mass, unit: "g", above: "0" },
    { path: ["gain"], value: gain?.gain, ...share },
    { path: ["low"], value: gain?.low, ...share },
    { path: ["high"], value: gain?.high, ...share },
  ]);
  if (problems.length > 0 || gain === undefined) return problems;
  const { low = gain.gain, high = gain.gain } = gain;
  if (dec(low).lte(gain.gain) && dec(gain.gain).lte(high)) return [];
  return [problem("cook.range-reversed", ["gain"], { low, gain: gain.gain, high })];
}
