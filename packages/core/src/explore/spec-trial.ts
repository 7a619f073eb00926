import { glutenTakes } from "../blend/water-flour.ts";
import type { Published } from "../figure/graph.ts";
import { type Outcome, problem, refuse } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { type FormulaLine, inUse } from "../formula/line.ts";
import { massField, quantityField } from "../materials/fields.ts";
import { type Trial, type TrialFlour, waterTrial } from "./water-trial.ts";

/** Flour of a trial dough and the step of its water unless asked otherwise. */
const usual = { flour: "200 g", step: "1 %" } as const;

/**
 * Lays out the trial of the water of a formula: its flours and all else, the poured water a step less, as it is, a step more.
 *
 * @param asked - flour of a dough and step of the water, as text with units
 * Problems: `spec.quantity`, and those of `waterTrial`.
 * Source: common practice.
 */
export function formulaTrial(
  formula: Formula,
  asked: { readonly flour?: string; readonly step?: string },
): Outcome<Published<Trial>> {
  const flour = massField("Flour of a dough", [usual.flour]).safeParse(asked.flour ?? usual.flour);
  const step = quantityField(["share"], "Step of the water", [usual.step], {
    above: "0",
    most: "10",
    words: "a step above 0 and at most 10 % of flour",
  }).safeParse(asked.step ?? usual.step);
  if (!flour.success)
    return refuse(problem("spec.quantity", ["flour"], { written: asked.flour ?? "", example: usual.flour }));
  if (!step.success)
    return refuse(problem("spec.quantity", ["step"], { written: asked.step ?? "", example: usual.step }));
  const used = inUse(formula.lines);
  const shares = (lines: readonly FormulaLine[]) => lines.map(({ name, parts }) => ({ name, percent: parts }));
  const { water, referenceFactor } = formula;
  return waterTrial({
    flour: flour.data.value,
    flours: used.filter(({ role }) => role === "flour").map(trialFlour),
    water: water.tap,
    carried: water.carried,
    step: step.data.value,
    others: shares(used.filter(({ role }) => role !== "flour" && role !== "water")),
    ...(referenceFactor && { referenceFactor }),
  });
}

/** A flour with what is known of the water it takes: the kitchen's own figure, or the rule of dry gluten. */
function trialFlour({ name, parts, material }: FormulaLine): TrialFlour {
  const takes = material.absorption?.percent ?? (material.kind === "gluten" ? glutenTakes : undefined);
  return { name, percent: parts, ...(takes !== undefined && { takes }) };
}
