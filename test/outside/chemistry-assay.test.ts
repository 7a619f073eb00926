import { expect, test } from "vitest";
import { idealYield } from "../../packages/core/src/chemistry/baking.ts";
import {
  alkalinityM,
  alkalinityP,
  type Composition,
  hydrate,
  pure,
} from "../../packages/core/src/chemistry/composition.ts";
import { hazardOf } from "../../packages/core/src/chemistry/hazard.ts";
import type { SpeciesName } from "../../packages/core/src/chemistry/species.ts";
import { alkalinityAs } from "../../packages/core/src/chemistry/titration.ts";
import { dec } from "../../packages/core/src/number/decimal.ts";

/** mg that one mL of 1 N acid neutralises, as the monographs print it; tolerance half the last printed digit, or the monographs' own spread. */
const equivalents: readonly (readonly [SpeciesName, number, number, string])[] = [
  ["Na2CO3", 53.0, 0.05, "JECFA, sodium carbonate"],
  ["Na2CO3", 52.99, 0.01, "USP 32, sodium carbonate"],
  ["K2CO3", 69.11, 0.01, "USP 32, potassium carbonate"],
  ["NaHCO3", 84.01, 0.005, "JECFA, sodium hydrogen carbonate"],
  ["KHCO3", 100.1, 0.05, "USP 32, potassium bicarbonate"],
  ["NaOH", 40.0, 0.005, "JECFA, sodium hydroxide"],
  ["KOH", 56.11, 0.006, "JECFA, potassium hydroxide"],
];

test.each(equivalents)("1 mL of 1 N acid is worth %s: %d mg (%d, %s)", (salt, published, tolerance) => {
  expect(
    Math.abs(
      dec(1000)
        .div(alkalinityM(pure(salt)))
        .toNumber() - published,
    ),
  ).toBeLessThanOrEqual(tolerance);
});

/** mg for one mL of 1 N acid between phenolphthalein and methyl orange. Source: JECFA, sodium hydroxide and potassium hydroxide. */
test.each([
  ["Na2CO3", 106.0],
  ["K2CO3", 138.2],
] as const)("between the two end points 1 mL is %s: %d mg", (salt, published) => {
  const between = alkalinityM(pure(salt)).minus(alkalinityP(pure(salt)));
  expect(Math.abs(dec(1000).div(between).toNumber() - published)).toBeLessThanOrEqual(0.05);
});

test("pure potassium carbonate is 68.16 % K2O (Potassium Carbonate Handbook, section X, Table 1)", () => {
  expect(Math.abs(Number(alkalinityAs(alkalinityM(pure("K2CO3")), "K2O").value) - 68.16)).toBeLessThanOrEqual(0.005);
});

test("1 lb of potassium carbonate takes 0.528 lb of HCl (same place)", () => {
  const acid = alkalinityM(pure("K2CO3")).times("36.458").div(1000);
  expect(Math.abs(acid.toNumber() - 0.528)).toBeLessThanOrEqual(0.0005);
});

test("1 mL of 1 N acid is 30.99 mg Na2O (JECFA, sodium sesquicarbonate)", () => {
  expect(Math.abs(Number(alkalinityAs(1, "Na2O").value) * 10 - 30.99)).toBeLessThanOrEqual(0.005);
});

function within(composition: Composition, part: SpeciesName | "water", low: number, high: number): void {
  const share = Number(part === "water" ? composition.water : composition.species[part]);
  expect(share).toBeGreaterThanOrEqual(low);
  expect(share).toBeLessThanOrEqual(high);
}

test("sodium sesquicarbonate lies in its windows (JECFA 28th session, 1981)", () => {
  const composition = hydrate("Na2CO3.NaHCO3.2H2O");
  within(composition, "NaHCO3", 35.0, 38.6);
  within(composition, "Na2CO3", 46.4, 50.0);
  within(composition, "water", 13.8, 16.7);
});

test("the hydrates of soda lie in the windows of loss on drying (JECFA, sodium carbonate; USP 32)", () => {
  within(hydrate("Na2CO3.10H2O"), "water", 55, 65);
  within(hydrate("Na2CO3.H2O"), "water", 12, 15);
});

/** Mass left of 100, from the equation and atomic weights by hand: 105.988 / 168.012 and 138.204 / 200.228. */
test.each([
  ["NaHCO3", 63.0836],
  ["KHCO3", 69.0233],
] as const)("%s leaves %d %% when baked through", (salt, published) => {
  expect(Math.abs(Number(idealYield(salt).value) - published)).toBeLessThanOrEqual(0.00005);
});

/** Source: Regulation (EC) No 1272/2008 and its forerunner: hydroxide from 5 and 2 % corrosive, from 0.5 % irritant. */
test.each([
  ["5", "Danger", ["H290", "H314"]],
  ["2", "Danger", ["H290", "H314"]],
  ["1.9", "Warning", ["H315", "H319"]],
  ["0.5", "Warning", ["H315", "H319"]],
  ["0.4", "none", []],
] as const)("sodium hydroxide of %s %% is %s", (percent, signal, codes) => {
  const hazard = hazardOf({ species: { NaOH: percent }, water: dec(100).minus(percent).toString(), inert: "0" });
  expect(hazard.signal).toBe(signal);
  expect(hazard.statements.map(({ code }) => code)).toEqual(codes);
});

test("sodium carbonate is a warning, H319 (harmonised entry, read in a copy)", () => {
  const hazard = hazardOf(pure("Na2CO3"));
  expect([hazard.signal, hazard.pictograms, hazard.statements.map(({ code }) => code)]).toEqual([
    "Warning",
    ["GHS07"],
    ["H319"],
  ]);
});

test("potassium carbonate is a warning, H315, H319, H335 (suppliers' safety data sheets)", () => {
  expect(hazardOf(pure("K2CO3")).statements.map(({ code }) => code)).toEqual(["H315", "H319", "H335"]);
});
