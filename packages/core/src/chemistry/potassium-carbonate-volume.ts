import type { Source } from "../figure/source.ts";
import { type Decimal, dec, ONE } from "../number/decimal.ts";
import { molarMass } from "./elements.ts";
import { waterDensity } from "./water-density.ts";

export const goncalvesKestin: Source = {
  cite: "F. A. Gonçalves and J. Kestin, Int. J. Thermophysics 2 (1981) 315, density polynomial of K2CO3 solutions",
  standing: "copy",
};
/** Rows are powers of °C, columns powers of molality; kg/m³. */
const potassiumCarbonateDensity = [
  ["1000.6", "124.79", "-10.544", "0.68296", "-0.023941"],
  ["-0.0014378", "-0.23933", "0.020655", "0.001911", "-0.00022461"],
  ["-0.0057652", "0.00071823", "0.0010597", "-0.00027032", "1.7181e-5"],
  ["1.6986e-5", "1.0135e-5", "-1.2824e-5", "2.7504e-6", "-1.6771e-7"],
] as const;

/**
 * mol/kg; the weakest of the measured points. Below it the fit, which ends a little above water, is drawn to water.
 */
const WEAKEST_MEASURED = "0.08017";

/** Apparent specific volume of potassium carbonate in water, mL/g, from the polynomial for the density. @example potassiumCarbonateVolume(dec("0.3"), dec(20)).toFixed(4) // => "0.2381" */
export function potassiumCarbonateVolume(w: Decimal, t: Decimal): Decimal {
  const molality = w.times(1000).div(ONE.minus(w).times(molarMass("K2CO3")));
  const power = (row: readonly string[], x: Decimal): Decimal =>
    row.reduceRight((total, coefficient) => total.times(x).plus(coefficient), dec(0));
  const polynomial = (at: Decimal): Decimal =>
    potassiumCarbonateDensity
      .map((row) => power(row, at))
      .reduceRight((total, coefficient) => total.times(t).plus(coefficient), dec(0))
      .div(1000);
  const weak = ONE.minus(molality.div(WEAKEST_MEASURED));
  const above = weak.gt(0) ? polynomial(dec(0)).minus(waterDensity(t)).times(weak) : dec(0);
  const density = polynomial(molality).minus(above);
  return ONE.div(density)
    .minus(ONE.minus(w).div(waterDensity(t)))
    .div(w);
}
