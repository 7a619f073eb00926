import type { Nutrition } from "../batch/nutrition.ts";
import type { NutrientAmount } from "../batch/nutrition-amounts.ts";
import type { Declared } from "../batch/nutrition-declared.ts";
import type { Figure } from "../figure/figure.ts";
import { shownGrouped } from "../figure/in-system.ts";
import type { Formula } from "../formula/formula.ts";
import { ruleBooks } from "../materials/rounding-rules.ts";
import { figureBlock, listing, numberColumn, report, section, wordColumn } from "./build.ts";
import { allergenListSection, placeNames } from "./nutrition-allergens.ts";
import type { Cell, Report, Table, Telling } from "./schema.ts";
import { figureCell } from "./show.ts";

/** Tells what a noodle contains, what a label would print, and its allergens by the list of a place. */
export function nutritionReport(formula: Formula, nutrition: Nutrition, { notes, units = "metric" }: Telling): Report {
  const { rules, bowl, gain, otherProtein, declared, allergens } = nutrition;
  const per = ruleBooks[rules].per === "serving" ? "a bowl" : "100 g";
  const rounded = `As the rules of ${placeNames[rules]} round it, for ${per}`;
  return report({
    command: "nutrition",
    title: formula.name,
    main: "nutrition",
    sections: [
      section(
        "nutrition",
        "Nutrition, an estimate",
        nutritionTable(nutrition),
        figureBlock([bowl?.raw, bowl?.cooked, gain], units),
        { kind: "figures", figures: [otherProtein] },
      ),
      section("declared", rounded, declaredTable(declared.raw, declared.cooked)),
      allergenListSection(allergens),
    ],
    figures: [...Object.values(formula.graph), ...Object.values(nutrition.graph)],
    from: [nutrition, formula],
    units,
    notes,
    cautions: [
      "This is an estimate to help prepare a label, and not a label: the law of the place and an accredited laboratory decide.",
    ],
  });
}

function nutritionTable({ amounts, bowl }: Nutrition): Table {
  const column = (state: "raw" | "cooked", per: "hundred" | "bowl") => {
    const id = per === "bowl" ? `${state}-bowl` : state;
    const label = per === "bowl" ? `a ${state} bowl` : `100 g ${state}`;
    const tell = ({ [state]: least, most }: NutrientAmount) => (least[per] ? upTo(least[per], most?.[state][per]) : "");
    return [numberColumn(id, label), tell] as const;
  };
  const pers = bowl ? (["hundred", "bowl"] as const) : (["hundred"] as const);
  return listing("nutrition", amounts, [
    [wordColumn("nutrient", "nutrient"), ({ label, unit }) => `${label}, ${unit}`],
    ...pers.map((per) => column("raw", per)),
    ...pers.map((per) => column("cooked", per)),
  ]);
}

/** A figure, and up to what it may lie where that shows. */
function upTo(least: Figure, most: Figure | undefined): Cell {
  const [low, high] = [shownGrouped(least), shownGrouped(most ?? least)];
  return low === high ? figureCell(least) : { ...figureCell(least), text: `${low} to ${high}` };
}

function declaredTable(raw: readonly Declared[], cooked: readonly Declared[]): Table {
  const lines = raw.map((line, index) => ({ line, boiled: cooked[index] ?? line }));
  return listing("declared", lines, [
    [wordColumn("nutrient", "nutrient"), ({ line }) => `${line.label}, ${line.unit}`],
    [numberColumn("raw", "raw"), ({ line }) => unrounded(line)],
    [numberColumn("raw-declared", "raw declared"), ({ line }) => printed(line)],
    [numberColumn("cooked", "cooked"), ({ boiled }) => unrounded(boiled)],
    [numberColumn("cooked-declared", "cooked declared"), ({ boiled }) => printed(boiled)],
  ]);
}

function unrounded({ value, most }: Declared): Cell {
  const finer = (figure: Figure): Figure => ({ ...figure, places: figure.places + 2 });
  return upTo(finer(value), most && finer(most));
}

function printed({ text, others, between }: Declared): string {
  return text === undefined ? (between?.join(" to ") ?? "") : [text, ...others].join(" or ");
}
