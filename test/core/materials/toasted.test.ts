import { askFormula, readNoodleData, told } from "@noodlewright/core";
import { measuredToasting } from "@noodlewright/core/sheet";
import { describe, expect, test } from "vitest";

const flour = {
  kind: "flour",
  moisture: "13.6 %",
  moistureUncertainty: "0.3 %",
  protein: "12 %",
  proteinBasis: "as is",
  allergens: [],
};
const toasted = { before: "1000 g", after: "940 g" };

function formulaOf(figures: object) {
  const reading = readNoodleData({
    name: "toasted",
    materials: { "oven flour": { ...flour, ...figures } },
    flours: [{ name: "oven flour", amount: "100 %" }],
    water: { added: "40 %" },
  });
  if (!reading.ok) return { codes: reading.problems.map(({ code }) => code) };
  const answer = askFormula(reading.value);
  return { codes: [], formula: reading.value.formula, notes: answer.ok ? answer.notes.map(told) : [] };
}

describe("a flour that the kitchen toasted", () => {
  // 1000 g with 136 g of water and 120 g of protein; 940 g with 76 g and 120 g (constant dry matter, by definition)
  test("has the moisture and the protein that follow from its masses", () => {
    const { formula } = formulaOf({ toasted });
    expect(Number(formula?.blend.moisture.value)).toBeCloseTo((100 * 76) / 940, 12);
    expect(Number(formula?.blend.protein?.asIs.value)).toBeCloseTo((100 * 120) / 940, 12);
    expect(Number(formula?.water.doughWater.value)).toBeCloseTo((100 * ((100 * 76) / 940 + 40)) / 140, 12);
  });

  test("keeps what its moisture was not sure of, in its smaller mass", () => {
    const { range } = formulaOf({ toasted }).formula?.blend.moisture ?? {};
    expect((Number(range?.high) - Number(range?.low)) / 2).toBeCloseTo((0.3 * 1000) / 940, 12);
  });

  test("is not counted as forming gluten unless the cook says so", () => {
    expect(formulaOf({ toasted }).formula?.blend.glutenProtein?.asIs.value).toBe("0");
    const said = formulaOf({ toasted, glutenForming: true });
    expect(Number(said.formula?.blend.glutenProtein?.asIs.value)).toBeCloseTo((100 * 120) / 940, 12);
    expect(formulaOf({}).formula?.blend.glutenProtein?.asIs.value).toBe("12");
  });

  test("is told with its loss, and that the water is to be tried out", () => {
    expect(formulaOf({ toasted }).notes?.join()).toMatch(/lost 6\.0 % .* 8\.09 % of moisture.*trial/su);
  });

  test("is refused where it lost more than its water", () => {
    expect(formulaOf({ toasted: { before: "1000 g", after: "863 g" } }).codes).toEqual(["toasted.beyond-water"]);
  });

  test("that lost all its water has none", () => {
    expect(formulaOf({ toasted: { before: "1000 g", after: "864 g" } }).formula?.blend.moisture.value).toBe("0");
  });

  test("is measured by the same sums", () => {
    const measured = measuredToasting({ ...toasted, moisture: "13.6 %", protein: "12 %" });
    const values = measured.ok ? measured.value.results.map(({ value }) => Number(value)) : [];
    expect(values[0]).toBeCloseTo((100 * 76) / 940, 12);
    expect(values[1]).toBeCloseTo((100 * 120) / 940, 12);
  });
});
