import { formulaTrial } from "../explore/spec-trial.ts";
import { type TrialWeights, weighTrial } from "../explore/trial-weights.ts";
import type { Trial } from "../explore/water-trial.ts";
import type { Published } from "../figure/graph.ts";
import { answer } from "../figure/problem.ts";
import { trialReport } from "../report/trial-report.ts";
import { type Answer, answered } from "./answer.ts";
import type { Noodle } from "./noodle.ts";

/** A trial of the water, and its doughs as the scales show them. */
export interface WeighedTrial {
  readonly trial: Published<Trial>;
  readonly weights: Published<TrialWeights>;
}

/**
 * Three small doughs that tell the water of a blend: the poured water a step less, as it is, a step more.
 *
 * @param wish - flour of one dough and the step, with their units; 200 g and 1 % of flour unless stated
 * Problems: `quantity.unreadable`, `quantity.out-of-range`; of the scales.
 * @example askTrial(example("school-noodle")).value.trial.doughs.length // => 3
 */
export function askTrial(
  { spec, formula, notes: before, units }: Noodle,
  wish: { readonly flour?: string; readonly step?: string } = {},
): Answer<WeighedTrial> {
  const trial = formulaTrial(formula, wish);
  if (!trial.ok) return trial;
  const weights = weighTrial(spec, formula, trial.value, units === "us");
  return answered(weights.ok ? answer({ trial: trial.value, weights: weights.value }, weights.notes) : weights, {
    notes: (own) => [...before, ...own],
    report: (both, notes) => trialReport(formula, both.trial, notes, units, both.weights),
  });
}
