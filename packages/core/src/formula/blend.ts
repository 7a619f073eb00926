import { type Figure, type Range, worked } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import { definition, massBalance, type Source } from "../figure/source.ts";
import type { Allergen } from "../materials/allergens.ts";
import { basisRule, dryRatio, flourBasis } from "../materials/moisture.ts";
import { flourFactor } from "../materials/nitrogen.ts";
import { dec } from "../number/decimal.ts";
import { blendPrice } from "./blend-price.ts";
import { ashFigure, type ProteinFigures, proteinFigures, wholegrainFigure } from "./flour-figures.ts";
import { type FormulaLine, moistureFigure } from "./line.ts";
import { basisRange, sumRange, type Term } from "./ranges.ts";
import { whole } from "./whole.ts";

/** Nitrogen factor that blends are stated on, as flour specifications are. */
export const blendFactor = flourFactor;

const flourRule: Source = {
  cite: "USDA commodity requirements A-A-20126F, section 6.3, note 8: flour protein is nitrogen × 5.7",
  standing: "read",
};

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
  readonly figures: readonly Figure[];
  readonly notes: readonly Note[];
}

/** One quantity as is, dry and at 14 % moisture. */
export interface OnBases {
  readonly asIs: Figure;
  readonly dry: Figure;
  readonly at14: Figure;
}

/**
 * Mixes the flours as is, and states the blend as is, dry and at 14 % moisture.
 *
 * The figures at a moisture are derived from the mixed protein and the mixed moisture, never by mixing converted figures.
 * Protein is brought to N × 5.7 flour by flour.
 */
export function mixFlours(flours: readonly FormulaLine[]): Blend {
  const share = flours.map((line) => line.parts);
  const moistures = flours.map(moistureFigure);
  const mixedMoisture = worked(
    { id: "blend.moisture", label: "moisture of the blend", unit: "%", places: 2 },
    "sum(share * moisture) / 100",
    { share, moisture: moistures },
    massBalance,
  );
  const terms = flours.map(
    ({ parts }, index): Term => ({
      weight: () => dec(parts.value).div(100),
      figure: moistures[index] ?? mixedMoisture,
    }),
  );
  const moisture = sumRange(mixedMoisture, terms, "moisture of the flours");
  const asIs = terms.filter((_, index) => flours.slice(index, index + 1).some(isOpenAsIs));
  const why = "protein of the flours, and moisture of those with protein stated as is";
  const wet = { moisture, open: sumRange(mixedMoisture, asIs, why).range };
  const notes: Note[] = [];
  const proteins = flours.map((line) => proteinFigures(line, notes));
  const ashes = flours.map((line) => ashFigure(line, notes));
  const protein = proteinOf(flours, share, proteins, () => true, wet, "blend.protein", "protein");
  const gluten = proteinOf(
    flours,
    share,
    proteins,
    (line) => line.material.glutenForming,
    wet,
    "blend.gluten-protein",
    "gluten-forming protein",
  );
  const ashFigures = whole(ashes);
  const ash = ashFigures && onBases("blend.ash", "ash", mixedAsh(share, ashFigures), { moisture }, []);
  const other =
    protein &&
    gluten &&
    worked(
      { id: "blend.other-protein.14", label: "protein of the other flours at 14 % mb", unit: "%", places: 2 },
      "all - gluten",
      { all: protein.at14, gluten: gluten.at14 },
      definition,
    );
  const wholegrain = worked(
    { id: "blend.wholegrain", label: "wholegrain share", unit: "% of flour", places: 1 },
    "sum(share * whole)",
    { share, whole: flours.map(wholegrainFigure) },
    definition,
  );
  const price = blendPrice(flours, share);
  const groups = [protein, gluten, ash].flatMap((group) => (group ? [group.asIs, group.dry, group.at14] : []));
  return {
    moisture,
    ...(protein && { protein }),
    ...(gluten && { glutenProtein: gluten }),
    ...(other && { otherProtein: other }),
    ...(ash && { ash }),
    wholegrain,
    ...(price && { price: price.figure, currency: price.currency }),
    allergens: [...new Set(flours.flatMap((line) => line.material.allergens))],
    figures: [moisture, ...groups, ...(other ? [other] : []), wholegrain, ...(price?.figures ?? [])],
    notes,
  };
}

/** Protein as is, off a label say, tells the less of the dry matter the drier the flour is. */
export function isOpenAsIs({ material }: Pick<FormulaLine, "material">): boolean {
  return material.stated.protein?.basis.kind === "as is" && material.ranges?.protein !== undefined;
}

function proteinOf(
  flours: readonly FormulaLine[],
  share: readonly Figure[],
  proteins: readonly (ProteinFigures | undefined)[],
  counts: (line: FormulaLine) => boolean,
  wet: Wet,
  id: string,
  label: string,
): OnBases | undefined {
  const chosen = flours.flatMap((line, index) => {
    const part = share[index];
    return counts(line) && part !== undefined ? [{ part, protein: proteins[index] }] : [];
  });
  const stated = whole(chosen.map(({ protein }) => protein));
  if (stated === undefined) return undefined;
  const asIs = worked(
    { id: `${id}.as-is`, label: `${label} as is`, unit: "%", places: 2 },
    `sum(share * protein * ${blendFactor} / factor) / 100`,
    {
      share: chosen.map(({ part }) => part),
      protein: stated.map(({ value }) => value),
      factor: stated.map(({ factor }) => factor),
    },
    massBalance,
    flourRule,
  );
  const terms = chosen.flatMap(({ part, protein }) =>
    protein === undefined
      ? []
      : [
          {
            weight: () => dec(part.value).times(blendFactor).div(protein.factor.value).div(100),
            figure: protein.value,
          },
        ],
  );
  const ranged = sumRange(asIs, terms, "protein of the flours, their moisture as shown");
  return onBases(id, label, ranged, wet, [flourRule]);
}

function mixedAsh(share: readonly Figure[], ash: readonly Figure[]): Figure {
  return worked(
    { id: "blend.ash.as-is", label: "ash as is", unit: "%", places: 3 },
    "sum(share * ash) / 100",
    { share, ash },
    massBalance,
  );
}

/** The moisture of the blend, and the range of it that its protein as is does not depend on. */
interface Wet {
  readonly moisture: Figure;
  readonly open?: Range | undefined;
}

function onBases(
  id: string,
  label: string,
  asIs: Figure,
  { moisture, open }: Wet,
  sources: readonly Source[],
): OnBases {
  const { unit, places } = asIs;
  const dry = worked(
    { id: `${id}.dry`, label: `${label} dry`, unit, places },
    `asIs * ${dryRatio("moisture", "0")}`,
    { asIs, moisture },
    basisRule,
    ...sources,
  );
  const at14 = worked(
    { id: `${id}.14`, label: `${label} at ${flourBasis.value} % mb`, unit, places },
    `asIs * ${dryRatio("moisture", flourBasis.value)}`,
    { asIs, moisture },
    basisRule,
    flourBasis.source,
    ...sources,
  );
  return { asIs, dry: basisRange(dry, asIs, moisture, open), at14: basisRange(at14, asIs, moisture, open) };
}
