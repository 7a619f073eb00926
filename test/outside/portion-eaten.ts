import type { NutrientName, Nutrition, RuleBookName } from "@noodlewright/core/answers";
import { nutritionOf } from "#core/batch/nutrition.ts";
import { type Written, workedOut } from "../core/formula/worked-out.ts";
import { answered } from "../core/told-of.ts";

/** What a written spec contains. */
export function eaten(written: Written, rules: RuleBookName): Nutrition {
  const { spec, formula } = workedOut(written);
  return answered(nutritionOf(spec, formula, { rules }));
}

/** A spec of nothing but one food, without water or salt. */
export function nothingBut(name: string, figures?: object): Written {
  return { flours: [{ name, amount: "100 %", ...(figures && { figures }) }], water: { tap: "0 %" } };
}

/** An amount in 100 g, raw or cooked, as a number. */
export function hundred({ amounts }: Nutrition, name: NutrientName, state: "raw" | "cooked" = "raw"): number {
  const found = amounts.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return Number(found[state].hundred.value);
}
