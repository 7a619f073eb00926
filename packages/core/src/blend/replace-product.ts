import { asFigure, exact, type Figure, named, worked } from "../figure/figure.ts";
import { frozen } from "../figure/frozen.ts";
import { type Published, publish } from "../figure/graph.ts";
import { type Outcome, problem, refuse } from "../figure/problem.ts";
import { fromSpec, massBalance, type Source } from "../figure/source.ts";
import { percent } from "../formula/naming.ts";
import type { DecimalText } from "../number/decimal.ts";
import { driedEgg, wholeEgg } from "./water-sources.ts";

/** A product that can stand in for another by what it holds, % of its mass. */
export interface ActiveProduct {
  readonly name: string;
  /** What has to stay the same: dry egg, anhydrous salt, sodium chloride. */
  readonly active: DecimalText | Figure;
  readonly water: DecimalText | Figure;
  readonly source?: Source;
}

/** The product to weigh in, and the water that has to be added (below zero: taken away) with it. */
export interface Replacement {
  readonly mass: Figure;
  readonly water: Figure;
}

/** Raw whole egg: 76.15 % water. */
export const rawWholeEgg: ActiveProduct = frozen({
  name: "whole egg",
  active: "23.85",
  water: "76.15",
  source: wholeEgg,
});
/** Dried whole egg: 2.78 % water. */
export const driedWholeEgg: ActiveProduct = frozen({
  name: "dried whole egg",
  active: "97.22",
  water: "2.78",
  source: driedEgg,
});

/**
 * Replaces a product by another that brings the same active mass, and settles the water: whole egg by dried egg and water,
 * a hydrate by the anhydrous salt, coarse salt by brine.
 *
 * Masses g, contents % of the product. Problems: `replace.active`, `replace.mass`.
 * Source: mass balance on the composition of the two products.
 *
 * @example shown(replaceProduct("100", rawWholeEgg, driedWholeEgg).value.mass) // => "24.5 g"
 */
export function replaceProduct(
  mass: DecimalText | Figure,
  old: ActiveProduct,
  fresh: ActiveProduct,
): Outcome<Published<Replacement>> {
  const content = (product: ActiveProduct, what: "active" | "water", id: string): Figure =>
    asFigure(
      percent(`replace.${id}.${what}`, `${what === "active" ? "active share" : "water"} of ${product.name}`),
      product[what],
      product.source === undefined ? "the spec" : "table value",
      product.source ?? fromSpec,
    );
  const [oldActive, freshActive] = [content(old, "active", "old"), content(fresh, "active", "new")];
  if (!exact(freshActive).gt(0) || !exact(oldActive).gt(0)) return refuse(problem("replace.active", ["active"], {}));
  const grams = named("g", 1);
  const oldMass = asFigure(grams("replace.old", `mass of ${old.name}`), mass, "the spec", fromSpec);
  if (exact(oldMass).lt(0)) return refuse(problem("replace.mass", ["mass"], { mass: oldMass.value }));
  const newMass = worked(
    grams("replace.new", `mass of ${fresh.name}`),
    "mass * before / after",
    { mass: oldMass, before: oldActive, after: freshActive },
    massBalance,
  );
  const [before, after] = [content(old, "water", "old"), content(fresh, "water", "new")];
  const water = worked(
    grams("replace.water", "water to add with it"),
    "(mass * before - fresh * after) / 100",
    { mass: oldMass, before, fresh: newMass, after },
    massBalance,
  );
  return publish({ mass: newMass, water });
}
