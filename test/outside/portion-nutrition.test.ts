import { describe, expect, it } from "vitest";
import { eaten, hundred, nothingBut } from "./portion-eaten.ts";

/**
 * USDA National Nutrient Database for Standard Reference, Release 28 (2015), read in a copy: protein, fat, carbohydrate by
 * difference and fibre in g, sodium and potassium in mg, energy in kcal, all per 100 g as printed.
 */
const usda = [
  { what: "bread flour", ndb: "20083", printed: [11.98, 1.66, 72.53, 2.4, 2, 100], kcal: 361 },
  { what: "all-purpose flour, unenriched", ndb: "20481", printed: [10.33, 0.98, 76.31, 2.7, 2, 107], kcal: 364 },
  { what: "cake flour", ndb: "20084", printed: [8.2, 0.86, 78.03, 1.7, 2, 105], kcal: 362 },
  { what: "semolina", ndb: "20466", printed: [12.68, 1.05, 72.83, 3.9, 1, 186], kcal: 360 },
  { what: "whole wheat flour", ndb: "20080", printed: [13.21, 2.5, 71.97, 10.7, 2, 363], kcal: 340 },
  { what: "dark rye flour", ndb: "20063", printed: [15.91, 2.22, 68.63, 23.8, 2, 717], kcal: 325 },
  { what: "barley flour", ndb: "20130", printed: [10.5, 1.6, 74.52, 10.1, 4, 309], kcal: 345 },
] as const;
const names = ["protein", "fat", "carbohydrate", "fibre", "sodium", "potassium"] as const;

describe("a dough of nothing but one flour holds what the table prints", () => {
  it.each(usda)("$what, NDB $ndb", ({ what, printed }) => {
    const found = eaten(nothingBut(what), "US");
    expect(names.map((name) => hundred(found, name))).toEqual(printed);
  });

  it.each(usda.filter(({ printed }) => printed[3] < 5))(
    "$what, NDB $ndb: 4, 4 and 9 kcal/g come near the printed $kcal kcal",
    ({ what, kcal }) => {
      // 3 %: the table multiplies with 4.05, 4.12 and 8.37 kcal/g for white wheat flour
      const energy = hundred(eaten(nothingBut(what), "US"), "energy");
      expect(Math.abs(energy - kcal)).toBeLessThan(0.03 * kcal);
    },
  );

  it.each(usda)("$what, NDB $ndb: 4, 4, 9 and 2 kcal/g come near the printed $kcal kcal", ({ what, kcal }) => {
    // 6 %: the factors of the table are those of the single grains, and count fibre within carbohydrate
    const energy = hundred(eaten(nothingBut(what), "EU"), "energy");
    expect(Math.abs(energy - kcal)).toBeLessThan(0.06 * kcal);
  });
});

describe("by the rules of the European Union", () => {
  it("bread flour gives 348.18 kcal and 1476.49 kJ", () => {
    // Regulation (EU) No 1169/2011, Annexes I and XIV, by hand: protein 11.98 × 6.25/5.7, carbohydrate the rest
    const found = eaten(nothingBut("bread flour"), "EU");
    expect(hundred(found, "energy")).toBeCloseTo(348.18, 6);
    expect(hundred(found, "kilojoule")).toBeCloseTo(1476.49, 6);
    expect(hundred(found, "protein")).toBeCloseTo(13.136, 4);
    expect(hundred(found, "carbohydrate")).toBeCloseTo(68.974, 4);
  });
});

describe("a label's rounding, through the declared lines", () => {
  const figures = {
    moisture: "13.4 %",
    protein: "11.9 %",
    proteinBasis: "as is",
    nitrogenFactor: 6.25,
    ash: "0.5 %",
    ashBasis: "as is",
    fat: "0.49 %",
    fibre: "9.96 %",
    sodium: "4.9 mg",
    potassium: "145 mg",
  };

  it.each([
    // by the text of 21 CFR 101.9(c), of 100 g: 4 × 11.9 + 4 × 73.71 + 9 × 0.49 = 346.85 kcal
    ["US", "energy", "350"],
    ["US", "fat", "0"],
    ["US", "sodium", "0"],
    ["US", "carbohydrate (with fibre)", "74"],
    ["US", "fibre", "10"],
    ["US", "protein (N × 5.7 for wheat)", "12"],
    ["US", "potassium", "145"],
    // by the Commission's guidance of December 2012: 4 × 11.9 + 4 × 63.75 + 9 × 0.49 + 2 × 9.96 = 326.93 kcal
    ["EU", "fat", "0"],
    ["EU", "carbohydrate (without fibre)", "64"],
    ["EU", "fibre", "10"],
    ["EU", "protein (N × 6.25)", "12"],
    ["EU", "salt (all sodium counted)", "0"],
    // by Japan's Food Labelling Standards, smallest places from memory
    ["JP", "fat", "0"],
    ["JP", "carbohydrate (with fibre)", "73.7"],
    ["JP", "protein (N × 5.7 for wheat)", "11.9"],
    ["JP", "salt (all sodium counted)", "0"],
  ] as const)("%s: %s is printed as %s", (rules, label, printed) => {
    const written = { ...nothingBut("house flour", figures), batch: { rawWeight: "100 g" } };
    const line = eaten(written, rules).declared.raw.find((one) => one.label === label);
    expect(line?.text).toBe(printed);
  });
});
