import type { Formula } from "@noodlewright/core/answers";
import type { Decimal, DecimalText } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formulaOf } from "#core/formula/formula.ts";
import { dec } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { figuresIn } from "../report/figures-in.ts";
import { expectOneFigureAnId, expectSound, expectWorkingHolds } from "../report/sound.ts";
import { answered } from "../told-of.ts";
import { flours, formulas, percent } from "./random-spec.ts";
import { type Written, workedOut } from "./worked-out.ts";

const near = (one: DecimalText, other: DecimalText): boolean => dec(one).minus(other).abs().lt("1e-20");

function expectSameFormula(one: Formula, other: Formula): void {
  expect(one.lines.map(({ id }) => id)).toEqual(other.lines.map(({ id }) => id));
  one.lines.forEach((line, index) => {
    expect(near(line.parts.value, other.lines[index]?.parts.value ?? "-1"), line.id).toBe(true);
  });
  expect(near(one.water.doughWater.value, other.water.doughWater.value)).toBe(true);
  expect(near(one.blend.moisture.value, other.blend.moisture.value)).toBe(true);
}

/** The spec written again in masses, as product, on so much flour. The flour is the one at hand. */
function inMasses(written: Written, formula: Formula, flour: Decimal, unit: "g" | "oz"): Written {
  const grams = unit === "g" ? dec(1) : dec("28.349523125");
  const mass = (id: string): string => {
    const line = [...formula.lines, ...(formula.dusting ? [formula.dusting] : [])].find((one) => one.id === id);
    const value = dec(line?.parts.value ?? 0)
      .times(flour)
      .div(100)
      .div(grams);
    return `${value.toSignificantDigits(32).toFixed()} ${unit}`;
  };
  return {
    flours: written.flours.map((one, index) => ({ ...one, amount: mass(`flour.${index + 1}`) })),
    water: { tap: mass("water") },
    alkali: (written.alkali ?? []).map((one, index) => ({
      name: one.name,
      ...(one.figures && { figures: one.figures }),
      amount: mass(`alkali.${index + 1}`),
    })),
    ...(written.salt && { salt: mass("salt") }),
    ingredients: (written.ingredients ?? []).map((one, index) => ({ ...one, amount: mass(`ingredient.${index + 1}`) })),
    ...(written.dusting && { dusting: { ...written.dusting, amount: mass("dusting") } }),
  };
}

describe("any formula", () => {
  it("is sound and the same after JSON, shows workings that a reader can work out again, and one figure for an id", () => {
    always(40, [formulas], (written) => {
      const outcome = formulaOf({ name: "any", ...written });
      expectSound(outcome);
      const { formula } = answered(outcome);
      const figures = figuresIn(formula);
      expectOneFigureAnId(figures);
      for (const figure of figures) expectWorkingHolds(figure, formula.graph);
    });
  });

  it("is the same formula when written in masses, and on k times as much and 1/k times as much flour", () => {
    always(
      40,
      [
        formulas,
        fc.integer({ min: 50, max: 50_000 }),
        fc.integer({ min: 2, max: 97 }),
        fc.constantFrom("g" as const, "oz" as const),
      ],
      (written, flour, k, unit) => {
        const { formula } = workedOut(written);
        for (const size of [dec(flour), dec(flour).times(k), dec(flour).div(k)]) {
          expectSameFormula(workedOut(inMasses(written, formula, size, unit)).formula, formula);
        }
      },
    );
  });

  it("conserves water, whichever way it is stated, and adds up to its dough", () => {
    always(40, [formulas], (written) => {
      const { formula } = workedOut(written);
      const { water } = formula;
      const onHand = inMasses(written, formula, dec(1000), "g");
      const shown = (value: DecimalText): string => `${dec(value).toSignificantDigits(32).toFixed()} %`;
      const ways = [
        { tap: shown(water.tap.value) },
        { added: shown(water.added.value) },
        { dough: shown(water.doughWater.value) },
      ];
      for (const way of ways) expectSameFormula(workedOut({ ...onHand, water: way }).formula, formula);
      const lines = formula.lines.map(({ parts, material }) => dec(parts.value).times(material.moisture).div(100));
      const all = lines.reduce((total, one) => total.plus(one), dec(0));
      expect(all.minus(water.flour.value).minus(water.added.value).abs().lt("1e-20")).toBe(true);
      const dough = formula.lines.reduce((total, { parts }) => total.plus(parts.value), dec(0));
      expect(near(dough.toString(), water.dough.value)).toBe(true);
    });
  });

  it("blends alike whatever the order of the flours", () => {
    always(40, [flours, percent(30, 45)], (list, added) => {
      const one = workedOut({ flours: list, water: { added } }).formula;
      const other = workedOut({ flours: [...list].reverse(), water: { added } }).formula;
      const values = ({ blend }: Formula): readonly (string | undefined)[] =>
        [
          blend.moisture,
          blend.protein?.asIs,
          blend.protein?.at14,
          blend.glutenProtein?.dry,
          blend.ash?.at14,
          blend.wholegrain,
          blend.price,
        ].map((figure) => figure && dec(figure.value).toFixed(20));
      expect(values(other)).toEqual(values(one));
      expect([...other.allergens].sort()).toEqual([...one.allergens].sort());
    });
  });

  it("with water on a reference moisture is the formula of that flour when the flour at hand is that flour", () => {
    always(40, [formulas, percent(9, 16)], (written, moisture) => {
      const house = { name: "house flour", amount: "100 %", figures: { moisture, protein: "11 %", ash: "0.4 %" } };
      const { onFlourMoisture: _, ...water } = written.water;
      const plain = { ...written, flours: [house], water };
      const referred = { ...plain, water: { ...water, onFlourMoisture: moisture } };
      expectSameFormula(workedOut(referred).formula, workedOut(plain).formula);
    });
  });
});
