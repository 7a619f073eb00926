import type { NutrientName, RuleBookName } from "@noodlewright/core/answers";
import { type LabelLine, lineOf } from "#core/materials/nutrients.ts";

/** How a book has a nutrient printed. */
export function ruleOf(nutrient: NutrientName, book: RuleBookName): LabelLine {
  const rule = lineOf(nutrient, book);
  if (rule === undefined) throw new Error(`${book} has no rule for ${nutrient}`);
  return rule;
}
