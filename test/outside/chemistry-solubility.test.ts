import {
  type Clarity,
  type Composition,
  type SpeciesName,
  solubilityOf,
  staysClear,
} from "@noodlewright/core/chemistry";
import { expect, test } from "vitest";
import { fromMasses } from "#core/chemistry/composition.ts";
import { nearestByIons } from "#core/chemistry/ion-saturation.ts";
import { activities } from "#core/chemistry/pitzer.ts";

/** g of anhydrous salt in 100 g of water; tolerance by the spread of the sources or half the last printed digit. */
const elsewhere: readonly (readonly [SpeciesName, string, number, number, string])[] = [
  ["Na2CO3", "20", 21.51, 0.5, "soda-ash property page of a manufacturer, 17.7 % by mass"],
  [
    "Na2CO3",
    "25",
    29.03,
    0.5,
    "solubility of natron worked out with the Harvie, Møller and Weare parameters, 2.739 mol/kg",
  ],
  [
    "Na2CO3",
    "90",
    43.88,
    1.1,
    "ACS Omega 5 (2020) 4875, Table 8, 30.5 % by mass at 363.15 K; the older table lies 1 g higher",
  ],
  ["Na2CO3", "50", 47.3, 0.3, "Comey and Hahn 1921 and Seidell, a row between those used"],
  ["Na2CO3", "5", 9.5, 0.4, "Seidell, from memory"],
  ["Na2CO3", "15", 16.4, 0.4, "Seidell, from memory"],
  ["K2CO3", "0", 107, 1.6, "Comey and Hahn 1921; the lower of two tables is used"],
  ["K2CO3", "20", 111, 1, "Comey and Hahn 1921"],
  ["K2CO3", "25", 112.3, 1, "Comey and Hahn 1921"],
  ["NaHCO3", "5", 7.41, 0.2, "Comey and Hahn 1921, 6.9 % by mass"],
  ["NaHCO3", "25", 10.3, 0.15, "solubility of nahcolite worked out with the Harvie, Møller and Weare parameters"],
  ["KHCO3", "25", 36, 1, "solubility of potassium bicarbonate worked out with the Harvie, Møller and Weare parameters"],
  ["NaCl", "0.1", 35.7, 0.05, "Salt Institute, 26.31 % by mass"],
  ["NaCl", "25", 35.6, 0.5, "solubility of halite worked out with the Harvie, Møller and Weare parameters"],
  ["NaCl", "90", 38.5, 0.2, "ACS Omega 5 (2020) 4875, Table 8"],
];

test.each(elsewhere)("%s at %s °C: %d within %d g (%s)", (salt, temperature, published, tolerance) => {
  const outcome = solubilityOf(salt, temperature);
  expect(outcome.ok && Math.abs(Number(outcome.value.value) - published)).toBeLessThanOrEqual(tolerance);
});

const verdicts: readonly (readonly [string, Composition["species"], string, string, Clarity, string])[] = [
  ["20 % soda at 20 °C", { Na2CO3: "20" }, "80", "20", "crystals", "limit about 17.9 % (Comey and Hahn 1921)"],
  ["15 % soda in a cold room", { Na2CO3: "15" }, "85", "4", "crystals", "limit near 8.8 % at 5 °C"],
  ["10 % soda at 20 °C", { Na2CO3: "10" }, "90", "20", "clear", "limit about 17.9 %"],
  ["45 % potash at 20 °C", { K2CO3: "45" }, "55", "20", "clear", "limit about 52.6 %"],
  ["50 % potash at 0 °C", { K2CO3: "50" }, "50", "0", "clear", "limit 51 to 52 %"],
];

test.each(verdicts)("%s: %o", (_, salts, water, temperature, verdict) => {
  const outcome = staysClear({ species: salts, water, inert: "0" }, temperature);
  expect(outcome.ok && outcome.value.verdict).toBe(verdict);
});

test.each([
  ["20", "sodium carbonate decahydrate"],
  ["33", "sodium carbonate heptahydrate"],
  ["40", "sodium carbonate monohydrate"],
] as const)(
  "at %s °C soda crystallises as %s (hydrates change at 32.0 and 35.4 °C, read in two copies)",
  (temperature, solid) => {
    const outcome = staysClear({ species: { Na2CO3: "15" }, water: "85", inert: "0" }, temperature);
    expect(outcome.ok && outcome.value.solid).toBe(solid);
  },
);

/**
 * Mean activity coefficients at 25 °C, by which the coefficients of the cations and the anions are held against the tables.
 * Source: R. A. Robinson and R. H. Stokes, Electrolyte Solutions, 1959, from memory: NaCl 0.657, KCl 0.604 at 1 mol/kg.
 */
test.each([
  ["Na", 0.657],
  ["K", 0.604],
] as const)("the mean activity coefficient of %sCl at 1 mol/kg is %d", (cation, published) => {
  const { cations, anions } = activities({ Na: 0, K: 0, OH: 0, HCO3: 0, CO3: 0, [cation]: 1, Cl: 1 });
  // The parameters were fitted to within 0.003 of the tables.
  expect(Math.abs(Math.exp((cations[cation] + anions.Cl) / 2) - published)).toBeLessThanOrEqual(0.003);
});

/**
 * Solutions that are saturated, g in 100 g of water. The mean activity of the ions should stand at 100 % of its limit;
 * 8 % allow for tables of another century and for activity coefficients of 25 °C at 15 °C.
 * Sources, from memory: Fedotieff 1904 for sodium bicarbonate in brine, 0.12 mol/kg beside 6.06 mol/kg of salt at 15 °C;
 * Seidell for both chlorides at 25 °C.
 */
test.each([
  ["both chlorides at 25 °C", { NaCl: "29.9", KCl: "16.3" }, "25", 8],
  ["sodium bicarbonate in brine at 15 °C", { NaCl: "35.4", NaHCO3: "1.0" }, "15", 12],
] as const)("%s stand at their limit by the activities of the ions", (_, species, temperature, off) => {
  const limitOf = (salt: SpeciesName) => {
    const limit = solubilityOf(salt, temperature);
    return limit.ok ? { grams: limit.value.value, crystalWater: salt === "Na2CO3" ? 10 : 0 } : undefined;
  };
  const near = nearestByIons(fromMasses({ species, water: 100 }), limitOf);
  expect(Math.abs(Number(near?.taken) - 100)).toBeLessThanOrEqual(off);
});

/** Salts that exchange ions or share one; the sum of the parts of their limits is 60 to 80 %. */
test.each([
  ["potassium bicarbonate with salt", { KHCO3: "10", NaCl: "14" }, "20", "crystals", "sodium bicarbonate"],
  ["baking soda with salt", { NaHCO3: "5", NaCl: "10" }, "20", "crystals", "sodium bicarbonate"],
  ["a little baking soda with salt", { NaHCO3: "2", NaCl: "5" }, "20", "clear", "sodium bicarbonate"],
] as const)("%s, by the parameters of Harvie, Møller and Weare 1984", (_, species, temperature, verdict, solid) => {
  const outcome = staysClear(fromMasses({ species, water: 100 }), temperature);
  expect(outcome.ok && [outcome.value.verdict, outcome.value.solid]).toEqual([verdict, solid]);
});
