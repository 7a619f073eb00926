import { type Carried, type Composition, carriedBy, potassiumOf } from "@noodlewright/core/chemistry";
import { expect, test } from "vitest";
import { cationsOf } from "#core/chemistry/carried.ts";

/**
 * Standard atomic weights, abridged (CIAAW 2021): H 1.0080, C 12.011, O 15.999, Na 22.990, Cl 35.45, K 39.098. So in g/mol
 * Na2CO3 105.988, K2CO3 138.204, NaHCO3 84.006, KHCO3 100.114, NaOH 39.997, KOH 56.105, NaCl 58.440, KCl 74.548.
 */
const powder: Composition = {
  species: { K2CO3: "50", Na2CO3: "20", NaHCO3: "10", KCl: "4", NaCl: "3" },
  water: "8",
  inert: "5",
};
const lye: Composition = { species: { NaOH: "10", KOH: "5", KHCO3: "2" }, water: "83", inert: "0" };
const carried = carriedBy(
  [
    { name: "powder", composition: powder, mass: 10 },
    { name: "lye", composition: lye, mass: 5 },
  ],
  "now",
);

/** 10 g of powder: K2CO3 5 g, Na2CO3 2 g, NaHCO3 1 g, KCl 0.4 g, NaCl 0.3 g; 5 g of lye: NaOH 0.5 g, KOH 0.25 g, KHCO3 0.1 g. */
const byHand: readonly (readonly [key: keyof Carried, value: number, unit: string, places: number])[] = [
  // 5 + 2 + 1 and 0.5 + 0.25 + 0.1; chlorides are no alkaline salts
  ["anhydrous", 8.85, "g", 2],
  // 2 × 5000 / 138.204 + 2 × 2000 / 105.988 + 1000 / 84.006 and 500 / 39.997 + 250 / 56.105 + 100 / 100.114
  ["alkalinityM", 139.956_57, "meq", 1],
  // 5000 / 138.204 + 2000 / 105.988 and 500 / 39.997 + 250 / 56.105
  ["alkalinityP", 72.005_33, "meq", 1],
  // 0.8 and 4.15
  ["water", 4.95, "g", 2],
  ["salt", 0.7, "g", 2],
  // 22.990 × (2 × 2000 / 105.988 + 1000 / 84.006 + 300 / 58.440 + 500 / 39.997)
  ["sodium", 1546.731, "mg", 0],
  // 39.098 × (2 × 5000 / 138.204 + 400 / 74.548 + 250 / 56.105 + 100 / 100.114)
  ["potassium", 3252.065, "mg", 0],
  ["bicarbonate", 1.1, "g", 2],
  ["hydroxide", 0.75, "g", 2],
  // without the chlorides: K 72.356 81 + 4.455 93 + 0.998 86 = 77.811 60, Na 37.740 12 + 11.903 91 + 12.500 94 = 62.144 97 mmol
  ["potassiumRatio", 55.596_96, "mol %", 2],
];

test.each(byHand)("%s of two products is worked out by hand", (key, value, unit, places) => {
  const figure = carried[key];
  expect(figure?.value).toBeDefined();
  // half a unit of the last digit worked out by hand
  const digits = (String(value).split(".")[1] ?? "").length;
  expect(Math.abs(Number(figure?.value) - value)).toBeLessThanOrEqual(0.5 * 10 ** -digits + 1e-12);
  expect([figure?.unit, figure?.places]).toEqual([unit, places]);
});

test("sodium and potassium of the alkaline salts leave the chlorides out, mmol/g", () => {
  const { sodium, potassium } = cationsOf(powder);
  // 10 × (2 × 20 / 105.988 + 10 / 84.006) and 10 × 2 × 50 / 138.204
  expect(sodium.toFixed(5)).toBe("4.96440");
  expect(potassium.toFixed(5)).toBe("7.23568");
  expect(Number(potassiumOf(powder))).toBeCloseTo((100 * 7.235_68) / (7.235_68 + 4.9644), 3);
  expect(potassiumOf({ species: { KCl: "100" }, water: "0", inert: "0" })).toBe("0");
});
