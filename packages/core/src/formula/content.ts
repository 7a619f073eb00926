import type { Composition } from "../chemistry/composition.ts";
import { isChloride, sharesOf } from "../chemistry/composition.ts";
import { perGram, type SaltShare } from "../chemistry/salt-content.ts";
import { type Figure, summed } from "../figure/figure.ts";
import { contentFigure, type Product } from "./made-of.ts";

/** Alkaline salts without water in a product, % of it. */
export function anhydrousFigure(product: Product, composition: Composition, what = "anhydrous"): Figure {
  const salts = sharesOf(composition).flatMap(([salt]) => (isChloride(salt) ? [] : [contentFigure(product, salt)]));
  const label = `anhydrous salts in ${product.name}`;
  return summed(
    { id: `${product.id}.${what}`, label, unit: "%", places: 2, bounds: { most: "100" } },
    { content: salts },
    product.material.figureSources.composition,
  );
}

/** Alkalinity of a product to one of the two ends, meq/g. */
export function alkalinityFigure(
  product: Product,
  composition: Composition,
  end: "M" | "P",
  what = `alkalinity-${end.toLowerCase()}`,
): Figure {
  const salts = sharesOf(composition).map(([salt]): SaltShare => [salt, contentFigure(product, salt)]);
  const naming = {
    id: `${product.id}.${what}`,
    label: `alkalinity ${end} of ${product.name}`,
    unit: "meq/g",
    places: 4,
  };
  return perGram(naming, `equivalents${end}`, salts, product.material.figureSources.composition);
}
