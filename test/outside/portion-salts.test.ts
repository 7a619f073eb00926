import { describe, expect, it } from "vitest";
import { contentsOf } from "#core/batch/composition.ts";
import { keptInBoiling } from "#core/batch/nutrition-cooked.ts";
import { listed, workedOut } from "../core/formula/worked-out.ts";
import { eaten, hundred, nothingBut } from "./portion-eaten.ts";

/** Sodium or potassium in 100 g of a salt, mg. */
function elementIn(name: string, element: "sodium" | "potassium"): number {
  const { formula } = workedOut({ ...nothingBut("bread flour"), ingredients: [{ name, amount: "1 %" }] });
  const line = formula.lines.find(({ role }) => role === "ingredient");
  return line === undefined ? Number.NaN : Number(contentsOf(line)[element]?.value);
}

const weights = "IUPAC standard atomic weights: Na 22.990, K 39.098, C 12.011, O 15.999, H 1.008";
const sr28 = "USDA National Nutrient Database for Standard Reference, Release 28";

describe("sodium and potassium of salts", () => {
  it.each([
    // mg in 100 g, tolerance
    { what: "table salt", element: "sodium", mg: 38758, within: 0, source: `${sr28}, NDB 02047` },
    { what: "table salt", element: "potassium", mg: 8, within: 0, source: `${sr28}, NDB 02047` },
    // 0.1 %: the printed row has 0.2 % of water
    { what: "sodium bicarbonate", element: "sodium", mg: 27360, within: 28, source: `${sr28}, NDB 18372, baking soda` },
    { what: "sodium bicarbonate", element: "sodium", mg: 27367, within: 1, source: weights },
    { what: "sodium carbonate", element: "sodium", mg: 43382, within: 1, source: weights },
    { what: "sodium carbonate monohydrate", element: "sodium", mg: 37079, within: 1, source: weights },
    { what: "sodium carbonate decahydrate", element: "sodium", mg: 16069, within: 1, source: weights },
    { what: "potassium carbonate", element: "potassium", mg: 56580, within: 1, source: weights },
    { what: "potassium carbonate sesquihydrate", element: "potassium", mg: 47325, within: 2, source: weights },
    { what: "potassium bicarbonate", element: "potassium", mg: 39053, within: 1, source: weights },
    { what: "sodium carbonate", element: "potassium", mg: 0, within: 0, source: weights },
    { what: "potassium carbonate", element: "sodium", mg: 0, within: 0, source: weights },
  ] as const)("$what holds $mg mg of $element in 100 g: $source", ({ what, element, mg, within }) => {
    expect(Math.abs(elementIn(what, element) - mg)).toBeLessThanOrEqual(within);
  });
});

/** 100 flour, 34 water, 1 sodium chloride, 0.9 sodium and 0.1 potassium carbonate: a published formula, by atomic weights. */
const published = {
  ...nothingBut("flour without minerals", { moisture: "14 %", sodium: "0 mg", potassium: "0 mg" }),
  water: { tap: "34 %" },
  alkali: listed({ "sodium carbonate": "0.9 %", "potassium carbonate": "0.1 %" }),
  ingredients: [
    {
      name: "pure salt",
      amount: "1 %",
      figures: { kind: "salt" as const, composition: { NaCl: "100 %" }, allergens: [] },
    },
  ],
};

describe("salt of a published alkaline noodle formula, by atomic weights", () => {
  it.each([
    ["EU", "sodium", 576.3, 0.5],
    ["EU", "salt", 1.441, 0.002],
    ["JP", "salt", 1.464, 0.002],
    ["US", "potassium", 41.6, 0.5],
  ] as const)("%s: %s is %d in 100 g of dough", (rules, name, expected, within) => {
    expect(Math.abs(hundred(eaten(published, rules), name) - expected)).toBeLessThanOrEqual(within);
  });
});

/** Standard Tables of Food Composition in Japan 2020, read in a copy; per 100 g, sodium and potassium in mg. */
const boiled = { gain: 1.755, protein: 4.9, carbohydrate: 29.2, sodium: 70, potassium: 60 } as const;

describe("boiled noodles of the Japanese tables, from the raw ones", () => {
  it("have the protein, sodium and potassium by the cook gain on protein, items 01047 and 01048", () => {
    const found = eaten({ ...nothingBut("Chinese noodle, raw"), batch: { cookGain: boiled.gain } }, "JP");
    expect(hundred(found, "protein", "cooked")).toBeCloseTo(boiled.protein, 1);
    expect(Math.abs(hundred(found, "sodium", "cooked") - boiled.sodium)).toBeLessThan(0.5);
    expect(Math.abs(hundred(found, "potassium", "cooked") - boiled.potassium)).toBeLessThan(0.5);
    // 10 %: what boiling takes of the starch is not taken off
    expect(hundred(found, "carbohydrate", "cooked")).toBeGreaterThan(boiled.carbohydrate);
    expect(hundred(found, "carbohydrate", "cooked")).toBeLessThan(boiled.carbohydrate * 1.1);
  });

  it.each([
    // raw and boiled sodium, gain on protein: items 01047/48, 01052/53, 01038/39
    ["sodium", 410, 70, 8.6 / 4.9],
    ["sodium", 810, 170, 9.2 / 5.2],
    ["sodium", 1000, 120, 6.1 / 2.6],
    ["potassium", 350, 60, 8.6 / 4.9],
    ["potassium", 340, 80, 9.2 / 5.2],
    ["potassium", 90, 9, 6.1 / 2.6],
  ] as const)("%s of %d mg raw and %d mg boiled lies in the range", (element, raw, cooked, gain) => {
    const { range } = keptInBoiling()[element];
    const kept = (100 * cooked * gain) / raw;
    expect(kept).toBeGreaterThanOrEqual(Number(range?.low) - 1e-9);
    expect(kept).toBeLessThanOrEqual(Number(range?.high) + 1e-9);
  });

  it("30 % of the sodium stays", () => {
    expect(Number(keptInBoiling().sodium.value)).toBeCloseTo(30, 0);
  });
});

describe("a raw alkaline noodle is like that of the Japanese tables, item 01047", () => {
  // Flour of item 01020, 32 water, 1 salt, 1 alkali of 4 to 6 (a usual formula, from memory); the table names no formula.
  const found = eaten(
    {
      flours: [{ name: "mext 01020", amount: "100 %" }],
      water: { tap: "32 %" },
      alkali: listed({ "sodium carbonate": "0.4 %", "potassium carbonate": "0.6 %" }),
      salt: "1 %",
    },
    "JP",
  );

  it.each([
    ["protein", 8.6, 10],
    ["carbohydrate", 55.7, 5],
    ["sodium", 410, 10],
    ["potassium", 350, 15],
    ["salt", 1.0, 10],
  ] as const)("%s is %d within %d percent", (name, printed, percent) => {
    expect(Math.abs(hundred(found, name) - printed)).toBeLessThanOrEqual((printed * percent) / 100);
  });
});
