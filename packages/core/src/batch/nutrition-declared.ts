import type { Figure } from "../figure/figure.ts";
import { declare } from "../materials/declare.ts";
import { ruleBooks } from "../materials/rounding-rules.ts";
import type { NutrientAmount } from "./nutrition-amounts.ts";
import type { NutritionRules } from "./nutrition-rules.ts";

/** A line of a label: the value as worked out and as it would be printed. */
export interface Declared {
  readonly label: string;
  readonly unit: NutrientAmount["unit"];
  /** Of 100 g or of a bowl, as the rules have it. */
  readonly value: Figure;
  /** As printed; undefined where something is missing for it. */
  readonly text?: string;
  /** What may be printed instead. */
  readonly others: readonly string[];
}

/** The lines of a label by the rules of a book, for the raw or for the boiled noodle; none where a bowl's weight is wanting. */
export function declaredOf(
  amounts: readonly NutrientAmount[],
  rules: NutritionRules,
  state: "raw" | "cooked",
): readonly Declared[] {
  const perServing = ruleBooks[rules.book].per === "serving";
  return rules.declared.flatMap((name): readonly Declared[] => {
    const amount = amounts.find((one) => one.name === name);
    const value = perServing ? amount?.[state].bowl : amount?.[state].hundred;
    if (amount === undefined || value === undefined) return [];
    const { label, unit, missing } = amount;
    const rounded = declare(name === "kilojoule" ? "energy" : name, value.value, rules.book);
    if (missing.length > 0 || !rounded.ok) return [{ label, unit, value, others: [] }];
    return [{ label, unit, value, text: rounded.value.text, others: rounded.value.others }];
  });
}
