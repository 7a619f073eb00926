import { type Figure, worked } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import { definition } from "../figure/source.ts";
import type { Allergen } from "../materials/allergens.ts";
import { flourBasis } from "../materials/moisture.ts";
import { ashFigure, proteinFigures, wholegrainFigure } from "./flour-figures.ts";
import { type FormulaLine, inUse } from "./line.ts";
import { moistureFigure } from "./made-of.ts";
import { type MixedFlour, mix } from "./mix.ts";
import { percent } from "./naming.ts";
import { priceFigure } from "./prices.ts";

/** What the flours come to when mixed. Percentages are of the blend. */
export interface Blend {
  readonly moisture: Figure;
  /** Protein as N × 5.7, where every flour states its protein. */
  readonly protein?: OnBases;
  /** The part of the protein that comes from gluten-forming flours. */
  readonly glutenProtein?: OnBases;
  readonly otherProtein?: Figure;
  readonly ash?: OnBases;
  readonly wholegrain: Figure;
  readonly price?: Figure;
  readonly currency?: string;
  readonly allergens: readonly Allergen[];
  readonly notes: readonly Note[];
}

/** One quantity as is, dry and at 14 % moisture. */
export interface OnBases {
  readonly asIs: Figure;
  readonly dry: Figure;
  readonly at14: Figure;
}

/**
 * Mixes the flours as is, and states the blend as is, dry and at 14 % moisture. Protein is brought to N × 5.7 flour by flour.
 */
export function mixFlours(flours: readonly FormulaLine[]): Blend {
  const notes: Note[] = [];
  const mixture = mix(flours.map((line) => flourFigures(line, flours, notes)));
  const { moisture, wholegrain, price } = mixture;
  const [protein, gluten, ash] = [mixture.protein, mixture.gluten, mixture.ash].map(
    (held): OnBases | undefined => held && { asIs: held.asIs, dry: held.at("0"), at14: held.at(flourBasis.value) },
  );
  const other =
    protein &&
    gluten &&
    worked(
      percent("blend.other-protein.14", "protein of the other flours at 14 % mb"),
      "all - gluten",
      { all: protein.at14, gluten: gluten.at14 },
      definition,
    );
  const [currency] = flours.flatMap(({ material }) => material.price?.currency ?? []);
  return {
    moisture,
    ...(protein && { protein }),
    ...(gluten && { glutenProtein: gluten }),
    ...(other && { otherProtein: other }),
    ...(ash && { ash }),
    wholegrain,
    ...(price && currency !== undefined && { price, currency }),
    allergens: [...new Set(inUse(flours).flatMap(({ material }) => material.allergens))],
    notes,
  };
}

/** A flour as it is mixed, by what is known of its material; what is not known is told in notes. */
export function flourFigures(line: FormulaLine, flours: readonly FormulaLine[], notes: Note[]): MixedFlour {
  const { parts, material } = line;
  const protein = proteinFigures(line, notes);
  return {
    share: parts,
    moisture: moistureFigure(line),
    protein,
    gluten: material.glutenForming ? protein : "none",
    ash: ashFigure(line, notes),
    wholegrain: wholegrainFigure(line),
    price: priceFigure(line, flours),
    // Protein as is, off a label say, tells the less of the dry matter the drier the flour is.
    openAsIs: material.stated.protein?.basis.kind === "as is" && material.ranges?.protein !== undefined,
  };
}
