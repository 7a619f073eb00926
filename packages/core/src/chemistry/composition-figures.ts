import { type Figure, given } from "../figure/figure.ts";
import type { Source } from "../figure/source.ts";
import { dec } from "../number/decimal.ts";
import { type Composition, sharesOf, speciesOf } from "./composition.ts";

/**
 * The parts of a product as figures, in % of it; what is not there is left out.
 *
 * @param by - where the composition comes from
 * @example compositionFigures({ species: { K2CO3: "30" }, water: "70", inert: "0" }, "the label", []).length // => 2
 */
export function compositionFigures(
  composition: Composition,
  by: string,
  sources: readonly Source[],
): readonly Figure[] {
  const part = (id: string, label: string, value: string): Figure =>
    given({ id: `composition.${id}`, label, unit: "%", places: 2, value, by, sources });
  const rest = [part("water", "water", composition.water), part("inert", "inert matter", composition.inert)];
  return [
    ...sharesOf(composition).map(([name, share]) => part(name, `${speciesOf(name).name}, ${name}`, share.toString())),
    ...rest.filter(({ value }) => !dec(value).isZero()),
  ];
}
