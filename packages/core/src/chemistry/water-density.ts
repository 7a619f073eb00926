import type { Source } from "../figure/source.ts";
import { type Decimal, type DecimalInput, dec } from "../number/decimal.ts";

/**
 * Kell's equation is taken because the apparent densities of the salts were fitted with it;
 * from 0 to 40 °C it lies within 0.0034 kg/m³ of Tanaka and others (Metrologia 38 (2001) 301).
 */
export const kell: Source = {
  cite: "G. S. Kell, J. Chem. Eng. Data 20 (1975) 97, as used by M. Laliberté, J. Chem. Eng. Data 54 (2009) 1725",
  standing: "copy",
};

/** Rising powers of °C; the last number divides: 1 + 0.01687985 t. */
const coefficients = ["999.83952", "16.945176", "-0.0079870401", "-4.6170461e-5", "1.0556302e-7", "-2.8054253e-10"];

/**
 * Density of pure water at one atmosphere in g/mL.
 *
 * @param temperature - °C, 0 to 100
 * Source: Kell 1975.
 * @example waterDensity(20).toFixed(6) // => "0.998204"
 */
export function waterDensity(temperature: DecimalInput): Decimal {
  const t = dec(temperature);
  const over = coefficients.reduceRight((total, coefficient) => total.times(t).plus(coefficient), dec(0));
  return over.div(t.times("0.01687985").plus(1)).div(1000);
}
