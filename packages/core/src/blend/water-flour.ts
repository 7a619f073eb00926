import { type Figure, given, summed, worked } from "../figure/figure.ts";
import { fromSpec, massBalance, type Source } from "../figure/source.ts";
import { absorptionFigure } from "../formula/flour-figures.ts";
import { ofFlour, percent } from "../formula/naming.ts";
import { withRange } from "../formula/ranges.ts";
import type { DecimalText } from "../number/decimal.ts";
import { glutenWater } from "./water-sources.ts";

/** A flour as far as water goes: share, % of the blend, and moisture, % as is. */
export interface WaterFlour {
  readonly name: string;
  readonly share: DecimalText;
  readonly moisture: DecimalText;
  /** Least and greatest moisture it may have, where nobody is sure of it. */
  readonly moistureRange?: { readonly low: DecimalText; readonly high: DecimalText };
  /** Dry gluten, for which a published rule exists. */
  readonly dryGluten?: boolean;
  /** Another lot of a flour of the blend before. */
  readonly newLot?: true;
  /** The kitchen's own figure: added water that a dough of this flour alone takes, % of it, and how sure that is, ±. */
  readonly ownWater?: { readonly percent: DecimalText; readonly plusMinus: DecimalText };
}

/** The same as figures: those of one lot are the same in every blend of an answer. */
export interface WaterLine extends Pick<WaterFlour, "name" | "dryGluten" | "newLot"> {
  readonly share: Figure;
  readonly moisture: Figure;
  /** What the kitchen found that it takes. */
  readonly absorption?: Figure | undefined;
}

/** Two blends as lines: a flour of one name and the same figures is one lot in both. */
export function waterLines(...blends: readonly [before: readonly WaterFlour[], after: readonly WaterFlour[]]) {
  const lots: string[] = [];
  const numberOf = ({ name, moisture, ownWater }: WaterFlour): number => {
    const lot = JSON.stringify([name, moisture, ownWater?.percent]);
    if (!lots.includes(lot)) lots.push(lot);
    return lots.indexOf(lot) + 1;
  };
  const stated = (what: string, label: string, unit: string, value: DecimalText): Figure =>
    given({ id: `flour.${what}`, label, unit, places: 1 }, value, "the flour's figures", fromSpec);
  const [before = [], after = []] = blends.map((flours, index) =>
    flours.map((flour): WaterLine => {
      const { name, share, moisture, moistureRange, ownWater, dryGluten, newLot } = flour;
      const lot = numberOf(flour);
      const parts = stated(`${lot}.parts-${index === 0 ? "before" : "now"}`, `share of ${name}`, "% of flour", share);
      return {
        name,
        share: parts,
        moisture: withRange(
          { ...stated(`${lot}.moisture`, `moisture of ${name}`, "%", moisture), places: 2 },
          moistureRange && { ...moistureRange, why: "moisture" },
        ),
        absorption: absorptionFigure({ id: `flour.${lot}`, name, material: { absorption: ownWater } }),
        ...(dryGluten !== undefined && { dryGluten }),
        ...(newLot && { newLot }),
      };
    }),
  );
  return { before, after };
}

/** Water that dry gluten takes, % of it, where the kitchen has no figure of its own. */
export const glutenTakes = "150";

/** Mixed moisture of the flours other than dry gluten, whose own rule covers its moisture. */
export function mixedMoisture(id: "before" | "after", flours: readonly WaterLine[]): Figure {
  return worked(
    percent(`water.moisture.${id}`, `moisture of the flours ${id === "before" ? "before" : "now"}`),
    flours.length === 0 ? "0" : "sum(share * moisture) / sum(share)",
    flours.length === 0
      ? {}
      : { share: flours.map(({ share }) => share), moisture: flours.map(({ moisture }) => moisture) },
    massBalance,
  );
}

/** The share that some flours of a blend have together. */
export function shareOfAll(id: string, what: string, flours: readonly WaterLine[]): Figure {
  const share = flours.map((flour) => flour.share);
  return summed(ofFlour(`water.share-beside-gluten.${id}`, what), { share }, massBalance);
}

/** Water that flours take by what is known of each, % of all flour. */
export function waterTaken(
  naming: { readonly id: string; readonly label: string },
  flours: readonly WaterLine[],
  ...sources: readonly Source[]
): Figure {
  return worked(
    { ...naming, unit: "% of flour", places: 2 },
    flours.length === 0 ? "0" : "sum(share * water) / 100",
    flours.length === 0 ? {} : { share: flours.map(({ share }) => share), water: flours.map(takes) },
    ...sources,
  );
}

/** Water that a flour takes: the kitchen's own figure, or the rule of dry gluten. */
function takes({ absorption }: WaterLine): Figure {
  const naming = { id: "water.gluten-takes", label: "water dry gluten takes", unit: "% of it", places: 1 };
  return absorption ?? given(naming, glutenTakes, "the rule of dry gluten", glutenWater);
}
