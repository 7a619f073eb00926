import { exact, type Figure, worked } from "../figure/figure.ts";
import { type Published, publish } from "../figure/graph.ts";
import { note, type Outcome, problem, refuse } from "../figure/problem.ts";
import { definition } from "../figure/source.ts";
import { type DecimalInput, dec, fixedText } from "../number/decimal.ts";
import type { BaumeName } from "./baume.ts";
import { type CommonStockWish, commonStock } from "./common-stock.ts";
import { named } from "./named.ts";
import { completed, type Recipe } from "./recipe.ts";

/** What a stock solution is to serve for, and where it is made. */
export interface StockWish extends CommonStockWish {
  /** °C where it is made */
  readonly temperature: DecimalInput;
  readonly scale: BaumeName;
}

/** A stock solution that brings a salt into each load by a weight that the scale can tell. */
export interface Stock {
  /** How to make the stock. */
  readonly recipe: Recipe;
  /** g of stock for one load, as the scale shows it */
  readonly perLoad: Figure;
  /** g of water that comes into a load with it */
  readonly water: Figure;
  /** whole loads that it is enough for */
  readonly lasts: Figure;
  /** % that weighing the dose may be off, half a division either way */
  readonly error: Figure;
  /** % that weighing the salts dry may be off at most, half a division either way */
  readonly dryError: Figure;
}

/** A weaker stock is no way to weigh, % of products by mass. */
const WEAKEST = "0.1";

/**
 * One stock solution of all the salts of a load, and all about it: the smallest that weighs within the tolerance.
 *
 * Problems: `stock.too-weak`, and those of `commonStock` and `completed`.
 * @example shown(severalStock({ products: [{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: 8 }], scales: [{ division: 1 }], tolerance: 1, loads: 20, storage: 4, temperature: 20, scale: "145" }).value.perLoad) // => "130 g"
 */
export function severalStock(wish: StockWish): Outcome<Published<Stock>> {
  const products = wish.products.filter(({ mass }) => !dec(mass).isZero());
  const parts = products.map((product, index) =>
    named(`stock.part.${index + 1}`, `${product.name} for a load`, "g", product.mass, "the formula"),
  );
  const common = commonStock({ ...wish, products, on: parts });
  if (!common.ok) return common;
  const { perLoad, lasts, amounts, water, mass, strength, brought, composition } = common.value;
  if (dec(strength.value).lt(WEAKEST)) {
    return refuse(problem("stock.too-weak", [], { strength: fixedText(strength.value, 3), weakest: WEAKEST }));
  }
  const division = wish.scales.map((one) => dec(one.division)).reduce((a, b) => (a.lt(b) ? a : b));
  const mixed = { products, amounts, water, mass, composition, compositionOn: [...amounts, water] };
  const recipe = completed(mixed, { ...wish, division });
  if (!recipe.ok) return recipe;
  const error = (id: string, label: string, masses: readonly Figure[]): Figure =>
    worked(
      { id, label, unit: "%", places: 2 },
      "100 * division / 2 / min(masses)",
      { division: named("stock.division", "division of the scale", "g", division, "the scale"), masses },
      definition,
    );
  const dryError = error("stock.dry-error", "off when weighed dry, at most", parts);
  const stock = {
    recipe: recipe.value,
    perLoad,
    water: brought,
    lasts,
    error: error("stock.error", "off when weighed as stock", [perLoad]),
    dryError,
  };
  const needless = exact(dryError).lte(wish.tolerance) ? [note("stock.not-needed", [], {})] : [];
  return publish(stock, [...needless, ...recipe.notes]);
}
