import { type Nutrition, type NutritionWish, nutritionOf } from "../batch/nutrition.ts";
import { nutritionReport } from "../report/nutrition-report.ts";
import { type Answer, answered } from "./answer.ts";
import type { Noodle } from "./noodle.ts";

/**
 * What the noodle contains per 100 g and per bowl, raw and boiled, and its allergens; an estimate to help prepare a label.
 *
 * @param wish - by whose rules; those of the European Union unless stated
 * Problems: of the weight of a bowl.
 * @example askNutrition(example("school-noodle"), { rules: "US" }).value.declared.cooked[0].text // => "280"
 */
export function askNutrition(noodle: Noodle, wish: Partial<NutritionWish> = {}): Answer<Nutrition> {
  return answered(nutritionOf(noodle.spec, noodle.formula, { rules: "EU", ...wish }), {
    notes: (own) => [...noodle.notes, ...own],
    report: (nutrition, notes) => nutritionReport(noodle.formula, nutrition, notes),
  });
}
