import { expect, test } from "vitest";
import type { Composition } from "../../packages/core/src/chemistry/composition.ts";
import { type Clarity, solubilityOf, staysClear } from "../../packages/core/src/chemistry/solubility.ts";
import type { SpeciesName } from "../../packages/core/src/chemistry/species.ts";

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
