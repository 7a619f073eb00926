import { strengthOf } from "@noodlewright/core/chemistry";
import { expect, test } from "vitest";
import { dec } from "#core/number/decimal.ts";
import { answered } from "../core/told-of.ts";

/**
 * Salt, % by mass, mol/kg, mol/L at 20 °C.
 * Source: CRC Handbook of Chemistry and Physics, 102nd ed. (2021), Concentrative Properties of Aqueous Solutions (copy).
 */
const rows = [
  ["K2CO3", "2", 0.148, 0.147],
  ["K2CO3", "5", 0.381, 0.378],
  ["K2CO3", "9", 0.716, 0.704],
  ["K2CO3", "18", 1.588, 1.523],
  ["K2CO3", "28", 2.814, 2.584],
  ["K2CO3", "40", 4.824, 4.093],
  ["KHCO3", "3", 0.309, 0.305],
  ["KHCO3", "9", 0.988, 0.951],
  ["KHCO3", "16", 1.903, 1.77],
  ["KOH", "9", 1.763, 1.729],
  ["KOH", "22", 5.027, 4.711],
  ["KOH", "40", 11.882, 9.896],
  ["Na2CO3", "1", 0.095, 0.095],
  ["Na2CO3", "3", 0.292, 0.291],
  ["Na2CO3", "6", 0.602, 0.6],
  ["Na2CO3", "9", 0.933, 0.927],
  ["Na2CO3", "12", 1.287, 1.273],
  ["Na2CO3", "15", 1.665, 1.638],
  ["NaHCO3", "1", 0.12, 0.12],
  ["NaHCO3", "3.5", 0.432, 0.426],
  ["NaHCO3", "5", 0.627, 0.615],
  ["NaOH", "4", 1.042, 1.043],
  ["NaOH", "10", 2.778, 2.772],
  ["NaOH", "22", 7.052, 6.827],
  ["NaOH", "40", 16.668, 14.3],
] as const;

function strength(salt: string, percent: string) {
  const composition = { species: { [salt]: percent }, water: dec(100).minus(percent).toString(), inert: "0" };
  return answered(strengthOf(composition, "20", "145"));
}

/** Half the last printed digit, and what rounding of the molar mass adds. */
test.each(rows)("%s of %s %% is %d mol/kg", (salt, percent, molality) => {
  const off = Math.abs(Number(strength(salt, percent).molPerKilogram.value) - molality);
  expect(off).toBeLessThanOrEqual(0.0005 + 0.00002 * molality);
});

/** Half the last printed digit, and what the density may be off: 0.1 %; 0.35 % for K2CO3, whose table is older than the fit; 0.7 % for KOH, whose table other tables contradict. */
const densityOff: Readonly<Record<string, number>> = { K2CO3: 0.0035, KOH: 0.007, KHCO3: 0.002 };
test.each(rows)("%s of %s %% is %d mol/kg and %d mol/L", (salt, percent, _molality, molarity) => {
  const off = Math.abs(Number(strength(salt, percent).byVolume?.molPerLitre.value) - molarity);
  expect(off).toBeLessThanOrEqual(0.0005 + (densityOff[salt] ?? 0.001) * molarity);
});
