import type { ReplacedIngredient } from "../blend/spec-product.ts";
import type { Figure } from "../figure/figure.ts";
import type { Published } from "../figure/graph.ts";
import type { Formula } from "../formula/formula.ts";
import { dec } from "../number/decimal.ts";
import { numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import type { Cell, Report, Telling } from "./schema.ts";
import { cellOr, figureCell } from "./show.ts";

/** Tells an ingredient that is replaced by another of the same dry matter: amounts and tap water, before and now. */
export function productReport(
  formula: Formula,
  replaced: Published<ReplacedIngredient>,
  { notes, units = "metric" }: Telling,
): Report {
  const { old, by, amount, there, all, tapBefore, tap, oldChange, tapChange, graph } = replaced;
  return report({
    command: "replace",
    title: `${formula.name}, ${by} for ${old.name}`,
    main: "replaced",
    sections: [
      section(
        "replaced",
        "On 100 of flour, the same dry matter",
        table(
          "replaced",
          [
            wordColumn("ingredient", "ingredient"),
            numberColumn("before", "before"),
            numberColumn("now", "now"),
            numberColumn("change", "change"),
          ],
          [
            row([old.name, figureCell(old.parts), "–", figureCell(oldChange)]),
            row([by, cellOr(there), figureCell(all), signed(amount)]),
            row(["tap water", figureCell(tapBefore), figureCell(tap), signed(tapChange)]),
          ],
        ),
        ["Everything else stays. Dissolve a dried product in the water first; its label says how."],
      ),
    ],
    figures: Object.values(graph),
    units,
    notes,
    cautions: formulaCautions(formula),
  });
}

function signed(figure: Figure): Cell {
  const cell = figureCell(figure);
  return dec(figure.value).gt(0) ? { ...cell, text: `+${cell.text}` } : cell;
}
