import type { Formula } from "@noodlewright/core/answers";
import { describe, expect, it } from "vitest";
import { planBatch } from "#core/batch/batch.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { listed, type Written, workedOut } from "../core/formula/worked-out.ts";
import { answered } from "../core/told-of.ts";

/** Flour of 14 % moisture: what the laboratories mean unless they say otherwise. */
const flour = { moisture: "14 %", protein: "11 %", ash: "0.4 %" };
const blend91 = { composition: { Na2CO3: "90 %", K2CO3: "10 %" } };
const dry = { composition: { inert: "100 %" }, kind: "alkali" } as const;

type Check = readonly [
  what: string,
  spec: Written,
  figure: (formula: Formula) => string | undefined,
  expected: number,
  tolerance: number,
  source: string,
];

const parts =
  (id: string) =>
  ({ lines }: Formula): string | undefined =>
    lines.find((line) => line.id === id)?.parts.value;

const textbook: Written = {
  flours: [{ name: "noodle flour", amount: "300 g", figures: flour }],
  water: { tap: "96 g" },
  alkali: listed({ "sodium carbonate": "2.7 g", "potassium carbonate": "0.3 g" }),
};
const textbookSource =
  "laboratory method of a noodle textbook, read in two copies: 300 g flour, 96 mL water, 2.7 g Na2CO3, 0.3 g K2CO3";

const canadian: Written = {
  flours: [{ name: "noodle flour", amount: "50 g", figures: flour }],
  water: { tap: "17 g" },
  alkali: [{ name: "kansui 9 to 1", amount: "0.5 g", figures: blend91 }],
  salt: "0.5 g",
};
const canadianSource =
  "Hatcher, Lukow, Dexter, Shahin and Edwards, Recent advance in Canadian research on Asian noodles: 50 g flour, 34 % water, 1 % salt, 1 % kansui 9:1";

const hokkaido: Written = {
  flours: [{ name: "noodle flour", amount: "100 %", figures: flour }],
  water: { tap: "33 %" },
  salt: "1 %",
  alkali: [{ name: "kansui", amount: "1 %", figures: dry }],
};
const hokkaidoSource = "Hokkaido food-processing centre, project note, Yamamoto and others: 100 : 33 : 1 : 1";

const liquor: Written = {
  flours: [{ name: "noodle flour", amount: "6 g", figures: flour }],
  water: { tap: "0 g" },
  alkali: [
    {
      name: "kansui liquor",
      amount: "8 g",
      figures: { composition: { K2CO3: "0.45 %", Na2CO3: "0.3 %", water: "rest" } },
    },
  ],
};
const liquorSource =
  "NARO Tohoku, result tohoku05-31 (2005): 8 mL of K2CO3 4.5 g/L and Na2CO3 3.0 g/L on 6 g flour, printed as 100:1";

const egg: Written = {
  flours: [{ name: "flour", amount: "350 oz", figures: flour }],
  water: { added: "56 %" },
  ingredients: [{ name: "whole egg", amount: "10 oz", figures: { kind: "egg", moisture: "75 %" } }],
};
const eggSource = "T. Lehmann, answer on egg and absorption: 350 oz flour, 56 % water, 10 oz egg of 75 % water";

const alkaliOf = (composition: Readonly<Record<string, string>>): Written => ({
  ...hokkaido,
  alkali: [{ name: "kansui", amount: "1 %", figures: { composition } }],
});
const alkalinity = (formula: Formula) => formula.alkali?.alkalinityM.value;
const equivalents = "1 % of flour, two equivalents a mol, 105.99 (USP 32) and 138.21 g/mol (USP 32)";

const checks: readonly Check[] = [
  ["water", textbook, parts("water"), 32, 0.05, textbookSource],
  ["alkali", textbook, (f) => f.alkali?.anhydrous.value, 1, 0.005, textbookSource],
  ["soda of the carbonates", textbook, (f) => f.alkali?.sodiumShare?.value, 90, 0.5, textbookSource],
  ["dough on 100 flour", textbook, (f) => f.water.dough.value, 133, 0.05, textbookSource],
  ["water", canadian, parts("water"), 34, 0.5, canadianSource],
  ["salt", canadian, (f) => f.salt.value, 1, 0.05, canadianSource],
  ["kansui", canadian, (f) => f.alkali?.product.value, 1, 0.05, canadianSource],
  ["soda of the kansui", canadian, (f) => f.alkali?.sodiumShare?.value, 90, 0.5, canadianSource],
  ["alkali of 8 mL", liquor, (f) => f.alkali?.anhydrous.value, 1, 0.005, liquorSource],
  ["potash of 8 mL", liquor, (f) => f.alkali?.potassiumShare?.value, 60, 0.5, liquorSource],
  [
    "dough, no salt",
    { ...hokkaido, water: { tap: "36 %" }, salt: "0 %" },
    (f) => f.water.dough.value,
    137,
    0.005,
    "Japanese patent 6571559, examples 10 to 14: 100 powder, 36 water, 1 kansui",
  ],
  ["added water of 196 oz", egg, (f) => f.water.added.value, (100 * 196) / 350, 0.05 / 3.5, eggSource],
  ["water to pour of 188.5 oz", egg, parts("water"), (100 * 188.5) / 350, 0.05 / 3.5, eggSource],
  [
    "dough water",
    { ...hokkaido, water: { tap: "35 %" } },
    (f) => f.water.doughWater.value,
    35.77,
    0.01,
    "100 flour at 14 %, 35 water, 1 salt, 1 alkali: 49 of 137, by hand",
  ],
  [
    "water that a raw noodle of 33.0 % was made with",
    { ...hokkaido, water: { dough: "33 %" }, salt: "0 %", alkali: [{ name: "salts", amount: "2 %", figures: dry }] },
    parts("water"),
    29.34,
    0.005,
    "MEXT Standard Tables 2020, item 01047: raw Chinese noodle 33.0 % water; 2 % salts on 14 % flour, by hand",
  ],
  ["9:1, meq per 100 g flour", alkaliOf({ Na2CO3: "90 %", K2CO3: "10 %" }), alkalinity, 18.43, 0.005, equivalents],
  ["4:6, meq per 100 g flour", alkaliOf({ Na2CO3: "40 %", K2CO3: "60 %" }), alkalinity, 16.23, 0.005, equivalents],
  ["potash, meq per 100 g flour", alkaliOf({ K2CO3: "100 %" }), alkalinity, 14.47, 0.005, equivalents],
  [
    "liquid for 1.2 % of powder",
    {
      ...hokkaido,
      alkali: [
        {
          name: "liquid 30 °Bé",
          amount: "1.2 %",
          as: "anhydrous salts",
          figures: { composition: { K2CO3: "30.303 %", water: "rest" } },
        },
      ],
    },
    parts("alkali.1"),
    4,
    0.5,
    "note of an ingredient supplier: 3.3 times as much liquid of 30 °Bé as powder, about 4 %",
  ],
];

describe("published formulas through a spec", () => {
  it.each(checks)("%s", (_, spec, figure, expected, tolerance, source) => {
    const value = figure(workedOut(spec).formula);
    expect(Math.abs(Number(value) - expected), source).toBeLessThanOrEqual(tolerance + 1e-9);
  });
});

/** Exact masses of the ingredients in a load, g. */
function massesOf(written: Written): Readonly<Record<string, number>> {
  const { spec, formula } = answered(formulaOf({ name: "test", ...written }));
  const batch = answered(planBatch(spec, formula));
  return Object.fromEntries(batch.lines.map(({ line, exact }) => [line.id, Number(exact.value)]));
}

describe("batches", () => {
  it(`make the 399 g of dough that the formula gives (${textbookSource})`, () => {
    const { spec, formula } = workedOut(textbook);
    expect(Math.abs(Number(answered(planBatch(spec, formula)).target.dough.value) - 399)).toBeLessThanOrEqual(0.05);
  });

  it(`scale to 10 kg of dough (${hokkaidoSource}; 10 000 ÷ 1.35 by hand)`, () => {
    const masses = massesOf({ ...hokkaido, batch: { dough: "10 kg" } });
    const expected = { "flour.1": 7407.4, water: 2444.4, salt: 74.1, "alkali.1": 74.1 };
    for (const [id, mass] of Object.entries(expected)) {
      expect(Math.abs((masses[id] ?? 0) - mass), id).toBeLessThanOrEqual(0.05);
    }
  });

  /**
   * 34 % water on 100 g of flour of 14 % moisture; the flour weighed is 100 (100 − 14) / (100 − M), flour and water stay
   * 134 g. Rule of the farinograph, ICC Standard 115/1, as Food Sci. Technol. Res. 22(6):841 quotes it; table by hand.
   */
  it.each([
    ["11.0", 96.63, 37.37, 38.67],
    ["12.0", 97.73, 36.27, 37.12],
    ["13.0", 98.85, 35.15, 35.56],
    ["13.5", 99.42, 34.58, 34.78],
    ["14.0", 100.0, 34.0, 34.0],
    ["15.0", 101.18, 32.82, 32.44],
  ])("flour of %s %% moisture: weigh %d g, add %d g, which is %d %% of it", (moisture, weigh, add, percent) => {
    const spec: Written = {
      flours: [{ name: "house flour", amount: "100 %", figures: { ...flour, moisture: `${moisture} %` } }],
      water: { tap: "34 %", onFlourMoisture: "14 %" },
      batch: { dough: "134 g" },
    };
    const masses = massesOf(spec);
    expect(Math.abs((masses["flour.1"] ?? 0) - weigh)).toBeLessThanOrEqual(0.005);
    expect(Math.abs((masses["water"] ?? 0) - add)).toBeLessThanOrEqual(0.005);
    const { formula } = workedOut(spec);
    expect(Math.abs(Number(parts("water")(formula)) - percent)).toBeLessThanOrEqual(0.005);
    // 48 of 134 g whatever the flour
    expect(Math.abs(Number(formula.water.doughWater.value) - 35.82)).toBeLessThanOrEqual(0.005);
  });

  /** Rule of the Japanese noodle trade (trade page, read): a 25 kg bag makes 300 portions; raw mass by water on flour. */
  it.each([
    ["45 %", "120 g"],
    ["35 %", "112 g"],
    ["30 %", "108 g"],
    ["28 %", "106 g"],
  ])("25 kg of flour with %s water make about 300 portions of %s", (tap, rawWeight) => {
    const { spec, formula } = workedOut({
      ...hokkaido,
      water: { tap },
      salt: "0 %",
      alkali: [],
      batch: { flour: "25 kg", rawWeight },
    });
    const why = "the trade rounds 83.3 g of flour to 83 and the raw mass to whole grams";
    expect(Math.abs(Number(answered(planBatch(spec, formula)).target.bowls?.value) - 300), why).toBeLessThanOrEqual(2);
  });
});
