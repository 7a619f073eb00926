import { exact, type Figure, worked } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import { definition } from "../figure/source.ts";
import type { OnBases } from "../formula/blend.ts";
import type { Formula } from "../formula/formula.ts";
import { lawText, legalSalts } from "../formula/limits.ts";
import { type FormulaLine, moistureFigure } from "../formula/lines.ts";
import { carriedWater } from "../formula/water.ts";
import { fixedText } from "../number/decimal.ts";
import { upperFirst } from "./alkali-blocks.ts";
import { numberColumn, pictureBlock, report, row, section, table, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import { blendPicture, waterPicture } from "./pictures/formula-pictures.ts";
import { recordedSection } from "./recorded.ts";
import type { Block, Report, Section, Table } from "./schema.ts";
import { alkalinityEnds, figureCell, rangeLines, words } from "./show.ts";

/** Tells a formula: the parts on 100 of flour, the blend, the water, the alkali and the allergens. */
export function formulaReport(formula: Formula, notes: readonly Note[]): Report {
  const shares = formula.lines.map((line) => doughShare(line, formula.water.dough));
  const legal = legalSalts({ lines: formula.lines, dough: formula.water.dough });
  return report({
    command: "formula",
    title: formula.name,
    main: "formula",
    sections: [
      section("formula", "Formula on 100 of flour", formulaTable(formula, shares)),
      section(
        "blend",
        "Flour blend",
        ...blendBlocks(formula),
        ranges(blendShown(formula)),
        pictureBlock(blendPicture(formula)),
      ),
      section(
        "water",
        "Water",
        {
          kind: "figures",
          figures: [...(formula.referenceFactor ? [formula.referenceFactor] : []), ...formula.water.figures],
        },
        ranges(formula.water.figures),
        pictureBlock(waterPicture(formula)),
      ),
      section(
        "alkali",
        "Alkali",
        formula.alkali && { kind: "figures", figures: formula.alkali.figures },
        ranges(formula.alkali?.figures ?? []),
        formula.alkali && {
          kind: "text",
          lines: [alkalinityEnds, ...legal.map((one) => `${upperFirst(lawText(one))}.`)],
        },
      ),
      recordedSection(formula),
      allergenSection(formula),
    ],
    figures: [
      ...Object.values(formula.graph),
      ...shares,
      ...Object.values(wholeDough(formula, shares)),
      ...legal.map(({ figure }) => figure),
    ],
    from: [formula],
    notes,
    cautions: formulaCautions(formula),
  });
}

/** Lines about what is not exact. */
function ranges(figures: readonly Figure[]): Block {
  return { kind: "text", lines: rangeLines(figures) };
}

function blendShown({ blend }: Formula): readonly Figure[] {
  const { protein, glutenProtein, moisture } = blend;
  return [protein?.at14, glutenProtein?.at14, moisture].filter((figure) => figure !== undefined);
}

function doughShare(line: FormulaLine, dough: Figure): Figure {
  return worked({
    id: `${line.id}.dough-share`,
    label: `${line.name}, share of the dough`,
    unit: "% of dough",
    places: 2,
    formula: "100 * parts / dough",
    from: { parts: line.parts, dough },
    sources: [definition],
  });
}

function formulaTable(formula: Formula, shares: readonly Figure[]): Table {
  const columns = [
    wordColumn("ingredient", "ingredient"),
    numberColumn("parts", "% of flour"),
    numberColumn("dough-share", "% of dough"),
    numberColumn("water", "water brought"),
  ];
  const rows = formula.lines.map((line, index) => {
    const share = shares[index];
    return row([
      words(line.name),
      figureCell(line.parts),
      share ? figureCell(share) : words(""),
      figureCell(line.role === "water" ? line.parts : carriedWater(line)),
    ]);
  });
  const { dough } = formula.water;
  const { whole, water } = wholeDough(formula, shares);
  const total = row([words("dough"), figureCell(dough), figureCell(whole), figureCell(water)], "total");
  const dusting = formula.dusting;
  const aside = dusting
    ? [
        row(
          [words(`${dusting.name} (dusting, not in the dough)`), figureCell(dusting.parts), words(""), words("")],
          "aside",
        ),
      ]
    : [];
  return table("formula", columns, [...rows, total, ...aside]);
}

/** The sums of the formula table. */
function wholeDough(formula: Formula, shares: readonly Figure[]): { readonly whole: Figure; readonly water: Figure } {
  const { flour, added } = formula.water;
  const whole = worked({
    id: "dough.share",
    label: "whole dough",
    unit: "% of dough",
    places: 2,
    formula: "sum(share)",
    from: { share: shares },
    sources: [definition],
  });
  const water = worked({
    id: "dough.water-parts",
    label: "all water",
    unit: "% of flour",
    places: 2,
    formula: "flour + added",
    from: { flour, added },
    sources: [definition],
  });
  return { whole, water };
}

function blendBlocks(formula: Formula): readonly (Block | undefined)[] {
  const { blend } = formula;
  const { lines } = formula;
  const flours = lines.filter((line) => line.role === "flour");
  const perFlour =
    flours.length < 2
      ? undefined
      : table(
          "flours",
          [
            wordColumn("flour", "flour"),
            numberColumn("share", "share %"),
            numberColumn("moisture", "moisture %"),
            numberColumn("protein", "protein % as is"),
            numberColumn("factor", "N factor"),
            numberColumn("ash", "ash % as is"),
          ],
          flours.map((line) => {
            const { protein, ash } = line.material;
            return row([
              words(line.name),
              figureCell(line.parts),
              figureCell(moistureFigure(line)),
              protein ? { text: fixedText(protein.value, 2), value: protein.value, unit: "%" } : words("not stated"),
              protein?.nitrogenFactor
                ? { text: fixedText(protein.nitrogenFactor, 2), value: protein.nitrogenFactor, unit: "" }
                : words("not stated"),
              ash ? { text: fixedText(ash, 2), value: ash, unit: "%" } : words("not stated"),
            ]);
          }),
        );
  const bases = table(
    "blend",
    [
      wordColumn("figure", "blend"),
      numberColumn("as-is", "% as is"),
      numberColumn("dry", "% dry"),
      numberColumn("14", "% at 14 % mb"),
    ],
    [
      ...basesRow("protein (N × 5.7)", blend.protein),
      ...basesRow("of it gluten-forming", blend.glutenProtein),
      ...basesRow("ash", blend.ash),
    ],
  );
  const { otherProtein: other } = blend;
  const rest = [blend.moisture, other && exact(other).isZero() ? undefined : other, blend.wholegrain, blend.price];
  return [
    perFlour,
    bases,
    { kind: "figures", figures: rest.filter((figure): figure is Figure => figure !== undefined) },
  ];
}

function basesRow(label: string, bases: OnBases | undefined): Table["rows"] {
  if (bases === undefined) return [];
  return [row([words(label), figureCell(bases.asIs), figureCell(bases.dry), figureCell(bases.at14)])];
}

/** What the dough contains, what the supplier has to be asked, and what nobody stated. */
export function allergenSection(formula: Formula): Section {
  const { allergens, allergensPossible, allergensUnknown } = formula;
  const possible = allergensPossible.filter((allergen) => !allergens.includes(allergen));
  const nothing = allergensUnknown.length > 0 ? "none that is known of" : "none of the allergens known here";
  const lines = [
    `Contains: ${allergens.length === 0 ? nothing : allergens.join(", ")}.`,
    ...(possible.length > 0 ? [`Depends on the supplier, ask for the certificate: ${possible.join(", ")}.`] : []),
    ...(allergensUnknown.length > 0
      ? [`Unknown, and not to be taken as free of any: ${allergensUnknown.join(", ")}. Ask the supplier.`]
      : []),
    "The label of each product and local law decide.",
  ];
  return section("allergens", "Allergens", { kind: "text", lines });
}
