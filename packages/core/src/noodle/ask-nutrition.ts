import { type Nutrition, type NutritionWish, nutritionOf } from "../batch/nutrition.ts";
import { refuse } from "../figure/problem.ts";
import { jurisdictions } from "../materials/allergen-lists.ts";
import { ruleBooks } from "../materials/rounding-rules.ts";
import { nutritionReport } from "../report/nutrition-report.ts";
import { choiceProblem } from "../spec/read-spec.ts";
import { type Answer, answered } from "./answer.ts";
import type { Noodle } from "./noodle.ts";
import { missedWants } from "./planned-batch.ts";

/**
 * What the noodle contains per 100 g and per bowl, raw and boiled, and its allergens; an estimate to help prepare a label.
 *
 * @param wish - by whose rules; those of the European Union unless stated
 * Problems: of the weight of a bowl; `spec.choice`.
 * @example askNutrition(example("school-noodle"), { rules: "US" }).value.declared.cooked[0].text // => "280"
 */
export function askNutrition(noodle: Noodle, wish: Partial<NutritionWish> = {}): Answer<Nutrition> {
  const { rules = "EU", jurisdiction } = wish;
  const problems = [
    ...(Object.hasOwn(ruleBooks, rules) ? [] : [choiceProblem(["rules"], rules, Object.keys(ruleBooks))]),
    ...(jurisdiction === undefined || jurisdictions.includes(jurisdiction)
      ? []
      : [choiceProblem(["jurisdiction"], jurisdiction, jurisdictions)]),
  ];
  const nutrition =
    problems.length > 0
      ? refuse(...problems)
      : nutritionOf(noodle.spec, noodle.formula, { rules, ...(jurisdiction && { jurisdiction }) });
  return answered(nutrition, {
    notes: (own) => [...noodle.notes, ...missedWants(noodle), ...own],
    report: (nutrition, notes) => nutritionReport(noodle.formula, nutrition, notes, noodle.units),
  });
}
