import type { Composition } from "../chemistry/composition.ts";
import { isChloride, sharesOf, speciesOf } from "../chemistry/composition.ts";
import { atomicWeightSource } from "../chemistry/elements.ts";
import type { SpeciesName } from "../chemistry/species.ts";
import { type Figure, given, summed, worked } from "../figure/figure.ts";
import { definition } from "../figure/source.ts";
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
  const salts = sharesOf(composition).map(([salt]) => salt);
  return worked(
    { id: `${product.id}.${what}`, label: `alkalinity ${end} of ${product.name}`, unit: "meq/g", places: 4 },
    salts.length === 0 ? "0" : "10 * sum(content * equivalents / mass)",
    salts.length === 0
      ? {}
      : {
          content: salts.map((salt) => contentFigure(product, salt)),
          equivalents: salts.map((salt) => equivalentsFigure(salt, end)),
          mass: salts.map(molarMassFigure),
        },
    product.material.figureSources.composition,
    atomicWeightSource,
  );
}

function equivalentsFigure(salt: SpeciesName, end: "M" | "P"): Figure {
  return given(
    {
      id: `salt.${salt}.equivalents-${end.toLowerCase()}`,
      label: `equivalents of ${salt} to the end of ${end === "M" ? "bicarbonate" : "carbonate"}`,
      unit: "",
      places: 0,
    },
    speciesOf(salt)[`equivalents${end}`],
    "definition",
    definition,
  );
}

function molarMassFigure(salt: SpeciesName): Figure {
  return given(
    { id: `salt.${salt}.molar-mass`, label: `molar mass of ${salt}`, unit: "g/mol", places: 3 },
    speciesOf(salt).molarMass,
    "atomic weights",
    atomicWeightSource,
  );
}
