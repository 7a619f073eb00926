import { glutenTakes } from "../blend/water-flour.ts";
import type { Published } from "../figure/graph.ts";
import type { Outcome } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { type FormulaLine, inUse } from "../formula/line.ts";
import type { Quantity } from "../number/quantity.ts";
import { type Trial, type TrialFlour, waterTrial } from "./water-trial.ts";

/**
 * Lays out the trial of the water of a formula: its flours and all else, the poured water a step less, as it is, a step more.
 *
 * @param wish - flour of a dough and step of the water; 200 g and 1 % of flour unless stated
 * Problems: those of `waterTrial`.
 * Source: common practice.
 */
export function formulaTrial(
  formula: Formula,
  { flour, step }: { readonly flour?: Quantity | undefined; readonly step?: Quantity | undefined },
): Outcome<Published<Trial>> {
  const used = inUse(formula.lines);
  const shares = (lines: readonly FormulaLine[]) => lines.map(({ name, parts }) => ({ name, percent: parts }));
  const { water, referenceFactor } = formula;
  return waterTrial({
    flour: flour?.value ?? "200",
    flours: used.filter(({ role }) => role === "flour").map(trialFlour),
    water: water.tap,
    carried: water.carried,
    ...(step && { step: step.value }),
    others: shares(used.filter(({ role }) => role !== "flour" && role !== "water")),
    ...(referenceFactor && { referenceFactor }),
  });
}

/** A flour with what is known of the water it takes: the kitchen's own figure, or the rule of dry gluten. */
function trialFlour({ name, parts, material }: FormulaLine): TrialFlour {
  const takes = material.absorption?.percent ?? (material.kind === "gluten" ? glutenTakes : undefined);
  return { name, percent: parts, ...(takes !== undefined && { takes }) };
}
