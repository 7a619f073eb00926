import { shownUnit } from "../batch/weighing.ts";
import type { BaumeName } from "../chemistry/baume.ts";
import type { Product } from "../chemistry/carried.ts";
import { checkByHydrometer } from "../chemistry/hydrometer-check.ts";
import { solutionPh } from "../chemistry/ph.ts";
import type { Recipe } from "../chemistry/recipe.ts";
import { coarseNotes, type RoundedRecipe, roundRecipe } from "../chemistry/rounded-recipe.ts";
import type { Clarity, Solubility } from "../chemistry/solubility.ts";
import type { Figure } from "../figure/figure.ts";
import { scoped, withOrigins } from "../figure/graph.ts";
import { type Note, note, type Outcome } from "../figure/problem.ts";
import type { DecimalText } from "../number/decimal.ts";
import {
  additiveLimitsNote,
  alkaliCautions,
  doubt,
  doubtLines,
  phOfSolution,
  rulesSections,
  strengthFigures,
} from "./alkali-blocks.ts";
import { numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import type { Report, Section, Table } from "./schema.ts";
import { alkalinityEnds, inSystem, measureCell, type UnitSystem, weightCell, words } from "./show.ts";

/** How a solution is told: under which command and title, weighed to which division, made and kept at which °C. */
export interface RecipeTelling {
  readonly command: string;
  readonly title: string;
  /** The products of the recipe, in its order. */
  readonly products: readonly Product[];
  /** g */
  readonly division: DecimalText;
  /** Unit that the division is written in; g unless stated. */
  readonly divisionUnit?: string;
  /** °C */
  readonly temperature: DecimalText;
  readonly scale: BaumeName;
  readonly units?: UnitSystem;
  /** Sections that go before those of the recipe, and their figures. */
  readonly first?: readonly Section[];
  readonly figures?: readonly Figure[];
}

/**
 * Tells how to make a solution and all about it: weights, strength in every measure, clarity, pH, limits and cautions.
 *
 * @example recipeReport(makeUp({ products: [{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, parts: 1 }], ratioBy: "as-weighed", target: { measure: "mass-percent", value: "10" }, amount: { grams: 1000 }, temperature: 20, scale: "145" }).value, { command: "alkali make", title: "Soda, 10 %", products: [{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" } }], temperature: "20", scale: "145", division: "1" }, []).title // => "Soda, 10 %"
 */
export function recipeReport(recipe: Recipe, telling: RecipeTelling, notes: readonly Note[]): Report {
  const { products, temperature, scale, units = "metric" } = telling;
  const rounded = roundRecipe(recipe, products, telling.division);
  const check = checkByHydrometer(recipe.composition, scale);
  const ph = solutionPh(recipe.composition, temperature, recipe.compositionOn);
  const reading = check.ok ? [{ ...check.value.massPercent, label: "strength by the hydrometer" }] : [];
  const clarity = clarityOf(recipe);
  const amount = [recipe.mass, ...(recipe.volume === undefined ? [] : [recipe.volume])];
  const strengths = strengthFigures(recipe.strength);
  return report({
    command: telling.command,
    title: telling.title,
    main: "weigh",
    sections: [
      ...(telling.first ?? []),
      section("weigh", "What to weigh", weighTable(rounded, telling), {
        kind: "figures",
        figures: [...amount.map((figure) => inSystem(figure, units)), rounded.strength],
      }),
      section(
        "strength",
        "The solution in every measure",
        { kind: "figures", figures: strengths },
        {
          kind: "text",
          lines: [alkalinityEnds, ...doubtLines([...reading, ...strengths])],
        },
      ),
      section("clarity", "Does it dissolve, and stay clear", clarityTable(clarity)),
      phSection(ph),
      ...rulesSections([recipe.composition]),
    ],
    figures: [
      ...withOrigins([
        ...(telling.figures ?? []),
        ...recipe.amounts,
        recipe.water,
        ...amount,
        ...rounded.amounts,
        rounded.water,
        rounded.total,
        rounded.strength,
        ...strengths,
        ...reading,
        ...(ph.ok ? [ph.value] : []),
      ]),
      ...clarity.flatMap(({ figures }) => figures),
    ],
    notes: [...coarseNotes(rounded, recipe.strength.massPercent), ...notes, ...phNotes(ph), additiveLimitsNote],
    cautions: alkaliCautions([...products.map(({ composition }) => composition), recipe.composition]),
  });
}

function weighTable({ amounts, water, total }: RoundedRecipe, { division, divisionUnit }: RecipeTelling): Table {
  const unit = shownUnit(divisionUnit ?? "g");
  const line = (figure: Figure, role: "item" | "total" = "item") =>
    row([words(figure.label), weightCell(figure, unit, division)], role);
  const poured = water.value === "0" ? [] : [line(water)];
  return table(
    "weigh",
    [wordColumn("product", "product"), numberColumn("mass", `weigh, ${unit}`)],
    [...amounts.map((figure) => line(figure)), ...poured, line(total, "total")],
  );
}

interface ClarityLine {
  readonly when: string;
  readonly solubility: Solubility;
  readonly taken: Figure;
  readonly figures: readonly Figure[];
}

const verdicts: Readonly<Record<Clarity, string>> = {
  clear: "clear",
  doubtful: "doubtful: crystals may grow",
  crystals: "no: past its limit",
  "not known": "not known: try a little",
};

function clarityOf({ made, kept }: Recipe): readonly ClarityLine[] {
  const line = (when: string, scope: string, solubility: Solubility | undefined): readonly ClarityLine[] => {
    if (solubility === undefined) return [];
    const figures = scoped(scope, withOrigins([solubility.taken]));
    return [{ when, solubility, taken: figures.at(-1) ?? solubility.taken, figures }];
  };
  return [...line("when made", "made", made), ...line("where it is kept", "kept", kept)];
}

function clarityTable(lines: readonly ClarityLine[]): Table {
  return table(
    "clarity",
    [
      wordColumn("when", "when"),
      numberColumn("taken", "taken of the limit"),
      wordColumn("verdict", "verdict"),
      wordColumn("solid", "what crystallises first"),
    ],
    lines.map(({ when, taken, solubility }) =>
      row([
        words(`${when}, ${/at (\S+ °C)/u.exec(taken.label)?.[1] ?? ""}`),
        measureCell(taken),
        words(verdicts[solubility.verdict]),
        words(solubility.solid),
      ]),
    ),
  );
}

/** The pH of a solution, with its doubt and whose pH it is. */
export function phSection(ph: Outcome<Figure>): Section {
  if (!ph.ok) return section("ph", "pH of the solution");
  const { value } = ph;
  return section(
    "ph",
    "pH of the solution",
    { kind: "figures", figures: [value] },
    {
      kind: "text",
      lines: [`± ${doubt(value)}: ${value.range?.why ?? ""}.`, phOfSolution],
    },
  );
}

/** Why there is no pH, where there is none. */
export function phNotes(ph: Outcome<Figure>): readonly Note[] {
  if (ph.ok) return ph.notes.filter(({ code }) => code !== "ph.of-the-solution");
  return ph.problems.map((problem) => note("ph.not-estimated", [], { problem }));
}
