import type { Material } from "@noodlewright/core/answers";
import { describe, expect, it } from "vitest";
import { catalogue } from "#core/materials/catalogue.ts";
import { dec, sum } from "#core/number/decimal.ts";
import { catalogued } from "./catalogued.ts";
import { eaten, hundred, nothingBut } from "./portion-eaten.ts";

/** Source of all values here: MEXT, Standard Tables of Food Composition in Japan 2020, read in a copy. */
const foods = catalogue().filter(({ key }) => key.startsWith("mext "));
const closed = foods.filter(({ kind, fat }) => kind !== "egg" && fat !== undefined);

const item = (number: string): Material => catalogued(`mext ${number}`);

describe("Standard Tables of Food Composition in Japan 2020", () => {
  it("has 19 ingredients and 11 noodles here", () => {
    expect(foods).toHaveLength(30);
    expect(closed).toHaveLength(16);
  });

  // Grams are printed to one place and carbohydrate is by difference; tolerance: five roundings of half a last digit.
  it.each(closed)("$key $name adds up to 100 g", ({ moisture, protein, fat, carbohydrate, ash }) => {
    const total = sum([moisture, protein?.value, fat, carbohydrate, ash].map((part) => dec(part ?? Number.NaN)));
    expect(Math.abs(total.minus(100).toNumber())).toBeLessThanOrEqual(0.25);
  });

  it.each([
    // item number, salt equivalent in g as printed, to one place
    ["01047", "1.0"],
    ["01048", "0.2"],
    ["01187", "1.2"],
    ["01052", "2.1"],
    ["01053", "0.4"],
    ["01038", "2.5"],
    ["01039", "0.3"],
    ["01127", "0.0"],
    ["01128", "0.0"],
    ["01074", "0.0"],
    ["01075", "0.0"],
  ])("%s: the salt equivalent printed is sodium × 2.54", (number, salt) => {
    const figures = { moisture: "14 %", sodium: `${item(number).sodium} mg` };
    expect(hundred(eaten(nothingBut("house flour", figures), "JP"), "salt").toFixed(1)).toBe(salt);
  });

  it.each([
    // item number, moisture, protein, ash, sodium, potassium, as printed
    ["01015", "14.0", "8.3", "0.4", "0", "110"],
    ["01020", "14.5", "11.8", "0.4", "0", "89"],
    ["01023", "14.5", "12.8", "1.6", "2", "330"],
    ["01071", "6.5", "72.0", "1.2", "60", "90"],
    ["01122", "13.5", "12.0", "1.8", "2", "410"],
    ["02034", "18.0", "0.1", "0.2", "2", "34"],
    ["12004", "75.0", "12.2", "1.0", "140", "130"],
    ["01047", "33.0", "8.6", "1.5", "410", "350"],
  ])("%s is as printed", (number, moisture, value, ash, sodium, potassium) => {
    expect(item(number)).toMatchObject({ moisture, protein: { value }, ash, sodium, potassium });
  });
});
