import { told } from "@noodlewright/core";
import { describe, expect, it } from "vitest";
import { formulaOf } from "#core/formula/formula.ts";
import { dec } from "#core/number/decimal.ts";
import { flour, noteCodesOf, type Written, workedOut } from "./worked-out.ts";

const house = (moisture: string) => [{ name: "house", amount: "100 %", figures: flour(moisture) }];
type Ingredient = NonNullable<Written["ingredients"]>[number];
const eggs: Ingredient = { name: "pooled egg", amount: "10 %", figures: { kind: "egg", moisture: "75 %" } };
const plain: Pick<Written, "ingredients" | "alkali"> = {
  ingredients: [eggs],
  alkali: [{ name: "sodium carbonate", amount: "1 %" }],
};
const rich: Pick<Written, "ingredients" | "alkali" | "salt"> = { ...plain, salt: "1 %" };

/** Rounded to ten places. */
const rounded = (value: string): string => dec(value).toDecimalPlaces(10).toString();

describe("the three ways of stating water", () => {
  it.each([
    // added 36 %: 7.5 % of it in the eggs
    ["added", { added: "36 %" }, "28.5", "36"],
    ["tap", { tap: "28.5 %" }, "28.5", "36"],
    // all water 14 + 36 = 50 of 100 + 28.5 + 10 + 1 = 139.5
    ["dough", { dough: "35.842293906810035842293906810036 %" }, "28.5", "36"],
  ] as const)("%s", (_, water, tap, added) => {
    const { formula } = workedOut({ flours: house("14 %"), water, ...plain });
    expect(rounded(formula.water.tap.value)).toBe(tap);
    expect(rounded(formula.water.added.value)).toBe(added);
    expect(rounded(formula.water.carried.value)).toBe("7.5");
    expect(rounded(formula.water.flour.value)).toBe("14");
    expect(rounded(formula.water.dough.value)).toBe("139.5");
    expect(rounded(formula.water.doughWater.value)).toBe("35.8422939068");
  });

  it("pours nothing where the eggs bring exactly what is stated", () => {
    const { formula } = workedOut({ flours: house("14 %"), water: { added: "7.5 %" }, ingredients: [eggs] });
    expect(formula.water.tap.value).toBe("0");
  });
});

/** The dough as solids and water per 100 of all the dry flour: this is what must not change with the flour at hand. */
function composition(written: Written) {
  const { formula } = workedOut(written);
  const dryFlour = dec(100).minus(formula.water.flour.value);
  const perDry = (value: string): string => dec(value).times(100).div(dryFlour).toDecimalPlaces(10).toString();
  return {
    water: perDry(dec(formula.water.flour.value).plus(formula.water.added.value).toString()),
    dough: perDry(formula.water.dough.value),
    doughWater: rounded(formula.water.doughWater.value),
    others: formula.lines.filter(({ id }) => !/flour|water/u.test(id)).map(({ parts }) => perDry(parts.value)),
  };
}

describe("water stated on a reference flour moisture", () => {
  const waters = [{ added: "36 %" }, { tap: "29 %" }, { dough: "36 %" }] as const;
  const cases = waters.flatMap((water) => ["9 %", "12.3 %", "14 %", "15.5 %"].map((moisture) => ({ water, moisture })));

  it.each(cases)("keeps dry matter, dough water, salt, eggs and alkali: $water on flour of $moisture", (one) => {
    const asWritten = composition({ flours: house("14 %"), water: one.water, ...rich });
    const onHand = composition({
      flours: house(one.moisture),
      water: { ...one.water, onFlourMoisture: "14 %" },
      ...rich,
    });
    expect(onHand).toEqual(asWritten);
  });

  it("keeps them for a formula written in masses, and for alkali by alkalinity", () => {
    const written = (moisture: string, onFlourMoisture?: string): Written => ({
      flours: [{ name: "house", amount: "800 g", figures: flour(moisture) }],
      water: { tap: "272 g", ...(onFlourMoisture && { onFlourMoisture }) },
      salt: "8 g",
      alkali: [{ name: "potassium carbonate", amount: "9 g", as: "alkalinity" }],
      ingredients: [{ ...eggs, amount: "60 g" }],
    });
    expect(composition(written("11 %", "14 %"))).toEqual(composition(written("14 %")));
  });

  it("says so", () => {
    const outcome = formulaOf({ name: "x", flours: house("11 %"), water: { added: "34 %", onFlourMoisture: "14 %" } });
    expect(noteCodesOf(outcome)).toEqual(["water.reference-moisture"]);
    const text = (flours: Written["flours"]): string => {
      const written = formulaOf({ name: "x", flours, water: { added: "34 %", onFlourMoisture: "14 %" } });
      return written.ok ? written.notes.map(told).join(" ") : "refused";
    };
    const wheat = { name: "bread flour", amount: "94 %" };
    expect(text([{ ...wheat, amount: "100 %" }])).not.toContain("not that of each");
    expect(text([wheat, { name: "vital wheat gluten", amount: "6 %" }])).toContain(
      "the dry matter of all together is kept and not that of each",
    );
  });
});

describe("notes", () => {
  it.each([
    ["water.unusual", { water: { added: "24.9 %" } }],
    ["water.unusual", { water: { added: "50.1 %" } }],
  ])("%s", (code, written) => {
    const base = { name: "x", flours: house("14 %"), water: { added: "36 %" } };
    expect(noteCodesOf(formulaOf(base))).toEqual([]);
    expect(noteCodesOf(formulaOf({ ...base, ...written }))).toContain(code);
  });
});
