import { type TrialRequest, waterAfter, waterTrial } from "@noodlewright/core/explore";
import { recalculated } from "@noodlewright/core/figure";
import { expect, test } from "vitest";
import { correctForLot } from "#core/blend/spec-substitute.ts";
import { formulaTrial } from "#core/explore/spec-trial.ts";
import { type Written, workedOut } from "../formula/worked-out.ts";
import { answered } from "../told-of.ts";

const rye = { protein: "9 %", moisture: "13 %", nitrogenFactor: 5.7 };
const strong = { protein: "12 %", moisture: "14 %", nitrogenFactor: 5.7 };
const egg = [{ name: "whole egg", amount: "10 %", figures: { kind: "egg", moisture: "76 %" } }] as const;

test("a trial tells added water, the egg's included, and not the water to pour", () => {
  const { formula } = workedOut({
    flours: [{ name: "strong flour", amount: "100 %", figures: strong }],
    water: { added: "36 %" },
    ingredients: [...egg],
  });
  const { doughs } = answered(formulaTrial(formula, {}));
  expect(doughs.map(({ water, added, absorption }) => [water.value, added.value, absorption?.value])).toEqual([
    ["27.4", "35", "35"],
    ["28.4", "36", "36"],
    ["29.4", "37", "37"],
  ]);
});

test("what a trial tells to write down gives back the water that was found", () => {
  const known = { ...strong, absorption: "36 %" };
  const { formula } = workedOut({
    flours: [
      { name: "strong flour", amount: "90 %", figures: known },
      { name: "rye flour", amount: "10 %", figures: rye },
    ],
    water: { added: "36.4 %" },
    ingredients: [...egg],
  });
  const { doughs, unknown, plusMinus } = answered(formulaTrial(formula, {}));
  const percent = doughs[1]?.absorption?.value ?? "";
  expect([unknown, percent, plusMinus?.value]).toEqual([["rye flour"], "40", "5"]);
  const own = (name: string, share: string, takes: string) => ({
    name,
    share,
    moisture: "14",
    ownWater: { percent: takes, plusMinus: "0" },
  });
  const before = [own("strong flour", "100", "36")];
  const after = [own("strong flour", "90", "36"), own("rye flour", "10", percent)];
  expect(waterAfter(before, after, "36").added.value).toBe("36.4");
});

test("a trial on flour of another moisture tells the water as the spec writes it", () => {
  const written: Written = {
    flours: [{ name: "strong flour", amount: "100 %", figures: { ...strong, moisture: "12 %" } }],
    water: { added: "34 %", onFlourMoisture: "14 %" },
  };
  const { doughs } = answered(formulaTrial(workedOut(written).formula, {}));
  expect(Number(doughs[1]?.written?.value)).toBeCloseTo(34, 12);
  const best = doughs[2]?.written?.value ?? "";
  const again = workedOut({ ...written, water: { added: `${best.slice(0, 12)} %`, onFlourMoisture: "14 %" } });
  expect(Number(again.formula.water.added.value)).toBeCloseTo(Number(doughs[2]?.added.value), 6);
});

test("a trial of several unknown flours tells only the water of the blend", () => {
  const { formula } = workedOut({
    flours: [
      { name: "strong flour", amount: "90 %", figures: strong },
      { name: "rye flour", amount: "10 %", figures: rye },
    ],
    water: { added: "36 %" },
  });
  const { doughs, unknown } = answered(formulaTrial(formula, {}));
  expect(unknown).toEqual(["strong flour", "rye flour"]);
  expect(doughs.some(({ absorption }) => absorption !== undefined)).toBe(false);
});

/** Water of a new lot of the only flour, with the kitchen's own absorption found at 13 % moisture. */
function waterOfLot(lot: Readonly<Record<string, string>>): number {
  const { spec, formula } = workedOut({
    flours: [{ name: "strong flour", amount: "100 %", figures: { ...strong, moisture: "13 %", absorption: "36 %" } }],
    lot: { of: "strong flour", figures: lot },
    water: { added: "36 %" },
  });
  return Number(answered(correctForLot(spec, formula, [])).rows[0]?.water.added.value);
}

test("an absorption holds at the moisture it was found at: a damper lot takes less", () => {
  // farinograph practice, ICC Standard 115/1: the dough keeps its dry flour and its water
  expect(waterOfLot({ moisture: "15 %" })).toBeCloseTo(((36 + 13) * 85) / 87 - 15, 9);
  // the certificate's own absorption counts as it is
  expect(waterOfLot({ moisture: "15 %", absorption: "35 %" })).toBeCloseTo(35, 9);
});

test.each<[string, string, Partial<TrialRequest>]>([
  ["trial.flour", "300", { flour: "300" }],
  ["trial.water", "40", { water: "40" }],
  ["trial.step", "2", { step: "2" }],
  ["trial.carried", "3", { carried: "3" }],
])("every dough follows one input, %s, when it is worked out again", (id, value, change) => {
  const request: TrialRequest = {
    flour: "200",
    water: "34",
    step: "1",
    carried: "2",
    flours: [
      { name: "strong flour", percent: "70", takes: "36" },
      { name: "rye flour", percent: "30" },
    ],
    others: [{ name: "salt", percent: "1" }],
  };
  const valuesOf = (graph: Readonly<Record<string, { readonly value: string }>>) =>
    Object.entries(graph).map(([key, figure]) => [key, figure.value]);
  const before = answered(waterTrial(request)).graph;
  const fresh = answered(waterTrial({ ...request, ...change })).graph;
  expect(valuesOf(answered(recalculated(before, { [id]: value })))).toEqual(valuesOf(fresh));
});
