import * as z from "zod/mini";
import { type Nutrition, type NutritionWish, nutritionOf } from "../batch/nutrition.ts";
import { jurisdictions } from "../materials/allergen-lists.ts";
import { described, section } from "../materials/fields.ts";
import { ruleBookNames } from "../materials/rounding-rules.ts";
import { nutritionReport } from "../report/nutrition-report.ts";
import { type Answer, answered } from "./answer.ts";
import { asRead, type Noodle } from "./noodle.ts";
import { missedWants } from "./planned-batch.ts";
import { readWish } from "./wishes.ts";

const nutritionWish = section({ description: "Rules of a label" }, () => ({
  rules: described(z._default(z.enum(ruleBookNames), "EU"), { description: "Whose rules count and round" }),
  jurisdiction: described(z.optional(z.enum(jurisdictions)), { description: "Whose list of allergens to go by" }),
}));

/**
 * What the noodle contains per 100 g and per bowl, raw and boiled, and its allergens; an estimate to help prepare a label.
 *
 * @param wish - by whose rules; those of the European Union unless stated
 * Problems: of the weight of a bowl; of the wish.
 * @example askNutrition(example("school-noodle"), { rules: "US" }).value.declared.cooked[0].text // => "280"
 */
export function askNutrition(noodle: Noodle, wish: Partial<NutritionWish> = {}): Answer<Nutrition> {
  const { spec, formula } = asRead(noodle);
  const wished = readWish(nutritionWish, wish);
  if (!wished.ok) return wished;
  return answered(nutritionOf(spec, formula, wished.value), {
    notes: (own) => [...noodle.notes, ...missedWants(noodle), ...own],
    report: (nutrition, notes) => nutritionReport(noodle.formula, nutrition, { notes, units: noodle.units }),
  });
}
