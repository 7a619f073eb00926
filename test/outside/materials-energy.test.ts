import { describe, expect, it } from "vitest";
import { nutrients } from "#core/materials/nutrients.ts";
import { eaten, hundred, nothingBut } from "./portion-eaten.ts";

describe("energy", () => {
  it.each([
    // Regulation (EU) No 1169/2011, Annex XIV: kcal and kJ per g
    ["carbohydrate", "4", "17"],
    ["protein", "4", "17"],
    ["fat", "9", "37"],
    ["fibre", "2", "8"],
  ] as const)("%s counts %s kcal and %s kJ per g", (nutrient, kcal, kilojoule) => {
    expect([nutrients.energy.counted.EU, nutrients.kilojoule.counted.EU]).toMatchObject([
      { perGram: { [nutrient]: kcal } },
      { perGram: { [nutrient]: kilojoule } },
    ]);
  });
});

describe("salt from sodium", () => {
  it.each([
    // mg sodium, place, g salt, source
    ["1000", "EU", "2.500", "Regulation (EU) No 1169/2011, Annex I point 11: sodium × 2.5"],
    ["1000", "JP", "2.540", "MEXT 2020, item 01038, prints 2.5"],
  ] as const)("%s mg sodium is in %s %s g salt", (sodium, place, salt, source) => {
    expect(
      hundred(eaten(nothingBut("house flour", { moisture: "14 %", sodium: `${sodium} mg` }), place), "salt").toFixed(3),
      source,
    ).toBe(salt);
  });
});
