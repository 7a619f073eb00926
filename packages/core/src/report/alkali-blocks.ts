import type { Carried } from "../chemistry/carried.ts";
import type { Composition } from "../chemistry/composition.ts";
import { additiveLimits, type FoodLimits, foodLimits, localCode } from "../chemistry/food-limits.ts";
import { additivesIn, cautionsFor, hazardOf } from "../chemistry/hazard.ts";
import type { Strength } from "../chemistry/strength.ts";
import type { Figure } from "../figure/figure.ts";
import { groupDigits, inSystem, type UnitSystem } from "../figure/in-system.ts";
import { note } from "../figure/problem.ts";
import { citation } from "../figure/source.ts";
import { told } from "../figure/told.ts";
import { dec } from "../number/decimal.ts";
import { listing, numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import type { Report, Section, Table } from "./schema.ts";
import { capital, figureCell, measureCell, words } from "./show.ts";

/** Said wherever a pH is shown. */
export const phOfSolution =
  "The pH is that of the solution and not of the dough: flour makes it milder, and no published figure tells by how much.";

/** All measures of a strength, as far as there are any. */
export function strengthFigures(strength: Strength): readonly Figure[] {
  const { byVolume } = strength;
  const figures = [
    strength.massPercent,
    strength.partsToWater,
    strength.molPerKilogram,
    byVolume?.density,
    byVolume?.massVolumePercent,
    byVolume?.gramsPerLitre,
    byVolume?.molPerLitre,
    strength.baume,
    strength.alkalinityM,
    strength.alkalinityP,
  ];
  return figures.filter((figure) => figure !== undefined);
}

const alkaliCarried = ["anhydrous", "alkalinityM", "alkalinityP"] as const;
const partsCarried = ["sodium", "potassium", "potassiumRatio", "bicarbonate", "hydroxide", "salt", "water"] as const;

/** Every figure of what products carry. */
export function carriedFigures(carried: Carried): readonly Figure[] {
  return [...alkaliCarried, ...partsCarried, "ph" as const].flatMap((key) => carried[key] ?? []);
}

/** What a product is made of, a share in every row. */
export function partsTable(parts: readonly Figure[], share: string): Table {
  return listing("composition", parts, [
    [wordColumn("part", "part"), ({ label }) => label],
    [numberColumn("share", share), figureCell],
  ]);
}

/** What the old and the new products bring, side by side. Rows that are nothing on both sides are left out. */
export function sideBySide(before: Carried, after: Carried, units: UnitSystem): Table {
  const rows = [...alkaliCarried, "ph" as const, ...partsCarried].flatMap((key) => {
    const [one, other] = [before[key], after[key]].map((figure) => figure && inSystem(figure, units));
    const nothing = [one, other].every((figure) => figure === undefined || dec(figure.value).isZero());
    const label = one?.label ?? other?.label;
    if (label === undefined || (nothing && key !== "alkalinityP")) return [];
    return [row([label, rangeCell(one), rangeCell(other)])];
  });
  return table(
    "brings",
    [wordColumn("what", "what it brings"), numberColumn("before", "before"), numberColumn("after", "after")],
    rows,
  );
}

/** The value of a figure with its unit, and how far it may be off. */
function rangeCell(figure: Figure | undefined): ReturnType<typeof words> {
  if (figure === undefined) return words("not known");
  const cell = measureCell(figure);
  if (figure.range === undefined) return cell;
  return { ...cell, text: `${cell.text} ± ${doubt(figure)}` };
}

/** Half the width of a range, as printed. @example doubt({ value: "11", places: 1, range: { low: "10.9", high: "11.1", why: "" } }) // => "0.10" */
export function doubt({ range, places }: Pick<Figure, "range" | "places" | "value">): string {
  if (range === undefined) return "";
  return dec(range.high)
    .minus(range.low)
    .div(2)
    .toFixed(places + 1);
}

/** How far figures may be off, those with one reason in one line. */
export function doubtLines(metric: readonly Figure[], units: UnitSystem): readonly string[] {
  const figures = metric.map((figure) => inSystem(figure, units));
  const reasons = [...new Set(figures.flatMap(({ range }) => (range === undefined ? [] : [range.why])))];
  return reasons.map((why) => {
    const alike = figures.filter(({ range }) => range?.why === why);
    const each = alike.map((figure) => `${figure.label} ± ${doubt(figure)} ${figure.unit}`);
    return `${capital(each.join("; "))}: ${why}.`;
  });
}

/**
 * A report on products: what the rule books say of them stands last, and their cautions with it.
 *
 * @param ruled - those that the rules are told of
 * @param warned - those that are cautioned of
 */
export function alkaliReport(
  { sections, notes = [], cautions = [], ...parts }: Parameters<typeof report>[0],
  ruled: readonly Composition[],
  warned = ruled,
): Report {
  return report({
    ...parts,
    sections: [...sections, ...rulesSections(ruled)],
    notes: [...notes, note("alkali.additive-limits", [], {})],
    cautions: [...cautions, ...alkaliCautions(warned)],
  });
}

/** Additive names and numbers of the salts, the limits that name them, and their hazard class. */
function rulesSections(compositions: readonly Composition[]): readonly Section[] {
  return [
    section("additives", "As food additives", additivesTable(compositions)),
    section("limits", "Limits on foods that name them", limitsTable(compositions.map(foodLimits)), [
      ...notKnownLines("on foods", compositions.map(foodLimits)),
      `${capital(localCode)}.`,
    ]),
    section("hazard", "Hazard class, by salts and strength", hazardLines(compositions)),
  ];
}

function additivesTable(compositions: readonly Composition[]): Table {
  const additives = compositions.flatMap(additivesIn);
  const once = additives.filter(({ name }, index) => additives.findIndex((one) => one.name === name) === index);
  return listing("additives", once, [
    [wordColumn("name", "name"), ({ name }) => name],
    [wordColumn("ins", "INS"), ({ ins }) => ins],
    [wordColumn("eu", "E number"), ({ eu }) => eu],
  ]);
}

/** Limits, each once, with the text it comes from. */
function limitsTable(found: readonly FoodLimits[]): Table {
  return listing(
    "limits",
    [...new Set(found.flatMap(({ limits }) => limits))],
    [
      [wordColumn("item", "what is limited"), ({ item }) => item],
      [wordColumn("limit", "limit"), ({ least, most, unit }) => limitText(least, most, unit)],
      [wordColumn("text", "text"), ({ source }) => citation(source)],
    ],
  );
}

/** Names the salts of which no limit is known here. */
function notKnownLines(where: "on foods" | "on additives", found: readonly FoodLimits[]): readonly string[] {
  const names = [...new Set(found.flatMap(({ notKnown }) => notKnown))];
  return names.length === 0 ? [] : [`Limits ${where} that name ${names.join(", ")} are not known here.`];
}

/** Limits on the products as additives and on foods, with the salts of which none is known. */
export function allLimits(compositions: readonly Composition[]): readonly [Table, ...string[]] {
  const [onThem, onFoods] = [compositions.map(additiveLimits), compositions.map(foodLimits)];
  return [
    limitsTable([...onThem, ...onFoods]),
    ...notKnownLines("on additives", onThem),
    ...notKnownLines("on foods", onFoods),
  ];
}

function limitText(least: string | undefined, most: string | undefined, unit: string): string {
  if (least === undefined) return `at most ${groupDigits(most ?? "")} ${unit}`;
  return most === undefined ? `at least ${least} ${unit}` : `${least} to ${most} ${unit}`;
}

function hazardLines(compositions: readonly Composition[]): readonly string[] {
  const hazards = compositions.map(hazardOf);
  const lines = hazards.flatMap(({ signal, statements, open }) => {
    const words = statements.map(({ code, text, because }) => `${code} ${text} (${because})`).join("; ");
    if (signal === "none") return ["Not classified at this strength by the limits of its salts.", ...open];
    return signal === "not known" ? open : [`${signal}: ${words}.`, ...open];
  });
  const sources = [...new Set(hazards.flatMap((hazard) => hazard.sources.map(citation)))];
  return [...new Set(lines), ...(sources.length === 0 ? [] : [`By ${sources.join("; ")}.`])];
}

/** The cautions of products, each once, as sentences. */
export function alkaliCautions(compositions: readonly Composition[]): readonly string[] {
  return [...new Set(compositions.flatMap(cautionsFor).map((one) => `${capital(told(one))}.`))];
}
