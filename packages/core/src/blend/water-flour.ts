import { type Figure, given, named, summed, worked } from "../figure/figure.ts";
import { fromSpec, massBalance, type Source } from "../figure/source.ts";
import { ofFlour, percent } from "../formula/naming.ts";
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

/** A flour with its place among those of the question, from 1: the same in every blend of an answer. */
export interface NumberedFlour extends WaterFlour {
  readonly number: number;
}

/** Water that dry gluten takes, % of it, where the kitchen has no figure of its own. */
export const glutenTakes = "150";

/** Mixed moisture of the flours other than dry gluten, whose own rule covers its moisture. */
export function mixedMoisture(id: string, flours: readonly NumberedFlour[]): Figure {
  return worked(
    percent(`water.moisture.${id}`, `moisture of the flours ${id === "before" ? "before" : "now"}`),
    flours.length === 0 ? "0" : "sum(share * moisture) / sum(share)",
    flours.length === 0 ? {} : { share: flours.map(shareOf(id)), moisture: flours.map(moistureOf(id)) },
    massBalance,
  );
}

/** The share that some flours of a blend have together. */
export function shareOfAll(id: string, what: string, flours: readonly NumberedFlour[]): Figure {
  return summed(ofFlour(`water.share-beside-gluten.${id}`, what), { share: flours.map(shareOf(id)) }, massBalance);
}

/** Water that flours take by what is known of each, % of all flour. */
export function waterTaken(
  naming: { readonly id: string; readonly label: string },
  blend: string,
  flours: readonly NumberedFlour[],
  ...sources: readonly Source[]
): Figure {
  return worked(
    { ...naming, unit: "% of flour", places: 2 },
    flours.length === 0 ? "0" : "sum(share * water) / 100",
    flours.length === 0 ? {} : { share: flours.map(shareOf(blend)), water: flours.map(takes(blend)) },
    ...sources,
  );
}

/** Share of a flour in the blend before or in that after. */
function shareOf(blend: string): (flour: NumberedFlour) => Figure {
  const naming = named("% of flour", 1);
  return ({ name, number, share }) =>
    given(naming(`water.share.${blend}.${number}`, `share of ${name}`), share, "the blend", fromSpec);
}

function moistureOf(blend: string): (flour: NumberedFlour) => Figure {
  return ({ name, number, moisture }) => {
    const naming = percent(`water.moisture.${blend}.${number}`, `moisture of ${name}`);
    return given(naming, moisture, "the flour's figures", fromSpec);
  };
}

/** Water that a flour of the blend before or of that after takes: the kitchen's own figure, or the rule of dry gluten. */
function takes(blend: string): (flour: NumberedFlour) => Figure {
  return ({ name, number, ownWater }) => {
    const naming = named("% of it", 1)(`water.takes.${blend}.${number}`, `water ${name} takes`);
    return ownWater === undefined
      ? given(naming, glutenTakes, "the rule of dry gluten", glutenWater)
      : given(naming, ownWater.percent, "the kitchen's own figure", fromSpec);
  };
}
