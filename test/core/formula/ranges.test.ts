import type { Figure } from "@noodlewright/core/figure";
import { describe, expect, it } from "vitest";
import { formulaOf } from "#core/formula/formula.ts";
import { basisRange, sumRange } from "#core/formula/ranges.ts";
import { dec } from "#core/number/decimal.ts";
import { toldOf } from "../told-of.ts";
import { flour, type Written, workedOut } from "./worked-out.ts";

/** The ends of a figure's range, to six places. */
function endsOf(figure: Figure | undefined): readonly string[] {
  return [figure?.range?.low, figure?.range?.high].map((end) => (end === undefined ? "none" : dec(end).toFixed(6)));
}

const house = { name: "house", amount: "60 %", figures: { ...flour("13 %"), moistureUncertainty: "0.5 %" } };
const known = { name: "known", amount: "40 %", figures: flour("12 %") };

describe("the range of alkaline salts whose strength is known to so much", () => {
  // sodium carbonate 105.988 g/mol and potassium carbonate 138.204 g/mol (CIAAW 2021), two equivalents each to M and one to P
  const { formula } = workedOut({
    flours: [known, { ...house, figures: flour("13 %") }],
    water: { added: "36 %" },
    alkali: [
      { name: "sodium carbonate", amount: "1 %", figures: { strengthUncertainty: "2 %" } },
      { name: "potassium carbonate", amount: "0.5 %" },
    ],
  });

  it("is that share of the uncertain one in anhydrous salts: 1 ± 0.02 and 0.5", () => {
    expect(formula.alkali?.anhydrous.value).toBe("1.5");
    expect(endsOf(formula.alkali?.anhydrous)).toEqual(["1.480000", "1.520000"]);
    expect(formula.alkali?.anhydrous.range?.why).toBe("strength of the alkaline products");
  });

  it("is that share of the uncertain one in alkalinity", () => {
    // 2000 / 105.988 = 18.870061 and 0.5 × 2000 / 138.204 = 7.235681; 2 % of the first is 0.377401
    expect(dec(formula.alkali?.alkalinityM.value ?? 0).toFixed(6)).toBe("26.105741");
    expect(endsOf(formula.alkali?.alkalinityM)).toEqual(["25.728340", "26.483143"]);
    // half of each
    expect(endsOf(formula.alkali?.alkalinityP)).toEqual(["12.864170", "13.241571"]);
  });

  it("says how well the strength of one product is known", () => {
    const strength = formula.graph["alkali.1.anhydrous"];
    expect(endsOf(strength)).toEqual(["98.000000", "102.000000"]);
    expect(strength?.range?.why).toBe("strength known to ± 2 %");
    expect(formula.graph["alkali.2.anhydrous"]?.range).toBeUndefined();
  });
});

describe("the range of the dough's water where the moisture of a flour is known to so much", () => {
  const { water } = workedOut({ flours: [house, known], water: { added: "36 %" } }).formula;

  it("moves the flour's own water by its share: 0.6 × 0.5 of 12.6", () => {
    expect(water.flour.value).toBe("12.6");
    expect(endsOf(water.flour)).toEqual(["12.300000", "12.900000"]);
  });

  it("moves the dough's water by that in 136 of dough", () => {
    // 100 × (12.6 + 36) / 136 = 35.735294; 0.3 in 136 is 0.220588
    expect(dec(water.doughWater.value).toFixed(6)).toBe("35.735294");
    expect(endsOf(water.doughWater)).toEqual(["35.514706", "35.955882"]);
    expect(water.doughWater.range?.why).toBe("moisture of the flours");
  });
});

describe("sums and bases of figures with a range", () => {
  const figure = (value: string, range?: readonly [low: string, high: string]): Figure => ({
    ...workedOut({ flours: [{ ...known, amount: "100 %" }], water: { added: "36 %" } }).formula.water.flour,
    value,
    ...(range && { range: { low: range[0], high: range[1], why: "test" } }),
  });

  it("weigh every range, and turn it round where the weight is below zero", () => {
    const terms = [
      { weight: () => dec("2"), figure: figure("3", ["2.5", "4"]) },
      { weight: () => dec("5"), figure: figure("1") },
      { weight: () => dec("0"), figure: figure("1", ["0", "9"]) },
    ];
    // 2 × (2.5 − 3) and 2 × (4 − 3) beside 11
    expect(endsOf(sumRange(figure("11"), terms, "why"))).toEqual(["10.000000", "13.000000"]);
    expect(sumRange(figure("11"), terms.slice(1), "why").range).toBeUndefined();
  });

  it("bring a share to a basis at both ends of the moisture", () => {
    // 12 % as is at 13 % moisture is 12 × 86 / 87 at 14 %; at the ends 11 × 86 / 88 and 12.5 × 86 / 85
    const at14 = figure(dec(12).times(86).div(87).toString());
    const ranged = basisRange(at14, figure("12", ["11", "12.5"]), figure("13"), figure("13", ["12", "15"]).range);
    expect(endsOf(ranged)).toEqual(["10.750000", "12.647059"]);
    // without a range of the moisture: 11 × 86 / 87 and 12.5 × 86 / 87
    expect(endsOf(basisRange(at14, figure("12", ["11", "12.5"]), figure("13"), undefined))).toEqual([
      "10.873563",
      "12.356322",
    ]);
  });
});

describe("water that others bring", () => {
  /** Advice and expectation of the first problem. */
  function refusal(written: Written): readonly string[] {
    const outcome = formulaOf({ name: "test", ...written });
    const [problem] = toldOf(outcome);
    return [problem?.code ?? "", problem?.expected ?? "", problem?.advice ?? ""];
  }
  const flours = [{ ...known, amount: "100 %" }];
  const eggs = { name: "pooled egg", amount: "20 %", figures: { kind: "egg", moisture: "75 %" } } as const;

  it("beyond what is stated is told by how much, above zero", () => {
    // 15 % in the eggs for 10 %
    expect(refusal({ flours, water: { added: "10 %" }, ingredients: [eggs] })).toEqual([
      "water.below-carried",
      "at least the 15 % of flour that the other ingredients already bring",
      "raise the water, or take out 5 % of flour of what carries it",
    ]);
    // salt holds 0.2 % of water
    expect(refusal({ flours, water: { added: "0 %" }, salt: "1 %" })).toEqual([
      "water.below-carried",
      "more than 0 %, as the other ingredients bring next to no water",
      "write the water that the dough takes, such as `added: 36 %`",
    ]);
    // 100 + 20 of flour and eggs hold 12 + 15 of water, 27 / 120 = 22.5 %
    expect(refusal({ flours, water: { dough: "20 %" }, ingredients: [eggs] })).toEqual([
      "water.below-own",
      "at least the 22.5 % that the flours and the other ingredients bring before any is poured",
      "check the moisture of the flours, or raise the water",
    ]);
  });

  it("is taken off or added where a product takes the place of another, the tap water as stated for the old one", () => {
    const tap = (alkali: Written["alkali"]): string =>
      dec(workedOut({ flours, water: { tap: "30 %" }, alkali }).formula.water.tap.value).toFixed(6);
    // water of crystals 10 × 18.015 = 180.15 in 286.138 g/mol of sodium carbonate decahydrate, 105.988 of it the salt
    const crystals = "sodium carbonate decahydrate";
    // 2.7 × 180.15 / 286.138 = 1.699897 more to pour
    expect(tap([{ name: crystals, amount: "2.7 %", replaceWith: "sodium carbonate" }])).toBe("31.699897");
    // 1 × 180.15 / 105.988 = 1.699721 less
    expect(tap([{ name: "sodium carbonate", amount: "1 %", replaceWith: crystals }])).toBe("28.300279");
    // 2 × 180.15 / 105.988 = 3.399441 is 2.399441 more than 1 %
    const alkali = [{ name: "sodium carbonate", amount: "2 %", replaceWith: crystals }];
    expect(refusal({ flours, water: { tap: "1 %" }, alkali }).slice(1)).toEqual([
      "at least the 3.4 % of flour that the other ingredients already bring",
      "raise the water, or take out 2.4 % of flour of what carries it",
    ]);
  });
});
