import type { Figure } from "../figure/figure.ts";
import type { FormulaLine } from "../formula/line.ts";

/** Names a figure of what 100 g of an ingredient holds. */
export function naming(
  line: FormulaLine,
  what: string,
  words: string,
  unit = "g/100 g",
): Pick<Figure, "id" | "label" | "unit" | "places"> {
  return {
    id: `content.${line.id}.${what}`,
    label: `${words} of ${line.name}`,
    unit,
    places: unit === "g/100 g" ? 2 : 0,
  };
}
