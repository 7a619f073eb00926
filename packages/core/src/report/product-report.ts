import type { ReplacedIngredient } from "../blend/spec-product.ts";
import { type Figure, worked } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { dec } from "../number/decimal.ts";
import { numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import type { Cell, Report } from "./schema.ts";
import { figureCell, words } from "./show.ts";

/** Tells an ingredient that is replaced by another of the same dry matter: amounts and tap water, before and now. */
export function productReport(formula: Formula, replaced: ReplacedIngredient, notes: readonly Note[]): Report {
  const { old, by, amount, tapBefore, tap, figures } = replaced;
  const change = (id: string, label: string, formula: string, from: Readonly<Record<string, Figure>>): Figure =>
    worked({ id, label, unit: "% of flour", places: 2, formula, from, sources: [massBalance] });
  const away = change("replaced.old-change", `change of ${old.name}`, "-before", { before: old.parts });
  const water = change("replaced.tap-change", "change of the tap water", "now - before", {
    now: tap,
    before: tapBefore,
  });
  const none = words("–");
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
            row([words(old.name), figureCell(old.parts), none, figureCell(away)]),
            row([words(by), none, figureCell(amount), signed(amount)]),
            row([words("tap water"), figureCell(tapBefore), figureCell(tap), signed(water)]),
          ],
        ),
        {
          kind: "text",
          lines: ["Everything else stays. Dissolve a dried product in the water first; its label says how."],
        },
      ),
    ],
    figures: [old.parts, ...figures, away, water],
    from: [formula],
    notes,
    cautions: formulaCautions(formula),
  });
}

function signed(figure: Figure): Cell {
  const cell = figureCell(figure);
  return dec(figure.value).gt(0) ? { ...cell, text: `+${cell.text}` } : cell;
}
