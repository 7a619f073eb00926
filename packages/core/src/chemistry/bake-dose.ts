import { type Figure, given } from "../figure/figure.ts";
import { type Published, publish } from "../figure/graph.ts";
import type { Outcome } from "../figure/problem.ts";
import { definition } from "../figure/source.ts";
import type { Baked } from "./baking.ts";
import type { Weighed } from "./carried.ts";
import { convert, type Swapped } from "./convert.ts";
import { grams } from "./named.ts";

/** A dose of an alkaline product and the baked salt that takes its place. */
export interface BakedDose {
  readonly wanted: Figure;
  readonly swapped: Swapped;
}

/**
 * How much baked salt meets a dose of an alkaline product, alkalinity M held; problems as in `convert`.
 *
 * @param wanted - the product that the formula names, and g of it
 * @example bakeDose(bakedSalt({ salt: "NaHCO3", before: 500, after: 330 }).value, { name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: "40" }).value.swapped.amounts.map(shown) // => ["41.85 g"]
 */
export function bakeDose(baked: Baked, wanted: Weighed): Outcome<Published<BakedDose>> {
  const to = { name: "the baked salt", composition: baked.composition };
  const swapped = convert({ from: wanted, to: [to], hold: "M" });
  if (!swapped.ok) return swapped;
  const dose = given(grams("baking.wanted", `${wanted.name} asked for`), wanted.mass, "the formula", definition);
  return publish({ wanted: dose, swapped: swapped.value }, swapped.notes);
}
