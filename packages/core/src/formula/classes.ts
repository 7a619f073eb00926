import { type ClassFit, classesIn, grainOf } from "../materials/flour-classes.ts";

import type { Formula } from "./formula.ts";
import { blendFactor } from "./mix.ts";

/** A flour, or the whole blend, with the published classes that it falls in. */
export interface Classed {
  readonly name: string;
  readonly fits: readonly ClassFit[];
}

/**
 * The published classes that the flours of a formula fall in, and the blend where all are of one grain.
 *
 * Nothing is said of a flour of unknown grain or with a moisture that was only assumed, nor where no class fits.
 */
export function classedFlours({ lines, blend }: Pick<Formula, "lines" | "blend">): readonly Classed[] {
  const flours = lines.filter(({ role }) => role === "flour");
  const known = flours.map(({ name, material }) => {
    const grain = material.by?.moisture === undefined ? grainOf(material) : undefined;
    return grain && { name, flour: { ...material, grain } };
  });
  const [first] = known;
  const one = first !== undefined && known.every((each) => each?.flour.grain === first.flour.grain);
  const { ash, protein } = blend;
  const mixed = one && {
    grain: first.flour.grain,
    wholegrain: known.every((each) => each?.flour.wholegrain === true),
    moisture: blend.moisture.value,
    ...(ash && { ash: ash.asIs.value }),
    ...(protein && { protein: { value: protein.asIs.value, nitrogenFactor: blendFactor } }),
  };
  return [
    ...known.flatMap((each) => (each === undefined ? [] : [{ name: each.name, fits: classesIn(each.flour) }])),
    ...(mixed && flours.length > 1 ? [{ name: "the blend", fits: classesIn(mixed) }] : []),
  ];
}
