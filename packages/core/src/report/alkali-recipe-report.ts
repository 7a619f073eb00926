import { shownUnit } from "../batch/weighing.ts";
import type { Recipe } from "../chemistry/recipe.ts";
import type { RoundedRecipe } from "../chemistry/rounded-recipe.ts";
import type { Clarity, Solubility } from "../chemistry/solubility.ts";
import type { Figure } from "../figure/figure.ts";
import type { Published } from "../figure/graph.ts";
import { measureText, type UnitSystem } from "../figure/in-system.ts";
import type { Note } from "../figure/problem.ts";
import { dec } from "../number/decimal.ts";
import { alkaliReport, doubt, doubtLines, phOfSolution, strengthFigures } from "./alkali-blocks.ts";
import { figureBlock, listing, numberColumn, row, section, table, wordColumn } from "./build.ts";
import type { Report, Section, Table } from "./schema.ts";
import { alkalinityEnds, measureCell, weightCell } from "./show.ts";

/** How a solution is told: under which command and title, and in which units. */
export interface RecipeTelling {
  readonly command: string;
  readonly title: string;
  /** Unit that the division of the scale is written in; g unless stated. */
  readonly divisionUnit?: string;
  readonly units?: UnitSystem;
  /** Sections that go before those of the recipe, and their figures. */
  readonly first?: readonly Section[];
  readonly figures?: readonly Figure[];
}

/**
 * Tells how to make a solution and all about it: weights, strength in every measure, clarity, pH, limits and cautions.
 *
 * @example recipeReport(makeUp({ products: [{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, parts: 1 }], ratioBy: "as-weighed", target: { measure: "mass-percent", value: "10" }, amount: { grams: 1000 }, temperature: 20, scale: "145" }).value, { command: "alkali make", title: "Soda, 10 %" }, []).title // => "Soda, 10 %"
 */
export function recipeReport(recipe: Published<Recipe>, telling: RecipeTelling, notes: readonly Note[]): Report {
  const { units = "metric" } = telling;
  const { products, weighed, byHydrometer, made, kept, strength } = recipe;
  const reading = byHydrometer === undefined ? [] : [byHydrometer];
  const amount = [recipe.mass, ...(recipe.volume === undefined ? [] : [recipe.volume])];
  const strengths = strengthFigures(strength);
  const inAll = figureBlock([...amount, weighed.strength], units);
  const told = {
    command: telling.command,
    title: telling.title,
    main: "weigh",
    sections: [
      ...(telling.first ?? []),
      section("weigh", "What to weigh", weighTable(weighed, telling), inAll),
      section("strength", "The solution in every measure", figureBlock(strengths, units), [
        alkalinityEnds,
        ...doubtLines([...reading, ...strengths], units),
      ]),
      section("clarity", "Does it dissolve, and stay clear", clarityTable(made, kept, units)),
      phSection(strength.ph, units),
    ],
    figures: [
      ...(telling.figures ?? []),
      ...recipe.amounts,
      recipe.water,
      ...amount,
      ...weighed.amounts,
      weighed.water,
      weighed.total,
      weighed.strength,
      ...strengths,
      ...reading,
      ...(strength.ph ? [strength.ph] : []),
      ...[made, kept].flatMap((one) => (one ? [one.taken] : [])),
    ],
    from: [recipe],
    units,
    notes: notes.filter(({ code }) => code !== "ph.of-the-solution"),
  };
  const { composition } = recipe;
  return alkaliReport(told, [composition], [...products.map((product) => product.composition), composition]);
}

function weighTable({ amounts, water, total, division }: RoundedRecipe, { divisionUnit }: RecipeTelling): Table {
  const unit = shownUnit(divisionUnit ?? "g");
  const line = (figure: Figure, role: "item" | "total" = "item") =>
    row([figure.label, weightCell(figure, unit, division)], role);
  const poured = water.value === "0" ? [] : [line(water)];
  return table(
    "weigh",
    [wordColumn("product", "product"), numberColumn("mass", `weigh, ${unit}`)],
    [...amounts.map((figure) => line(figure)), ...poured, line(total, "total")],
  );
}

const verdicts: Readonly<Record<Clarity, string>> = {
  clear: "clear",
  doubtful: "doubtful: crystals may grow",
  crystals: "no: past its limit",
  "not known": "not known: try a little",
};

function clarityTable(made: Solubility | undefined, kept: Solubility | undefined, units: UnitSystem): Table {
  const asked = [
    { when: "when made", solubility: made },
    { when: "where it is kept", solubility: kept },
  ].flatMap(({ when, solubility }) => (solubility === undefined ? [] : [{ ...solubility, when }]));
  const warmth = (value: Solubility["temperature"]) =>
    measureText({ value, unit: "°C", places: dec(value).decimalPlaces() }, units);
  return listing("clarity", asked, [
    [wordColumn("when", "when"), ({ when, temperature }) => `${when}, ${warmth(temperature)}`],
    [numberColumn("taken", "taken of the limit"), ({ taken }) => measureCell(taken)],
    [wordColumn("verdict", "verdict"), ({ verdict }) => verdicts[verdict]],
    [wordColumn("solid", "what crystallises first"), ({ solid }) => solid],
  ]);
}

/** The pH of a solution, with its doubt and whose pH it is. */
export function phSection(ph: Figure | undefined, units: UnitSystem): Section {
  if (ph === undefined) return section("ph", "pH of the solution");
  return section("ph", "pH of the solution", figureBlock([ph], units), [
    `± ${doubt(ph)}: ${ph.range?.why ?? ""}.`,
    phOfSolution,
  ]);
}
