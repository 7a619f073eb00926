import { exact, type Figure } from "../figure/figure.ts";
import type { UnitSystem } from "../figure/in-system.ts";
import { classedFlours } from "../formula/classes.ts";
import type { Formula } from "../formula/formula.ts";
import { lawText } from "../formula/limits.ts";
import { figureBlock, listing, numberColumn, pictureBlock, report, row, section, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import { classSection } from "./class-blocks.ts";
import { blendPicture, waterPicture } from "./pictures/formula-pictures.ts";
import { recordedSection } from "./recorded.ts";
import type { Block, Cell, Report, Section, Table, Telling } from "./schema.ts";
import { alkalinityEnds, capital, cellOr, figureCell, numberCell, rangeLines } from "./show.ts";

/** Tells a formula: the parts on 100 of flour, the blend, the water, the alkali and the allergens. */
export function formulaReport(formula: Formula, { notes, units = "metric" }: Telling): Report {
  const { legal, referenceFactor, water, alkali } = formula;
  const figures = [...(referenceFactor ? [referenceFactor] : []), ...water.figures];
  const ofAlkali = alkali?.figures ?? [];
  const ends = [alkalinityEnds, ...legal.map((one) => `${capital(lawText(one))}.`)];
  return report({
    command: "formula",
    title: formula.name,
    main: "formula",
    sections: [
      section("formula", "Formula on 100 of flour", formulaTable(formula)),
      section(
        "blend",
        "Flour blend",
        ...blendBlocks(formula, units),
        rangeLines(blendShown(formula)),
        pictureBlock(blendPicture(formula)),
      ),
      section(
        "water",
        "Water",
        { kind: "figures", figures },
        rangeLines(water.figures),
        pictureBlock(waterPicture(formula)),
      ),
      section("alkali", "Alkali", { kind: "figures", figures: ofAlkali }, rangeLines(ofAlkali), alkali && ends),
      classSection(classedFlours(formula)),
      recordedSection(formula),
      allergenSection(formula),
    ],
    figures: Object.values(formula.graph),
    units,
    notes,
    cautions: formulaCautions(formula),
  });
}

/** What is not exact of all that a formula is shown with. */
export function formulaRanges(formula: Formula): readonly string[] {
  return rangeLines([...blendShown(formula), ...formula.water.figures, ...(formula.alkali?.figures ?? [])]);
}

function blendShown({ blend }: Formula): readonly Figure[] {
  const { protein, glutenProtein, moisture } = blend;
  return [protein?.at14, glutenProtein?.at14, moisture].filter((figure) => figure !== undefined);
}

function formulaTable({ lines, table, water: { dough }, dusting }: Formula): Table {
  const { share, water } = table.whole;
  const aside = dusting && [`${dusting.name} (dusting, not in the dough)`, figureCell(dusting.parts), "", ""];
  return listing(
    "formula",
    lines.map((line, index) => ({ line, inDough: table.lines[index] })),
    [
      [wordColumn("ingredient", "ingredient"), ({ line }) => line.name],
      [numberColumn("parts", "% of flour"), ({ line }) => figureCell(line.parts)],
      [numberColumn("dough-share", "% of dough"), ({ inDough }) => cellOr(inDough?.share, "")],
      [numberColumn("water", "water brought"), ({ inDough }) => cellOr(inDough?.water, "")],
    ],
    row(["dough", figureCell(dough), figureCell(share), figureCell(water)], "total"),
    ...(aside ? [row(aside, "aside")] : []),
  );
}

function blendBlocks(formula: Formula, units: UnitSystem): readonly (Block | undefined)[] {
  const { blend, lines } = formula;
  const flours = lines.filter((line) => line.role === "flour");
  const number = (value: string | undefined, unit: string): Cell | string =>
    value ? numberCell(value, unit, 2) : "not stated";
  const perFlour = listing("flours", flours.length < 2 ? [] : flours, [
    [wordColumn("flour", "flour"), ({ name }) => name],
    [numberColumn("share", "share %"), ({ parts }) => figureCell(parts)],
    [numberColumn("moisture", "moisture %"), ({ id }) => cellOr(formula.graph[`${id}.moisture`], "")],
    [numberColumn("protein", "protein % as is"), ({ material }) => number(material.protein?.value, "%")],
    [numberColumn("factor", "N factor"), ({ material }) => number(material.protein?.nitrogenFactor, "")],
    [numberColumn("ash", "ash % as is"), ({ material }) => number(material.ash, "%")],
  ]);
  const onBases = [
    { label: "protein (N × 5.7)", bases: blend.protein },
    { label: "of it gluten-forming", bases: blend.glutenProtein },
    { label: "ash", bases: blend.ash },
  ].flatMap(({ label, bases }) => (bases ? [{ label, ...bases }] : []));
  const bases = listing("blend", onBases, [
    [wordColumn("figure", "blend"), ({ label }) => label],
    [numberColumn("as-is", "% as is"), ({ asIs }) => figureCell(asIs)],
    [numberColumn("dry", "% dry"), ({ dry }) => figureCell(dry)],
    [numberColumn("14", "% at 14 % mb"), ({ at14 }) => figureCell(at14)],
  ]);
  const { otherProtein: other } = blend;
  const rest = [blend.moisture, other && exact(other).isZero() ? undefined : other, blend.wholegrain, blend.price];
  return [perFlour, bases, figureBlock(rest, units)];
}

/** What the dough contains, what the supplier has to be asked, and what nobody stated. */
export function allergenSection(formula: Formula): Section {
  return section("allergens", "Allergens", allergenLines(formula));
}

/** The same line by line. */
export function allergenLines(formula: Formula): readonly string[] {
  const { allergens, allergensPossible, allergensUnknown } = formula;
  const possible = allergensPossible.filter((allergen) => !allergens.includes(allergen));
  const nothing = allergensUnknown.length > 0 ? "not stated" : "none of the allergens known here";
  return [
    `Contains: ${allergens.length === 0 ? nothing : allergens.join(", ")}.`,
    ...(possible.length > 0 ? [`Depends on the supplier, ask for the certificate: ${possible.join(", ")}.`] : []),
    ...(allergensUnknown.length > 0
      ? [`Not stated, and not to be taken as free of any: ${allergensUnknown.join(", ")}. Ask the supplier.`]
      : []),
    "The label of each product and local law decide.",
  ];
}
