import { exact, worked } from "../figure/figure.ts";
import { answer, type Outcome } from "../figure/problem.ts";
import { definition, massBalance } from "../figure/source.ts";
import { dec, sum } from "../number/decimal.ts";
import type { Weighed } from "./carried.ts";
import { mixture } from "./composition.ts";
import { named } from "./named.ts";
import { dryNote, makingNotes, type Stock, type StockWish, weighingStock } from "./stock.ts";

/** What a stock of several products in one solution is to serve for. */
export interface SeveralStockWish extends Omit<StockWish, "perLoad"> {
  /** The products that one load takes, g of each. */
  readonly products: readonly [Weighed, ...(readonly Weighed[])];
}

/**
 * One stock solution of all the alkaline products of a load; problems as in `weighingStock`.
 *
 * @example severalStock({ products: [{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: 8 }], division: 1, tolerance: 1, loadsPerDay: 4, keepingDays: 5, storage: 20, temperature: 20, scale: "145" }).ok // => true
 */
export function severalStock({ products, ...wish }: SeveralStockWish): Outcome<Stock> {
  const [first, ...others] = products;
  if (others.length === 0) return weighingStock({ ...wish, perLoad: first });
  const mass = sum(products.map((product) => dec(product.mass)));
  if (mass.lte(0)) return weighingStock({ ...wish, perLoad: { ...first, mass: 0 } });
  const name = products.map((product) => product.name).join(" and ");
  const stock = weighingStock({ ...wish, perLoad: { name, composition: mixture(products), mass } });
  if (!stock.ok) return stock;
  const [together] = stock.value.recipe.amounts;
  if (together === undefined) return stock;
  const parts = products.map((product) => named(`${product.name} for a load`, "g", product.mass, "the formula"));
  const amounts = products.map((product, index) =>
    worked({
      id: `stock.amount.${index + 1}`,
      label: product.name,
      unit: "g",
      places: 2,
      formula: "together * part / sum(parts)",
      from: { together, part: parts[index] ?? together, parts },
      sources: [massBalance],
    }),
  );
  const dryError = worked({
    id: "stock.dry-error",
    label: "off when weighed dry, at most",
    unit: "%",
    places: 2,
    formula: "100 * division / 2 / min(parts)",
    from: {
      division: named("division of the scale", "g", wish.division, "the scale"),
      parts: parts.filter((part) => exact(part).gt(0)),
    },
    sources: [definition],
  });
  const ofAll = stock.notes.filter(({ code }) => code !== "stock.made-coarsely" && code !== "stock.not-needed");
  return answer({ ...stock.value, dryError, recipe: { ...stock.value.recipe, amounts } }, [
    ...dryNote(dryError, wish),
    ...makingNotes(amounts, wish),
    ...ofAll,
  ]);
}
