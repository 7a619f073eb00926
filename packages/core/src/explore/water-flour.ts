import { type Figure, given, worked } from "../figure/figure.ts";
import { fromSpec, massBalance } from "../figure/source.ts";
import { type DecimalText, dec, sum } from "../number/decimal.ts";

/** A flour as far as water goes: share, % of the blend, and moisture, % as is. */
export interface WaterFlour {
  readonly name: string;
  readonly share: DecimalText;
  readonly moisture: DecimalText;
  /** Dry gluten, for which a published rule exists. */
  readonly dryGluten?: boolean;
  /** The kitchen's own figure: added water this flour takes, % of it, and how sure that is, ±. */
  readonly ownWater?: { readonly percent: DecimalText; readonly plusMinus: DecimalText };
}

/** Mixed moisture of the flours other than dry gluten, whose own rule covers its moisture. */
export function mixedMoisture(id: string, flours: readonly WaterFlour[]): Figure {
  const counted = flours.filter(({ dryGluten }) => dryGluten !== true);
  return worked({
    id: `water.moisture.${id}`,
    label: `moisture of the flours ${id === "before" ? "before" : "now"}`,
    unit: "%",
    places: 2,
    formula: counted.length === 0 ? "0" : "sum(share * moisture) / sum(share)",
    from: counted.length === 0 ? {} : { share: counted.map(shareOf(id)), moisture: counted.map(moistureOf(id)) },
    sources: [massBalance],
  });
}

export function glutenShare(id: string, flours: readonly WaterFlour[]): Figure {
  const value = sum(flours.filter(({ dryGluten }) => dryGluten === true).map(({ share }) => dec(share)));
  return given({
    id: `water.gluten.${id}`,
    label: `dry gluten ${id === "before" ? "before" : "now"}`,
    unit: "% of flour",
    places: 2,
    value,
    by: "the blend",
    sources: [fromSpec],
  });
}

/** Share of a flour in the blend before or in that after. */
export function shareOf(blend: string): (flour: WaterFlour) => Figure {
  return ({ name, share }) =>
    given({
      id: `water.share.${blend}.${name}`,
      label: `share of ${name}`,
      unit: "% of flour",
      places: 1,
      value: share,
      by: "the blend",
      sources: [fromSpec],
    });
}

function moistureOf(blend: string): (flour: WaterFlour) => Figure {
  return ({ name, moisture }) =>
    given({
      id: `water.moisture.${blend}.${name}`,
      label: `moisture of ${name}`,
      unit: "%",
      places: 2,
      value: moisture,
      by: "the flour's figures",
      sources: [fromSpec],
    });
}

/** The kitchen's own figure of a flour of the blend before or of that after. */
export function ownFigure(blend: string): (flour: WaterFlour) => Figure {
  return ({ name, ownWater }) =>
    given({
      id: `water.takes.${blend}.${name}`,
      label: `water ${name} takes`,
      unit: "% of it",
      places: 1,
      value: ownWater?.percent ?? "0",
      by: "the kitchen's own figure",
      sources: [fromSpec],
    });
}
