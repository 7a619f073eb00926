import { told } from "@noodlewright/core";
import { describe, expect, it } from "vitest";
import { formulaOf } from "#core/formula/formula.ts";
import { codesOf, toldOf } from "../told-of.ts";
import { listed, partsOf, workedOut } from "./worked-out.ts";

const plain = { flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "36 %" } };

describe("shares of the flours", () => {
  it.each([
    ["shares", ["70 %", "30 %"], ["70.000000", "30.000000"]],
    ["a rest", ["70 %", "rest"], ["70.000000", "30.000000"]],
    ["a rest first", ["rest", "12.5 %"], ["87.500000", "12.500000"]],
    ["a rest beside nothing", ["rest"], ["100.000000"]],
    ["grams", ["350 g", "150 g"], ["70.000000", "30.000000"]],
    ["pounds and ounces", ["1 lb", "4 oz"], ["80.000000", "20.000000"]],
    ["masses of two systems", ["453.59237 g", "1 lb"], ["50.000000", "50.000000"]],
    ["a flour of nothing", ["100 %", "0 %"], ["100.000000", "0.000000"]],
  ] as const)("%s: %j", (_, amounts, expected) => {
    const flours = amounts.map((amount, index) => ({ name: index === 0 ? "bread flour" : "cake flour", amount }));
    const { formula } = workedOut({ ...plain, flours });
    expect(flours.map((_flour, index) => partsOf(formula, `flour.${index + 1}`))).toEqual(expected);
  });
});

describe("amounts in % of flour and in masses", () => {
  it("come to the same formula", () => {
    const inPercent = workedOut({
      flours: listed({ "bread flour": "60 %", "cake flour": "rest" }),
      water: { tap: "30 %" },
      alkali: [{ name: "sodium carbonate", amount: "0.8 %" }],
      salt: "1.5 %",
      ingredients: [{ name: "whole egg", amount: "8 %" }],
      dusting: { name: "cornstarch", amount: "2 %" },
    }).formula;
    const inGrams = workedOut({
      flours: listed({ "bread flour": "300 g", "cake flour": "0.2 kg" }),
      water: { tap: "150 g" },
      alkali: [{ name: "sodium carbonate", amount: "4 g" }],
      salt: "7.5 g",
      ingredients: [{ name: "whole egg", amount: "40 g" }],
      dusting: { name: "cornstarch", amount: "10 g" },
    }).formula;
    expect(inGrams.lines.map((line) => line.parts.value)).toEqual(inPercent.lines.map((line) => line.parts.value));
    expect(inGrams.dusting?.parts.value).toBe(inPercent.dusting?.parts.value);
    expect(inGrams.water.doughWater.value).toBe(inPercent.water.doughWater.value);
    expect(inGrams.writtenFlour?.value).toBe("500");
    expect(inPercent.writtenFlour).toBeUndefined();
  });

  it("puts flours first, then tap water, alkali, salt and the rest", () => {
    const { formula } = workedOut({
      ...plain,
      ingredients: [{ name: "whole egg", amount: "5 %" }],
      salt: "1 %",
      alkali: [{ name: "potassium carbonate", amount: "1 %" }],
    });
    expect(formula.lines.map(({ id }) => id)).toEqual(["flour.1", "water", "alkali.1", "salt", "ingredient.1"]);
    expect(formula.salt.value).toBe("1");
  });

  it("counts salt that is listed among the ingredients", () => {
    const { formula } = workedOut({ ...plain, salt: "1 %", ingredients: [{ name: "table salt", amount: "0.5 %" }] });
    expect(formula.salt.value).toBe("1.5");
  });
});

/**
 * Molar masses of the sources in test/outside/chemistry-molar-mass.test.ts: Na2CO3 105.988, K2CO3 138.204,
 * Na2CO3.10H2O 286.138 g/mol; carbonates take up two equivalents.
 */
describe("doses of alkali", () => {
  it.each([
    ["product", "sodium carbonate", "0.9 %", undefined, 0.9],
    ["product in so many words", "sodium carbonate decahydrate", "2.7 %", "product", 2.7],
    ["anhydrous salts of crystals", "sodium carbonate decahydrate", "1 %", "anhydrous salts", 286.138 / 105.988],
    ["anhydrous salts of a dry salt", "potassium carbonate", "1 %", "anhydrous salts", 1],
    ["alkalinity as % soda, in potash", "potassium carbonate", "1 %", "alkalinity", 138.204 / 105.988],
    ["alkalinity as % soda, in soda", "sodium carbonate", "1 %", "alkalinity", 1],
    ["alkalinity in meq, in soda", "sodium carbonate", "18 meq", "alkalinity", (18 * 105.988) / 2000],
    ["alkalinity in meq, in so few words", "potassium carbonate", "18 meq", undefined, (18 * 138.204) / 2000],
    ["alkalinity of crystals in meq", "sodium carbonate decahydrate", "18 meq", "alkalinity", (18 * 286.138) / 2000],
    ["alkalinity of bicarbonate in meq", "sodium bicarbonate", "10 meq", "alkalinity", (10 * 84.006) / 1000],
  ] as const)("%s: %s %s", (_, name, amount, as, expected) => {
    const { formula } = workedOut({ ...plain, alkali: [{ name, amount, ...(as && { as }) }] });
    expect(Number(partsOf(formula, "alkali.1"))).toBeCloseTo(expected, 5);
  });

  it("takes a liquid of stated composition, its water counted", () => {
    const { formula } = workedOut({
      ...plain,
      alkali: [
        {
          name: "kitchen liquor",
          amount: "1 %",
          as: "anhydrous salts",
          figures: { composition: { K2CO3: "24 %", Na2CO3: "16 %", water: "rest" } },
        },
      ],
    });
    expect(partsOf(formula, "alkali.1")).toBe("2.500000");
    expect(formula.water.carried.value).toBe("1.5");
    expect(formula.water.tap.value).toBe("34.5");
    expect(formula.alkali?.anhydrous.value).toBe("1");
    expect(formula.alkali?.potassiumShare?.value).toBe("60");
    expect(formula.alkali?.sodiumShare?.value).toBe("40");
  });

  it("states a dose in grams as anhydrous salts", () => {
    const { formula } = workedOut({
      flours: [{ name: "bread flour", amount: "500 g" }],
      water: { tap: "170 g" },
      alkali: [{ name: "sodium carbonate decahydrate", amount: "5 g", as: "anhydrous salts" }],
    });
    expect(formula.alkali?.anhydrous.value.slice(0, 12)).toBe("1");
  });

  it("of nothing have no share of potassium", () => {
    const { formula } = workedOut({ ...plain, alkali: [{ name: "sodium carbonate", amount: "0 %" }] });
    expect(formula.alkali?.anhydrous.value).toBe("0");
    expect(formula.alkali?.sodiumShare).toBeUndefined();
  });

  it("has no potassium share where there is no carbonate", () => {
    const { formula } = workedOut({ ...plain, alkali: [{ name: "sodium bicarbonate", amount: "1 %" }] });
    expect(formula.alkali?.potassiumShare).toBeUndefined();
    expect(Number(formula.alkali?.alkalinityM.value)).toBeCloseTo(1000 / 84.006, 6);
    expect(formula.alkali?.alkalinityP.value).toBe("0");
  });
});

it("a product that has drawn water holds so much less of all else, and brings the water", () => {
  const figures = {
    kind: "alkali" as const,
    composition: { K2CO3: "97 %", inert: "1 %", water: "rest" },
    moisture: "5 %",
  };
  const { formula } = workedOut({ ...plain, alkali: [{ name: "class powder", amount: "1 %", figures }] });
  // 98 of dry matter in 98 of it before, in 95 now
  expect(Number(formula.alkali?.anhydrous.value)).toBeCloseTo((0.97 * 95) / 98, 12);
  expect(Number(formula.water.carried.value)).toBeCloseTo(0.05, 12);
});

it.each([
  ["110 %", "rest", "take more than 10 % off for the rest, or remove it"],
  ["100 %", "rest", "take something off for the rest, or remove it"],
  ["90 %", "20 %", "take 10 % away"],
  ["90 %", "5 %", "add 5 %, or write one flour as `amount: rest`"],
])("flours of %s and %s are told what would fit", (first, second, advice) => {
  const flours = listed({ "bread flour": first, "cake flour": second });
  const refusal = formulaOf({ name: "class noodle", flours, water: { added: "36 %" } });
  expect(refusal.ok ? [] : refusal.problems.map((one) => told(one).advice)).toEqual([advice]);
});

describe("amounts that cannot be", () => {
  it.each([
    ["materials.unknown", { flours: listed({ "bread flour": "0 %", "no such flour": "100 %" }) }],
    ["alkali.no-strength", { alkali: [{ name: "table salt", amount: "1 %", as: "anhydrous salts" }] }],
    ["alkali.dose-unit", { alkali: [{ name: "sodium carbonate", amount: "17 meq", as: "product" }] }],
    ["alkali.no-composition", { alkali: [{ name: "sodium carbonate", amount: "1 %", replaceWith: "whole egg" }] }],
  ])("%s of %j", (code, written) => {
    const outcome = formulaOf({ name: "test", ...plain, ...written });
    expect(codesOf(outcome)).toEqual([code]);
    expect(toldOf(outcome).every(({ kind }) => kind === "input")).toBe(true);
  });

  it("says everything in one go, what cannot be read together with what cannot be", () => {
    const outcome = formulaOf({
      name: "test",
      flours: listed({ "bread flour": "90 %", "hourse flour": "5 %" }),
      water: { added: "36" },
      sault: "1 %",
      alkali: [{ name: "sodium carbonat", amount: "1 %" }],
    });
    expect([...codesOf(outcome)].sort()).toEqual([
      "flours.shares-total",
      "materials.unknown",
      "materials.unknown",
      "quantity.unreadable",
      "spec.unknown-key",
    ]);
  });
});

describe("an alkaline product by its strength", () => {
  it("takes the place of another when it is written in one line", () => {
    const alkali = [{ name: "sodium carbonate", amount: "1 %", replaceWith: "K2CO3 6, Na2CO3 4 at 12 %" }];
    const outcome = formulaOf({ name: "x", ...plain, alkali });
    const line = outcome.ok ? outcome.value.formula.lines.find(({ role }) => role === "alkali") : undefined;
    // meq: 1 g of Na2CO3 is 18.870; 1 g of the solution 0.12 × (0.6 × 2000 / 138.204 + 0.4 × 2000 / 105.988), by hand
    expect(Number(line?.parts.value)).toBeCloseTo(9.688, 3);
    expect(outcome.ok && outcome.value.formula.allergensUnknown).toEqual([]);
  });

  it("that rests on a hydrometer carries the doubt of the density into the alkalinity, and says what was read where", () => {
    const solution = { salts: { K2CO3: 6, Na2CO3: 4 }, strength: "28 °Bé" };
    const outcome = formulaOf({
      name: "x",
      ...plain,
      alkali: [{ name: "bottle", amount: "4 %", figures: { solution } }],
    });
    const { range, value } = (outcome.ok ? outcome.value.formula.alkali?.alkalinityM : undefined) ?? { value: "0" };
    expect(Number(range?.low)).toBeLessThan(0.995 * Number(value));
    expect(Number(range?.high)).toBeGreaterThan(1.005 * Number(value));
    expect(outcome.ok && outcome.notes.map(told).join()).toContain("28 °Bé is taken as read at 15.6 °C");
  });
});
