import * as z from "zod/mini";
import { formulaTrial } from "../explore/spec-trial.ts";
import { type WeighedTrial, weighTrial } from "../explore/trial-weights.ts";
import { frozen } from "../figure/frozen.ts";
import { massField, quantityField, section } from "../materials/fields.ts";
import { trialReport } from "../report/trial-report.ts";
import { type Answer, answered } from "./answer.ts";
import { asRead, type Noodle } from "./noodle.ts";
import { readWish } from "./wishes.ts";

const trialWish = section({ description: "Doughs of a trial" }, () => ({
  flour: z.optional(massField("Flour of a dough", ["200 g"])),
  step: z.optional(
    quantityField(["share"], "Step of the water", ["1 %"], {
      above: "0",
      most: "10",
      words: "a step above 0 and at most 10 % of flour",
    }),
  ),
}));

/**
 * Three small doughs that tell the water of a blend: the poured water a step less, as it is, a step more.
 *
 * @param wish - flour of one dough and the step, with their units; 200 g and 1 % of flour unless stated
 * Problems: of the wish; `trial.water`; of the scales.
 * @example askTrial(example("school-noodle")).value.trial.doughs.length // => 3
 */
export function askTrial(
  noodle: Noodle,
  wish: { readonly flour?: string | undefined; readonly step?: string | undefined } = {},
): Answer<WeighedTrial> {
  const { spec, formula, notes: before, units } = asRead(noodle);
  const wished = readWish(trialWish, wish);
  if (!wished.ok) return wished;
  const plan = formulaTrial(formula, wished.value);
  if (!plan.ok) return frozen(plan);
  return answered(weighTrial(spec, formula, plan.value, units === "us"), {
    notes: (own) => [...before, ...own],
    report: (trial, notes) => trialReport(formula, trial, { notes, units }),
  });
}
