import type { Naming } from "../figure/figure.ts";
import type { FormulaLine } from "../formula/line.ts";

/** Names a figure of what 100 g of an ingredient holds. */
export function naming({ id, name }: FormulaLine, what: string, words: string, unit = "g/100 g"): Naming {
  return { id: `content.${id}.${what}`, label: `${words} of ${name}`, unit, places: unit === "g/100 g" ? 2 : 0 };
}
