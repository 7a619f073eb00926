import { formulaTrial } from "../explore/spec-trial.ts";
import { type WeighedTrial, weighTrial } from "../explore/trial-weights.ts";
import { frozen } from "../figure/frozen.ts";
import { trialReport } from "../report/trial-report.ts";
import { type Answer, answered } from "./answer.ts";
import { asRead, type Noodle } from "./noodle.ts";

/**
 * Three small doughs that tell the water of a blend: the poured water a step less, as it is, a step more.
 *
 * @param wish - flour of one dough and the step, with their units; 200 g and 1 % of flour unless stated
 * Problems: `spec.quantity`, `trial.water`; of the scales.
 * @example askTrial(example("school-noodle")).value.trial.doughs.length // => 3
 */
export function askTrial(
  noodle: Noodle,
  wish: { readonly flour?: string; readonly step?: string } = {},
): Answer<WeighedTrial> {
  const { spec, formula, notes: before, units } = asRead(noodle);
  const plan = formulaTrial(formula, wish);
  if (!plan.ok) return frozen(plan);
  return answered(weighTrial(spec, formula, plan.value, units === "us"), {
    notes: (own) => [...before, ...own],
    report: (trial, notes) => trialReport(formula, trial, notes, units),
  });
}
