import type { Figure } from "../figure/figure.ts";
import { declare } from "../materials/declare.ts";
import { lineOf } from "../materials/nutrients.ts";
import { type RuleBookName, ruleBooks } from "../materials/rounding-rules.ts";
import type { NutrientAmount } from "./nutrition-amounts.ts";

/** A line of a label: the value as worked out and as it would be printed. */
export interface Declared {
  readonly label: string;
  readonly unit: NutrientAmount["unit"];
  /** Of 100 g or of a bowl, as the rules have it. */
  readonly value: Figure;
  /** As printed; undefined where what is not stated leaves it open. */
  readonly text?: string;
  /** What may be printed instead. */
  readonly others: readonly string[];
  /** The greatest value, where something is not stated. */
  readonly most?: Figure;
  /** The least and the greatest value as they would be rounded, where nothing can be printed of both. */
  readonly between?: readonly [least: string, most: string];
}

/** The lines of a label by the rules of a book, for the raw or for the boiled noodle; none where a bowl's weight is wanting. */
export function declaredOf(
  amounts: readonly NutrientAmount[],
  book: RuleBookName,
  state: "raw" | "cooked",
): readonly Declared[] {
  const perServing = ruleBooks[book].per === "serving";
  const per = perServing ? "bowl" : "hundred";
  const lines = amounts
    .flatMap((amount) => {
      const rule = lineOf(amount.name, book);
      return typeof rule?.line === "number" ? [{ amount, rule, line: rule.line }] : [];
    })
    .sort((one, other) => one.line - other.line);
  return lines.flatMap(({ amount, rule }): readonly Declared[] => {
    const { label, unit } = amount;
    const value = amount[state][per];
    if (value === undefined) return [];
    const most = amount.most?.[state][per];
    const least = declare(rule, value.value);
    const greatest = most ? declare(rule, most.value) : least;
    const [text, ...others] = least.filter((one) => greatest.includes(one));
    const naming = { label, unit, value, others, ...(most && { most }) };
    if (text !== undefined) return [{ ...naming, text }];
    const [low = "", high = ""] = [least, greatest].map((texts) => texts.find((one) => Number(one) > 0) ?? texts[0]);
    return [{ ...naming, between: [low, high] }];
  });
}
