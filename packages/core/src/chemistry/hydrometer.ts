import { type Figure, found } from "../figure/figure.ts";
import { type Published, publish } from "../figure/graph.ts";
import { type Outcome, problem, refuse } from "../figure/problem.ts";
import {
  type Decimal,
  type DecimalInput,
  type DecimalText,
  dec,
  decimalText,
  digitsText,
  fixedText,
  HUNDRED,
} from "../number/decimal.ts";
import { baumeScales, glassExpansion } from "./baume.ts";
import { anhydrousShare, type Composition } from "./composition.ts";
import { edgeOf, fitRange, type StatedStrength, solutionAt } from "./stated-strength.ts";

/** A hydrometer reading, in degrees Baumé or as a density in g/mL. */
export type Reading = Extract<StatedStrength, { readonly measure: "degrees-baume" }> | DensityReading;

/** A density read off a hydrometer, g/mL, at a temperature in °C. */
export interface DensityReading {
  readonly measure: "density";
  readonly value: DecimalText;
  readonly temperature?: DecimalText;
}

/** A solution, as its reading tells it. */
export interface ReadStrength {
  readonly composition: Composition;
  /** % w/w, with the least and greatest that the reading error allows. */
  readonly massPercent: Figure;
}

/**
 * The strength of a solution from a hydrometer reading, and what the error of reading and the doubt of the density fits
 * mean.
 *
 * @param product - any composition with the salts in the ratio of the solution
 * @param readingError - in the unit of the reading, such as 0.2 degrees; zero or more
 * @param on - what tells the reading, where a figure does
 * Problems: `hydrometer.error`, and those of `solutionAt`.
 * @example shown(readHydrometer({ species: { Na2CO3: "100" }, water: "0", inert: "0" }, { measure: "degrees-baume", scale: "145", value: "10" }, "0.2").value.massPercent) // => "6.99 % w/w"
 */
export function readHydrometer(
  product: Composition,
  reading: Reading,
  readingError: DecimalInput,
  on?: readonly Figure[],
): Outcome<Published<ReadStrength>> {
  const error = dec(readingError);
  if (error.isNegative() || error.gte(reading.value)) {
    return refuse(problem("hydrometer.error", [], { error: error.toString() }));
  }
  const middle = solutionAt(product, reading);
  if (!middle.ok) return middle;
  const shifted = (by: DecimalInput, edge: "low" | "high"): Decimal =>
    edgeOf(product, { ...reading, value: decimalText(dec(reading.value).plus(by)) }, edge);
  const fit = fitRange(product, reading);
  const [low, high] = [shifted(error.negated(), "low"), shifted(error, "high")];
  const half = (width: Decimal): string => fixedText(width.div(2), 2);
  const byFit = fit === undefined ? dec(0) : fit.high.minus(fit.low);
  const notes = middle.notes.filter(({ code }) => code !== "strength.fit");
  // a share of a density says the same in every unit
  const off =
    reading.measure === "density"
      ? `${digitsText(error.div(reading.value).times(HUNDRED), 2)} % of the density`
      : `${digitsText(error, 2)} degrees`;
  const why = `a reading error of ${off} either way is worth ${half(high.minus(low).minus(byFit))} % by mass, the doubt of the density fits ${half(byFit)} %`;
  const figure = found(
    { id: "hydrometer.mass-percent", label: "strength by mass, from the reading", unit: "% w/w", places: 2 },
    anhydrousShare(middle.value),
    "the strength whose density shows this reading, found between bounds and checked",
    on,
    ...(reading.measure === "density" ? [] : [...baumeScales[reading.scale].sources, glassExpansion]),
  );
  const range = { low: decimalText(low), high: decimalText(high), why };
  return publish({ composition: middle.value, massPercent: { ...figure, range } }, notes);
}

/** A volume that was weighed, to find a strength by. */
export interface WeighedVolume {
  /** g, the vessel taken off */
  readonly mass: DecimalInput;
  /** mL */
  readonly volume: DecimalInput;
  /** °C */
  readonly temperature: DecimalText;
  /** g and mL that the scale and the flask may be off */
  readonly massError: DecimalInput;
  readonly volumeError: DecimalInput;
}

/**
 * The strength of what is left in a bottle from the mass of a known volume, and what the errors of both mean.
 *
 * Problems: `hydrometer.volume`, and those of `readHydrometer`.
 * @example shown(readWeighedVolume({ species: { Na2CO3: "100" }, water: "0", inert: "0" }, { mass: "110.4", volume: 100, temperature: "20", massError: "0.1", volumeError: "0.1" }).value.massPercent) // => "10.04 % w/w"
 */
export function readWeighedVolume(product: Composition, weighed: WeighedVolume): Outcome<Published<ReadStrength>> {
  const [mass, volume] = [dec(weighed.mass), dec(weighed.volume)];
  if (mass.lte(0) || volume.lte(0)) return refuse(problem("hydrometer.volume", [], {}));
  const density = mass.div(volume);
  const error = density.times(dec(weighed.massError).div(mass).plus(dec(weighed.volumeError).div(volume)));
  const reading = { measure: "density", value: decimalText(density), temperature: weighed.temperature } as const;
  return readHydrometer(product, reading, error);
}
