import { definition, type Source } from "../figure/source.ts";
import { type Decimal, type DecimalInput, type DecimalText, dec, ONE } from "../number/decimal.ts";
import { waterDensity } from "./water-density.ts";

/** A hydrometer scale in degrees Baumé for liquids heavier than water. */
interface BaumeScale {
  readonly modulus: DecimalText;
  /** °C of the sample at which the hydrometer reads true */
  readonly sample: DecimalText;
  /** °C of the water that the specific gravity refers to */
  readonly water: DecimalText;
  readonly use: string;
  readonly sources: readonly Source[];
}

const usual: Source = { cite: "CRC Handbook of Chemistry and Physics, 51st ed., hydrometer scales", standing: "copy" };
/** 60 °F in °C. */
const usTemperature = "15.555555555555555556";
const temperatureTaken: Source = {
  cite: "temperatures of this scale: 15 °C taken, the copy read does not name them",
  standing: "practice",
};

/** The scales by the name of their modulus. Degrees of two scales differ by up to 2 % of the reading: name the scale. */
export const baumeScales = {
  "145": {
    modulus: "145",
    sample: usTemperature,
    water: usTemperature,
    use: "United States, 60 °F/60 °F",
    sources: [usual],
  },
  "144.3": {
    modulus: "144.3",
    sample: "15",
    water: "4",
    use: "Japan, 15 °C against water at 4 °C",
    sources: [
      { cite: "Japan, Measurement Unit Rules", at: "Appended Table 1, heavy Baumé degree", standing: "copy" },
      { cite: "specific gravity against water at 4 °C, sample at 15 °C", standing: "memory" },
    ],
  },
  "144.32": {
    modulus: "144.32",
    sample: "15.5",
    water: "15.5",
    use: "older scale, 15.5 °C",
    sources: [{ cite: "C. J. Smithells, Metals Reference Book, 1949", at: "p. 41", standing: "copy" }],
  },
  "144": { modulus: "144", sample: "15", water: "15", use: "old Dutch scale", sources: [usual, temperatureTaken] },
  "146.78": {
    modulus: "146.78",
    sample: "15",
    water: "15",
    use: "Gerlach's scale",
    sources: [usual, temperatureTaken],
  },
} as const satisfies Readonly<Record<string, BaumeScale>>;

/** The scales of degrees Baumé by name. */
export type BaumeName = keyof typeof baumeScales;

const baumeFormula = "degrees = modulus × (1 − 1 / specific gravity)";
export const baumeDefinition: Source = { ...definition, at: baumeFormula };

/** Widening of soda-lime glass with temperature, per °C of volume. */
const GLASS = "0.000025";
export const glassExpansion: Source = {
  cite: "cubic expansion of hydrometer glass 25e-6 per °C, as in ISO 649-1",
  standing: "memory",
};

/** Degrees Baumé of a specific gravity on a scale. @example degreesBaume("1.16", "145").toFixed(4) // => "20.0000" */
export function degreesBaume(specificGravity: DecimalInput, scale: BaumeName): Decimal {
  return ONE.minus(ONE.div(specificGravity)).times(baumeScales[scale].modulus);
}

/**
 * Specific gravity of a reading in degrees Baumé.
 *
 * @param degrees - 0 and up, well below the modulus
 * @example specificGravity(20, "145").toFixed(5) // => "1.16000"
 */
export function specificGravity(degrees: DecimalInput, scale: BaumeName): Decimal {
  const { modulus } = baumeScales[scale];
  return dec(modulus).div(dec(modulus).minus(degrees));
}

/**
 * The density of the liquid, g/mL, in which a hydrometer shows a reading.
 *
 * At another temperature than its own the glass is a little wider or narrower, which is allowed for.
 *
 * @param temperature - °C of the liquid when read
 * @example densityFromBaume(20, "145", "15.5555555555555555556").toFixed(4) // => "1.1589"
 */
export function densityFromBaume(degrees: DecimalInput, scale: BaumeName, temperature: DecimalInput): Decimal {
  const { water } = baumeScales[scale];
  return specificGravity(degrees, scale).times(waterDensity(water)).div(glass(scale, temperature));
}

/** What a hydrometer shows in a liquid of a density, g/mL. @example baumeFromDensity("1.1589", "145", 20).toFixed(1) // => "20.0" */
export function baumeFromDensity(density: DecimalInput, scale: BaumeName, temperature: DecimalInput): Decimal {
  const { water } = baumeScales[scale];
  return degreesBaume(dec(density).times(glass(scale, temperature)).div(waterDensity(water)), scale);
}

/** How much wider the glass is than at its own temperature. */
function glass(scale: BaumeName, temperature: DecimalInput): Decimal {
  return dec(temperature).minus(baumeScales[scale].sample).times(GLASS).plus(1);
}
