import { hydrates, species } from "@noodlewright/core/chemistry";
import { MF } from "mf-parser";
import { describe, expect, test } from "vitest";
import { molarMass } from "#core/chemistry/elements.ts";

/**
 * g/mol as printed. The abridged atomic weights differ from the full ones by up to 15 ppm, so a mass may differ by
 * one unit of its last digit.
 */
const printed = [
  ["Na2CO3", 105.99, "USP 32, sodium carbonate"],
  ["K2CO3", 138.21, "USP 32, potassium carbonate"],
  ["NaHCO3", 84.01, "JECFA, sodium hydrogen carbonate"],
  ["KHCO3", 100.12, "USP 32, potassium bicarbonate"],
  ["NaOH", 40.0, "JECFA, sodium hydroxide"],
  ["KOH", 56.11, "JECFA, potassium hydroxide"],
  ["Na2CO3.H2O", 124.0, "JECFA, sodium carbonate monohydrate"],
  ["Na2CO3.10H2O", 286.14, "JECFA, sodium carbonate decahydrate"],
  ["Na2CO3.NaHCO3.2H2O", 226.03, "JECFA, sodium sesquicarbonate"],
  ["NaCl", 58.44, "handbook, from memory"],
] as const;

test.each(printed)("%s is %d g/mol (%s)", (formula, published) => {
  expect(Math.abs(molarMass(formula).toNumber() - published)).toBeLessThanOrEqual(0.011);
});

describe("agrees with a general library of molecular formulas (mf-parser, full atomic weights) to 20 ppm, chlorides to 60 ppm", () => {
  test.each(Object.keys(species))("%s", (formula) => {
    const mass = new MF(formula).getInfo().mass;
    // The abridged weight of chlorine, 35.45, is the least sharp: ± 0.01.
    const tolerance = formula.includes("Cl") ? 6e-5 : 2e-5;
    expect(Math.abs(molarMass(formula).toNumber() / mass - 1)).toBeLessThan(tolerance);
  });

  test.each(Object.values(hydrates).filter(({ formula }) => !formula.includes(".1.5")))("$formula", ({ formula }) => {
    const mass = new MF(formula.replaceAll(".", " . ")).getInfo().mass;
    expect(Math.abs(molarMass(formula).toNumber() / mass - 1)).toBeLessThan(2e-5);
  });

  test("K2CO3.1.5H2O, as half of its double formula", () => {
    const mass = new MF("K4C2O6 . 3H2O").getInfo().mass / 2;
    expect(Math.abs(molarMass("K2CO3.1.5H2O").toNumber() / mass - 1)).toBeLessThan(2e-5);
  });
});
