import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { onMoisture } from "#core/materials/moisture.ts";
import { dec, sum } from "#core/number/decimal.ts";
import { always } from "../always.ts";
import { cereals, type Food, food } from "./ifct.ts";
import { eaten, hundred, nothingBut } from "./portion-eaten.ts";

/** A food as a certificate would state it; the table counts protein as N × 6.25 here. */
function figuresOf({ water, protcnt, ash, fatce, fibtg }: Food) {
  return {
    moisture: `${water} %`,
    protein: `${protcnt} %`,
    proteinBasis: "as is",
    nitrogenFactor: 6.25,
    ash: `${ash} %`,
    ashBasis: "as is",
    fat: `${fatce} %`,
    fibre: `${fibtg} %`,
  };
}

describe("Indian Food Composition Tables 2017", () => {
  it.each(cereals)(
    "%s: carbohydrate without fibre closes the sum to 100 g, and so does carbohydrate with fibre",
    (code) => {
      const { water, protcnt, ash, fatce, fibtg, choavldf } = food(code);
      const withFibre = dec(choavldf).plus(fibtg);
      const total = sum([water, protcnt, ash, fatce].map(dec)).plus(withFibre);
      expect(Math.abs(total.minus(100).toNumber())).toBeLessThanOrEqual(0.015);
      const carbohydrate = hundred(eaten(nothingBut("house flour", figuresOf(food(code))), "EU"), "carbohydrate");
      expect(Math.abs(carbohydrate - choavldf)).toBeLessThanOrEqual(0.015);
    },
  );

  it.each(cereals)("%s: the dry parts of the food add up to 100 % of its dry matter", (code) => {
    const { water, protcnt, ash, fatce, fibtg, choavldf } = food(code);
    const parts = [protcnt, ash, fatce, fibtg, choavldf].map((part) => onMoisture(dec(part), dec(water), dec(0)));
    const asPrinted = 0.015;
    expect(Math.abs(sum(parts).minus(100).toNumber())).toBeLessThanOrEqual((asPrinted * 100) / (100 - water));
  });

  it("comes back as printed from any basis", () => {
    const codes = fc.constantFrom(...cereals);
    const basis = fc.integer({ min: 0, max: 400 }).map((tenth) => dec(tenth).div(10));
    always(100, [codes, basis], (code, moisture) => {
      const { water, protcnt } = food(code);
      const back = onMoisture(onMoisture(dec(protcnt), water, moisture), moisture, water);
      expect(back.minus(protcnt).abs().lt("1e-25")).toBe(true);
    });
  });

  // Egg white and yolk have neither carbohydrate nor fibre, and the table works with 17 and 37 kJ/g as the EU does.
  it.each(["M002", "M003"])("%s: the energy printed follows from 17 and 37 kJ/g", (code) => {
    const figures = { ...figuresOf(food(code)), carbohydrate: "0 %", fibre: "0 %" };
    const kilojoule = hundred(eaten(nothingBut("house egg", figures), "EU"), "kilojoule");
    expect(Math.abs(kilojoule - food(code).enerc)).toBeLessThanOrEqual(1);
  });
});
