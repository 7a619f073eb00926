import { classLines, grainOf } from "../materials/flour-classes.ts";
import { blendFactor } from "./blend.ts";
import type { Formula } from "./formula.ts";

/**
 * The published classes that the flours of a formula fall in, and the blend where all are of one grain, in sentences.
 *
 * Nothing is said of a flour of unknown grain or with a moisture that was only assumed, nor where no class fits.
 */
export function flourClassLines({ lines, blend }: Pick<Formula, "lines" | "blend">): readonly string[] {
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
    ...known.flatMap((each) => (each === undefined ? [] : classLines(each.name, each.flour))),
    ...(mixed && flours.length > 1 ? classLines("The blend", mixed) : []),
  ];
}
