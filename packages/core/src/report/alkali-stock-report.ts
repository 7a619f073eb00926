import { shownUnit } from "../batch/weighing.ts";
import type { Stock } from "../chemistry/stock.ts";
import type { Published } from "../figure/graph.ts";
import { inSystem, inUnit } from "../figure/in-system.ts";
import type { Note } from "../figure/problem.ts";
import { inWords } from "../figure/said.ts";
import { type RecipeTelling, recipeReport } from "./alkali-recipe-report.ts";
import { section } from "./build.ts";
import type { Report } from "./schema.ts";

/**
 * Tells a stock solution for weighing: what of it goes into a load, and how to make it for its keeping time.
 *
 * @example stockReport(severalStock({ products: [{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: 8 }], scales: [{ division: 1 }], tolerance: 1, loads: 20, storage: 4, temperature: 20, scale: "145" }).value, {}, []).main // => "weigh"
 */
export function stockReport(
  stock: Published<Stock>,
  telling: Pick<RecipeTelling, "divisionUnit" | "units">,
  notes: readonly Note[],
): Report {
  const { perLoad, water, lasts, error, dryError, graph } = stock;
  const recipe = { ...stock.recipe, graph };
  const { divisionUnit = "g", units = "metric" } = telling;
  const byScale = shownUnit(divisionUnit) === "oz" ? inUnit(perLoad, "oz", 2) : perLoad;
  const figures = [byScale, ...[water, lasts, error, dryError].map((figure) => inSystem(figure, units))];
  return recipeReport(
    recipe,
    {
      ...telling,
      command: "alkali stock",
      title: `Stock solution of ${inWords(recipe.products.map(({ name }) => name))}`,
      first: [
        section("load", "For each load", { kind: "figures", figures }, [
          "Stir the stock before you weigh; label it with name, strength and the day it was made.",
        ]),
      ],
      figures: [perLoad, water, lasts, error, dryError],
    },
    notes,
  );
}
