import { type Figure, given } from "../figure/figure.ts";
import { massBalance, type Source } from "../figure/source.ts";
import { type DecimalInput, dec } from "../number/decimal.ts";
import { type Composition, sharesOf, speciesOf } from "./composition.ts";
import { named } from "./named.ts";
import type { SpeciesName } from "./species.ts";

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
    given({ id: `composition.${id}`, label, unit: "%", places: 2 }, value, by, ...sources);
  const rest = [part("water", "water", composition.water), part("inert", "inert matter", composition.inert)];
  return [
    ...sharesOf(composition).map(([name, share]) => part(name, `${speciesOf(name).name}, ${name}`, share.toString())),
    ...rest.filter(({ value }) => !dec(value).isZero()),
  ];
}

/**
 * A salt of a solution, and its water, as figures in % of it: each one input, whatever is worked out from it.
 *
 * @param on - what the solution was mixed from, where figures tell that
 * @example shareFigure({ species: { K2CO3: "30" }, water: "70", inert: "0" }, "K2CO3").value // => "30"
 */
export function shareFigure(composition: Composition, name: SpeciesName, on?: readonly Figure[]): Figure {
  return inSolution(`share.${name}`, speciesOf(name).name, composition.species[name] ?? 0, on);
}

/** The water of a solution as a figure, as `shareFigure` has its salts. @example waterFigure({ species: {}, water: "100", inert: "0" }).unit // => "%" */
export function waterFigure({ water }: Composition, on?: readonly Figure[]): Figure {
  return inSolution("water-share", "water", water, on);
}

/** All that a solution is made of, as such figures; what is not there is left out. */
export function solutionParts(composition: Composition, on?: readonly Figure[]): readonly Figure[] {
  const salts = sharesOf(composition).map(([name]) => shareFigure(composition, name, on));
  const rest = [waterFigure(composition, on), inSolution("inert", "inert matter", composition.inert, on)];
  return [...salts, ...rest.filter(({ value }) => !dec(value).isZero())];
}

function inSolution(id: string, what: string, value: DecimalInput, on?: readonly Figure[]): Figure {
  const label = `${what} in the solution`;
  return { ...named(`solution.${id}`, label, "%", value, "the composition", massBalance, on), places: 2 };
}
