import { type Decimal, type DecimalInput, dec } from "../number/decimal.ts";
import type { Product } from "./carried.ts";
import { anhydrousShare, type Composition, mixture } from "./composition.ts";

/** Whether the parts of a ratio are of anhydrous salts or of products as weighed. */
export type RatioBy = "anhydrous" | "as-weighed";

/** A product and its part in a ratio. */
export interface InRatio extends Product {
  readonly parts: DecimalInput;
}

/** Parts of products as weighed, from parts of their anhydrous salts where the ratio is meant so. */
export function partsAsWeighed(products: readonly InRatio[], ratioBy: RatioBy): readonly Decimal[] {
  return products.map(({ composition, parts }) =>
    ratioBy === "anhydrous" ? dec(parts).times(100).div(anhydrousShare(composition)) : dec(parts),
  );
}

/**
 * The mix of products in a ratio, by their anhydrous salts (the trade's nine to one) or as weighed.
 *
 * @param products - parts of zero or more, some above; by anhydrous salts each with some alkaline salt
 * @throws {RangeError} on parts that add up to nothing.
 * @example mixInRatio([{ name: "soda", composition: pure("Na2CO3"), parts: 9 }, { name: "potash", composition: pure("K2CO3"), parts: 1 }], "anhydrous").species.K2CO3 // => "10"
 */
export function mixInRatio(products: readonly InRatio[], ratioBy: RatioBy): Composition {
  const parts = partsAsWeighed(products, ratioBy);
  return mixture(products.map(({ composition }, index) => ({ composition, mass: parts[index] ?? 0 })));
}
