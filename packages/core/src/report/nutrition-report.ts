import type { Nutrition } from "../batch/nutrition.ts";
import type { NutrientAmount } from "../batch/nutrition-amounts.ts";
import type { Declared } from "../batch/nutrition-declared.ts";
import type { Figure } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { ruleBooks } from "../materials/rounding-rules.ts";
import { numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import { formulaFigures } from "./formula-report.ts";
import { allergenListSection, placeNames } from "./nutrition-allergens.ts";
import type { Cell, Report, Table } from "./schema.ts";
import { figureCell, shownGrouped, words } from "./show.ts";

/** Tells what a noodle contains, what a label would print, and its allergens by the list of a place. */
export function nutritionReport(formula: Formula, nutrition: Nutrition, notes: readonly Note[]): Report {
  const { rules, bowl, gain, otherProtein, declared, allergens, figures } = nutrition;
  const per = ruleBooks[rules.book].per === "serving" ? "a bowl" : "100 g";
  return report({
    command: "nutrition",
    title: formula.name,
    main: "nutrition",
    sections: [
      section("nutrition", "Nutrition, an estimate", nutritionTable(nutrition), {
        kind: "figures",
        figures: [...(bowl ? [bowl.raw, bowl.cooked] : []), gain, otherProtein],
      }),
      section(
        "declared",
        `As the rules of ${placeNames[rules.book]} round it, for ${per}`,
        declaredTable(declared.raw, declared.cooked),
      ),
      allergenListSection(allergens),
    ],
    figures: [...formulaFigures(formula), ...figures],
    notes,
    cautions: [
      "This is an estimate to help prepare a label, and not a label: the law of the place and an accredited laboratory decide.",
    ],
  });
}

function nutritionTable({ amounts, bowl }: Nutrition): Table {
  const columns = [
    wordColumn("nutrient", "nutrient"),
    numberColumn("raw", "100 g raw"),
    ...(bowl ? [numberColumn("raw-bowl", "a raw bowl")] : []),
    numberColumn("cooked", "100 g cooked"),
    ...(bowl ? [numberColumn("cooked-bowl", "a cooked bowl")] : []),
  ];
  const rows = amounts.map((amount) => {
    const { raw, cooked } = amount;
    const figures = [
      raw.hundred,
      ...(raw.bowl ? [raw.bowl] : []),
      cooked.hundred,
      ...(cooked.bowl ? [cooked.bowl] : []),
    ];
    return row([words(`${amount.label}, ${amount.unit}`), ...figures.map((figure) => atLeast(amount, figure))]);
  });
  return table("nutrition", columns, rows);
}

function atLeast({ missing }: Pick<NutrientAmount, "missing">, figure: Figure): Cell {
  return missing.length === 0 ? figureCell(figure) : { ...figureCell(figure), text: `≥ ${shownGrouped(figure)}` };
}

function declaredTable(raw: readonly Declared[], cooked: readonly Declared[]): Table {
  const columns = [
    wordColumn("nutrient", "nutrient"),
    numberColumn("raw", "raw"),
    numberColumn("raw-declared", "raw declared"),
    numberColumn("cooked", "cooked"),
    numberColumn("cooked-declared", "cooked declared"),
  ];
  const rows = raw.map((line, index) => {
    const boiled = cooked[index] ?? line;
    return row([
      words(`${line.label}, ${line.unit}`),
      unrounded(line),
      printed(line),
      unrounded(boiled),
      printed(boiled),
    ]);
  });
  return table("declared", columns, rows);
}

function unrounded({ value, text }: Declared): Cell {
  const finer = { ...value, places: value.places + 2 };
  return { ...figureCell(value), text: `${text === undefined ? "≥ " : ""}${shownGrouped(finer)}` };
}

function printed({ text, others }: Declared): Cell {
  return words(text === undefined ? "not known" : [text, ...others].join(" or "));
}
