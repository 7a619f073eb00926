import type { Figure } from "../figure/figure.ts";
import { declare } from "../materials/declare.ts";
import { lineOf, type NutrientName } from "../materials/nutrients.ts";
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
      const line = lineOf(amount.name, book)?.line;
      return typeof line === "number" ? [{ amount, line }] : [];
    })
    .sort((one, other) => one.line - other.line);
  return lines.flatMap(({ amount }): readonly Declared[] => {
    const { name, label, unit } = amount;
    const value = amount[state][per];
    if (value === undefined) return [];
    const most = amount.most?.[state][per];
    const least = printable(name, value, book);
    const greatest = most ? printable(name, most, book) : least;
    const [text, ...others] = least.filter((one) => greatest.includes(one));
    const naming = { label, unit, value, others, ...(most && { most }) };
    if (text !== undefined) return [{ ...naming, text }];
    const [low = "", high = ""] = [least, greatest].map((texts) => texts.find((one) => Number(one) > 0) ?? texts[0]);
    return [{ ...naming, between: [low, high] }];
  });
}

/** All that may be printed of a value, the usual one first. */
function printable(name: NutrientName, { value }: Figure, book: RuleBookName): readonly string[] {
  const rounded = declare(name, value, book);
  return rounded.ok ? [rounded.value.text, ...rounded.value.others] : [];
}
