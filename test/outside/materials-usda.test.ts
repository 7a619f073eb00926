import type { Material } from "@noodlewright/core/answers";
import { describe, expect, it } from "vitest";
import { usdaRows } from "#core/materials/catalogue/usda-sr28-rows.ts";
import { catalogue } from "#core/materials/catalogue.ts";
import { dec, sum } from "#core/number/decimal.ts";
import { catalogued } from "./catalogued.ts";

/** Source of all values here: USDA National Nutrient Database for Standard Reference, Release 28, read in two copies. */
const foods = catalogue().filter(({ key }) => key.startsWith("usda "));

const food = (ndb: string): Material => catalogued(`usda ${ndb}`);

function proximates({ moisture, protein, fat, carbohydrate, ash }: Material) {
  return sum([moisture, protein?.value, fat, carbohydrate, ash].map((part) => dec(part ?? Number.NaN)));
}

describe("USDA Standard Reference 28", () => {
  it("has 87 foods here, baking soda left to chemistry", () => {
    expect(foods).toHaveLength(87);
    expect(() => food("18372")).toThrow("no usda 18372");
  });

  // Carbohydrate is by difference, so the parts add up to 100 g; 16122 is the one row that does not (100.27 g).
  it.each(foods.filter(({ key }) => key !== "usda 16122"))("$key $name adds up to 100 g within 0.05 g", (material) => {
    expect(Math.abs(proximates(material).minus(100).toNumber())).toBeLessThanOrEqual(0.05);
  });

  it("keeps the one row that does not add up as it is printed, with a note", () => {
    expect(proximates(food("16122")).toFixed(2)).toBe("100.27");
    expect(food("16122").notes).toContainEqual(expect.stringContaining("100.27"));
  });

  // Energy from the factors of file FOOD_DES against the printed kcal; 20061 is the one row 2 kcal off.
  const byOwnFactors = ({ key, protein, fat, carbohydrate }: Material): number => {
    const factors =
      usdaRows
        .find(([ndb]) => key === `usda ${ndb}`)?.[4]
        .split(" ")
        .slice(1)
        .map(Number) ?? [];
    return [protein?.value, fat, carbohydrate].reduce(
      (total, part, at) => total + Number(part) * (factors[at] ?? Number.NaN),
      0,
    );
  };
  const whole = foods.filter((material) => Number.isFinite(byOwnFactors(material)));
  it("is checked by its energy for most foods", () => {
    expect(whole.length).toBeGreaterThan(70);
  });
  it.each(whole.filter(({ key }) => key !== "usda 20061"))(
    "$key $name: the energy printed follows from its own factors within 1 kcal",
    (material) => {
      expect(Math.abs(byOwnFactors(material) - Number(material.energy))).toBeLessThanOrEqual(1);
    },
  );

  it("keeps white rice flour's energy as printed, with a note", () => {
    const rice = food("20061");
    // 5.95 × 3.82 + 1.42 × 8.37 + 80.13 × 4.16
    expect(byOwnFactors(rice)).toBeCloseTo(367.9552, 6);
    expect(rice.energy).toBe("366");
    expect(rice.notes).toContainEqual(expect.stringContaining("2 kcal"));
  });

  it.each([
    // NDB number, moisture, protein, fat, carbohydrate, ash, sodium, potassium, kcal, nitrogen factor, as printed
    ["20083", "13.36", "11.98", "1.66", "72.53", "0.47", "2", "100", "361", "5.70"],
    ["20081", "11.92", "10.33", "0.98", "76.31", "0.47", "2", "107", "364", "5.70"],
    ["20080", "10.74", "13.21", "2.50", "71.97", "1.58", "2", "363", "340", "5.83"],
    ["20466", "12.67", "12.68", "1.05", "72.83", "0.77", "1", "186", "360", "5.70"],
    ["20064", "10.97", "10.88", "1.52", "75.43", "1.20", "2", "374", "349", "5.83"],
    ["20011", "11.15", "12.62", "3.10", "70.59", "2.54", "11", "577", "335", "6.25"],
    ["20090", "11.97", "7.23", "2.78", "76.48", "1.54", "8", "289", "363", "5.95"],
    ["48052", "8.20", "75.16", "1.85", "13.79", "1.00", "29", "100", "370", undefined],
    ["01123", "76.15", "12.56", "9.51", "0.72", "1.06", "142", "138", "143", "6.25"],
    ["01124", "87.57", "10.90", "0.17", "0.73", "0.63", "166", "163", "52", "6.25"],
    ["01125", "52.31", "15.86", "26.54", "3.59", "1.71", "48", "109", "322", "6.25"],
    ["20027", "8.32", "0.26", "0.05", "91.27", "0.09", "9", "3", "381", "6.25"],
  ])("%s is as printed", (ndb, moisture, value, fat, carbohydrate, ash, sodium, potassium, energy, nitrogenFactor) => {
    const protein = nitrogenFactor === undefined ? { value } : { value, nitrogenFactor };
    expect(food(ndb ?? "")).toMatchObject({ moisture, protein, fat, carbohydrate, ash, sodium, potassium, energy });
  });

  it.each([
    // NDB number, what, samples, standard error, least, greatest, as file NUT_DATA prints them
    ["20083", "protein", { n: 65, standardError: "0.095" }],
    ["20081", "protein", { n: 61, standardError: "0.131" }],
    ["20080", "protein", { n: 3, standardError: "1.185", low: "10.84", high: "14.40" }],
    ["20064", "protein", { n: 11, standardError: "0.281", low: "9.22", high: "12.08" }],
    ["20064", "ash", { n: 11, standardError: "0.018", low: "1.09", high: "1.29" }],
    ["20640", "moisture", { n: 10, standardError: "0.111", low: "12.18", high: "13.23" }],
    ["48052", "protein", { n: 1 }],
  ] as const)("%s: spread of %s", (ndb, of, spread) => {
    expect(food(ndb).spread?.[of]).toEqual(spread);
  });
});
