import { shownUnit } from "../batch/weighing.ts";
import type { Product } from "../chemistry/carried.ts";
import type { Stock } from "../chemistry/stock.ts";
import type { Note } from "../figure/problem.ts";
import { type RecipeTelling, recipeReport } from "./alkali-recipe-report.ts";
import { section } from "./build.ts";
import type { Report } from "./schema.ts";
import { inSystem } from "./show.ts";

/**
 * Tells a stock solution for weighing: what of it goes into a load, and how to make it for its keeping time.
 *
 * @example stockReport(severalStock({ products: [{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: 8 }], scales: [{ division: 1 }], tolerance: 1, loads: 20, storage: 4, temperature: 20, scale: "145" }).value, [{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" } }], { temperature: "20", scale: "145", division: "1" }, []).main // => "weigh"
 */
export function stockReport(
  stock: Stock,
  products: readonly Product[],
  telling: Omit<RecipeTelling, "command" | "title" | "products" | "first" | "figures">,
  notes: readonly Note[],
): Report {
  const { perLoad, water, lasts, error, dryError, recipe } = stock;
  const { divisionUnit = "g", units = "metric" } = telling;
  const byScale = inSystem(perLoad, shownUnit(divisionUnit) === "oz" ? "us" : "metric");
  return recipeReport(
    recipe,
    {
      ...telling,
      command: "alkali stock",
      title: `Stock solution of ${listed(products.map(({ name }) => name))}`,
      products,
      first: [
        section(
          "load",
          "For each load",
          { kind: "figures", figures: [byScale, inSystem(water, units), lasts, error, dryError] },
          {
            kind: "text",
            lines: ["Stir the stock before you weigh; label it with name, strength and the day it was made."],
          },
        ),
      ],
      figures: [perLoad, water, lasts, error, dryError],
    },
    notes,
  );
}

/** Names as they stand in a sentence. */
function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1) ?? ""}`;
}
