import type { SpecInput } from "@noodlewright/core";
import type { NutrientName, Nutrition, RuleBookName } from "@noodlewright/core/answers";
import { nutritionOf } from "#core/batch/nutrition.ts";
import { formulaOf } from "#core/formula/formula.ts";

/** What a written spec contains. */
export function eaten(written: Omit<SpecInput, "name">, rules: RuleBookName): Nutrition {
  const outcome = formulaOf({ name: "test", ...written });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  const nutrition = nutritionOf(outcome.value.spec, outcome.value.formula, { rules });
  if (!nutrition.ok) throw new Error(JSON.stringify(nutrition.problems));
  return nutrition.value;
}

/** A spec of nothing but one food, without water or salt. */
export function nothingBut(name: string, figures?: object): Omit<SpecInput, "name"> {
  return { flours: [{ name, amount: "100 %", ...(figures && { figures }) }], water: { tap: "0 %" } };
}

/** An amount in 100 g, raw or cooked, as a number. */
export function hundred({ amounts }: Nutrition, name: NutrientName, state: "raw" | "cooked" = "raw"): number {
  const found = amounts.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return Number(found[state].hundred.value);
}
