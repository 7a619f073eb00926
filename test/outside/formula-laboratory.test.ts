import type { Formula } from "@noodlewright/core/answers";
import { describe, expect, it } from "vitest";
import { planBatch } from "#core/batch/batch.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { type Written, workedOut } from "../core/formula/worked-out.ts";
import { answered } from "../core/told-of.ts";

/** Flour of 14 % moisture: what the laboratories mean unless they say otherwise. */
const flour = { moisture: "14 %", protein: "11 %", ash: "0.4 %" };
const blend91 = { composition: { Na2CO3: "90 %", K2CO3: "10 %" } };
const dry = { composition: { inert: "100 %" }, kind: "alkali" } as const;

interface Check {
  readonly what: string;
  readonly spec: Written;
  readonly figure: (formula: Formula) => string | undefined;
  readonly expected: number;
  readonly tolerance: number;
  readonly source: string;
}

const parts =
  (id: string) =>
  ({ lines }: Formula): string | undefined =>
    lines.find((line) => line.id === id)?.parts.value;

const textbook: Written = {
  flours: [{ name: "noodle flour", amount: "300 g", figures: flour }],
  water: { tap: "96 g" },
  alkali: [
    { name: "sodium carbonate", amount: "2.7 g" },
    { name: "potassium carbonate", amount: "0.3 g" },
  ],
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
const equivalents = "1 % of flour, two equivalents a mol, 105.99 (USP 32) and 138.21 g/mol (USP 32)";

const protein = (moisture: string, content: string, basis: string): Written => ({
  flours: [
    {
      name: "flour",
      amount: "100 %",
      figures: { moisture, protein: content, proteinBasis: basis, nitrogenFactor: 5.7, ash: "0.55 %", ashBasis: "dry" },
    },
  ],
  water: { tap: "34 %" },
});
const association = "Japanese instant noodle makers' association: typical flour 10.5 % protein at 13.7 % moisture";

const checks: readonly Check[] = [
  { what: "water", spec: textbook, figure: parts("water"), expected: 32, tolerance: 0.05, source: textbookSource },
  {
    what: "alkali",
    spec: textbook,
    figure: (f) => f.alkali?.anhydrous.value,
    expected: 1,
    tolerance: 0.005,
    source: textbookSource,
  },
  {
    what: "soda of the carbonates",
    spec: textbook,
    figure: (f) => f.alkali?.sodiumShare?.value,
    expected: 90,
    tolerance: 0.5,
    source: textbookSource,
  },
  {
    what: "dough on 100 flour",
    spec: textbook,
    figure: (f) => f.water.dough.value,
    expected: 133,
    tolerance: 0.05,
    source: textbookSource,
  },
  { what: "water", spec: canadian, figure: parts("water"), expected: 34, tolerance: 0.5, source: canadianSource },
  { what: "salt", spec: canadian, figure: (f) => f.salt.value, expected: 1, tolerance: 0.05, source: canadianSource },
  {
    what: "kansui",
    spec: canadian,
    figure: (f) => f.alkali?.product.value,
    expected: 1,
    tolerance: 0.05,
    source: canadianSource,
  },
  {
    what: "soda of the kansui",
    spec: canadian,
    figure: (f) => f.alkali?.sodiumShare?.value,
    expected: 90,
    tolerance: 0.5,
    source: canadianSource,
  },
  {
    what: "alkali of 8 mL",
    spec: liquor,
    figure: (f) => f.alkali?.anhydrous.value,
    expected: 1,
    tolerance: 0.005,
    source: liquorSource,
  },
  {
    what: "potash of 8 mL",
    spec: liquor,
    figure: (f) => f.alkali?.potassiumShare?.value,
    expected: 60,
    tolerance: 0.5,
    source: liquorSource,
  },
  {
    what: "dough, no salt",
    spec: { ...hokkaido, water: { tap: "36 %" }, salt: "0 %" },
    figure: (f) => f.water.dough.value,
    expected: 137,
    tolerance: 0.005,
    source: "Japanese patent 6571559, examples 10 to 14: 100 powder, 36 water, 1 kansui",
  },
  {
    what: "added water of 196 oz",
    spec: egg,
    figure: (f) => f.water.added.value,
    expected: (100 * 196) / 350,
    tolerance: 0.05 / 3.5,
    source: eggSource,
  },
  {
    what: "water to pour of 188.5 oz",
    spec: egg,
    figure: parts("water"),
    expected: (100 * 188.5) / 350,
    tolerance: 0.05 / 3.5,
    source: eggSource,
  },
  {
    what: "dough water",
    spec: { ...hokkaido, water: { tap: "35 %" } },
    figure: (f) => f.water.doughWater.value,
    expected: 35.77,
    tolerance: 0.01,
    source: "100 flour at 14 %, 35 water, 1 salt, 1 alkali: 49 of 137, by hand",
  },
  {
    what: "water that a raw noodle of 33.0 % was made with",
    spec: {
      ...hokkaido,
      water: { dough: "33 %" },
      salt: "0 %",
      alkali: [{ name: "salts", amount: "2 %", figures: dry }],
    },
    figure: parts("water"),
    expected: 29.34,
    tolerance: 0.005,
    source: "MEXT Standard Tables 2020, item 01047: raw Chinese noodle 33.0 % water; 2 % salts on 14 % flour, by hand",
  },
  {
    what: "9:1, meq per 100 g flour",
    spec: alkaliOf({ Na2CO3: "90 %", K2CO3: "10 %" }),
    figure: (f) => f.alkali?.alkalinityM.value,
    expected: 18.43,
    tolerance: 0.005,
    source: equivalents,
  },
  {
    what: "4:6, meq per 100 g flour",
    spec: alkaliOf({ Na2CO3: "40 %", K2CO3: "60 %" }),
    figure: (f) => f.alkali?.alkalinityM.value,
    expected: 16.23,
    tolerance: 0.005,
    source: equivalents,
  },
  {
    what: "potash, meq per 100 g flour",
    spec: alkaliOf({ K2CO3: "100 %" }),
    figure: (f) => f.alkali?.alkalinityM.value,
    expected: 14.47,
    tolerance: 0.005,
    source: equivalents,
  },
  {
    what: "liquid for 1.2 % of powder",
    spec: {
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
    figure: parts("alkali.1"),
    expected: 4,
    tolerance: 0.5,
    source: "note of an ingredient supplier: 3.3 times as much liquid of 30 °Bé as powder, about 4 %",
  },
  {
    what: "protein at 14 % mb",
    spec: protein("13.7 %", "10.5 %", "as is"),
    figure: (f) => f.blend.protein?.at14.value,
    expected: 10.46,
    tolerance: 0.005,
    source: association,
  },
  {
    what: "protein dry",
    spec: protein("13.7 %", "10.5 %", "as is"),
    figure: (f) => f.blend.protein?.dry.value,
    expected: 12.17,
    tolerance: 0.005,
    source: association,
  },
  {
    what: "ash 0.55 dry at 14 % mb",
    spec: protein("13.7 %", "10.5 %", "as is"),
    figure: (f) => f.blend.ash?.at14.value,
    expected: 0.473,
    tolerance: 0.0005,
    source: "SB/T 10137-93, premium noodle flour, ash 0.55 % dry",
  },
  {
    what: "6.0 % at 20 % moisture, dry",
    spec: protein("20 %", "6.0 %", "as is"),
    figure: (f) => f.blend.protein?.dry.value,
    expected: 7.5,
    tolerance: 0.05,
    source: "Iowa State University Extension, PM 1625, worked example",
  },
  {
    what: "6.4 % at 15 % is 6.0 % at 20 %",
    spec: protein("20 %", "6.4 %", "15 % mb"),
    figure: (f) => f.blend.protein?.asIs.value,
    expected: 6.0,
    tolerance: 0.05,
    source: "the same, the other way",
  },
];

describe("published formulas through a spec", () => {
  it.each(checks)("$what: $expected ($source)", ({ spec, figure, expected, tolerance }) => {
    const value = figure(workedOut(spec).formula);
    expect(Math.abs(Number(value) - expected)).toBeLessThanOrEqual(tolerance + 1e-9);
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
