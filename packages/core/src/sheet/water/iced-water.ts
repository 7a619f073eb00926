import type { WeighedLine } from "../../batch/weighing.ts";
import { exact, type Figure, found, worked } from "../../figure/figure.ts";
import { definition, massBalance } from "../../figure/source.ts";
import { dec, digitsText, roundToDivision } from "../../number/decimal.ts";

/** Water, part of it as ice, in whole divisions of the scale that weighs it. Masses in g. */
export interface WeighedIce {
  /** Ice and tap water together. */
  readonly listed: Figure;
  readonly ice: Figure;
  readonly tapWater: Figure;
}

type Scale = Pick<WeighedLine, "division" | "scale">;

/**
 * Rounds the ice to a scale; the rest of the water as listed comes from the tap, so that the two keep the total.
 *
 * @param listed - all the water, in whole divisions of that scale
 */
export function weighedIce(asked: Figure, listed: Figure, { division, scale }: Scale): WeighedIce {
  const { places } = listed;
  const by = `${digitsText(asked.value, 10)} g rounded to ${division} g (${scale})`;
  const rounded = roundToDivision(exact(asked), dec(division));
  const iceNaming = { id: "water.ice-weighed", label: "ice", unit: "g", places };
  const ice = found(iceNaming, rounded, by, [asked, listed], definition);
  const tapWater = worked(
    { id: "water.from-tap-weighed", label: "water from the tap beside the ice", unit: "g", places },
    "listed - ice",
    { listed, ice },
    massBalance,
  );
  return { listed, ice, tapWater };
}
