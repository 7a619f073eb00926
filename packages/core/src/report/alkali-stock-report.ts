import { shownUnit } from "../batch/weighing.ts";
import type { Product } from "../chemistry/carried.ts";
import type { Stock } from "../chemistry/stock.ts";
import type { Note } from "../figure/problem.ts";
import { type RecipeTelling, recipeReport } from "./alkali-recipe-report.ts";
import { section } from "./build.ts";
import type { Report } from "./schema.ts";
import { inSystem } from "./show.ts";

/** Tells a stock solution for weighing: what of it goes into a load, and how to make it for its keeping time. */
export function stockReport(
  stock: Stock,
  products: readonly Product[],
  telling: Omit<RecipeTelling, "command" | "title" | "products" | "first" | "figures">,
  notes: readonly Note[],
): Report {
  const { perLoad, water, error, dryError, recipe } = stock;
  const { divisionUnit = "g", units = "metric" } = telling;
  const byScale = inSystem(perLoad, shownUnit(divisionUnit) === "oz" ? "us" : "metric");
  return recipeReport(
    recipe,
    {
      ...telling,
      command: "alkali stock",
      title: `Stock solution of ${products.map(({ name }) => name).join(" and ")}`,
      products,
      first: [
        section(
          "load",
          "For each load",
          { kind: "figures", figures: [byScale, inSystem(water, units), error, dryError] },
          {
            kind: "text",
            lines: ["Stir the stock before you weigh; label it with name, strength and the day it was made."],
          },
        ),
      ],
      figures: [perLoad, water, error, dryError],
    },
    notes,
  );
}
