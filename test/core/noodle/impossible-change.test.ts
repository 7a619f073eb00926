import { askBatch, askFormula, askSheet, askWater, readNoodleData, type SpecInput, told } from "@noodlewright/core";
import { recalculated } from "@noodlewright/core/figure";
import { expect, it } from "vitest";
import { listed } from "../formula/worked-out.ts";

const spec: SpecInput = {
  name: "class noodle",
  materials: { "half and half": { composition: { Na2CO3: "50 %", K2CO3: "45 %", water: "rest" } } },
  flours: listed({ "bread flour": "60 %", "whole wheat flour": "20 %", "rye flour": "rest" }),
  water: { added: "36 %" },
  ingredients: [{ name: "whole egg", amount: "5 %" }],
  alkali: [{ name: "half and half", amount: "1 %" }],
  batch: { bowls: 40, rawWeight: "130 g" },
  losses: { mixing: "1 %" },
  machines: { rolls: { width: "240 mm", gap: { least: "0.4 mm", greatest: "12 mm" }, cutters: [{ size: 20 }] } },
  sheet: { machine: "rolls", thickness: "1.4 mm", cutter: 20, start: "9 mm", springBack: 1.08 },
  temperature: { dough: "25 °C", flour: "21 °C", room: "22 °C", tap: "14 °C", mixingHeat: "4 kJ/kg" },
};
const asks = { formula: askFormula, batch: askBatch, sheet: askSheet, water: askWater };

it.each([
  ["batch", "batch.bowls", "-320", "batch.bowls", "a whole number, at least 0"],
  ["batch", "batch.bowls", "2.5", "batch.bowls", "a whole number, at least 0"],
  ["batch", "bowl.raw", "-3", "bowl.raw", "at least 0 g"],
  ["batch", "loss.mixing", "101", "loss.mixing", "0 to 100 %"],
  ["formula", "flour.1.wholegrain", "7", "flour.1.wholegrain", "a whole number, 0 to 1"],
  ["batch", "flour.1.parts", "150", "flour.1.parts", "0 to 100 % of flour"],
  ["batch", "flour.1.parts", "90", "flour.3.parts", "0 to 100 % of flour"],
  ["batch", "water.added-stated", "1", "water.tap", "at least 0 % of flour"],
  ["formula", "alkali.1.Na2CO3", "60", "alkali.1.anhydrous", "at most 100 %"],
  ["sheet", "passes.spring-back", "-1", "passes.spring-back", "at least 0"],
  ["water", "dough.temperature", "-300", "dough.temperature", "0 to 60 °C"],
] as const)("a %s with %s at %s is refused, for %s cannot be", (question, id, value, at, expected) => {
  const noodle = readNoodleData(spec);
  const before = noodle.ok ? asks[question](noodle.value) : noodle;
  if (!before.ok) throw new Error(JSON.stringify(before.problems));
  const again = recalculated(before.value.graph, { [id]: value });
  const problems = again.ok ? [] : again.problems;
  expect(problems.map((one) => [one.code, ...one.path, told(one).expected])).toContainEqual([
    "figure.impossible",
    at,
    expected,
  ]);
});

it("tells an object in the place of a number for what it is", () => {
  const noodle = readNoodleData(spec);
  const value: string = JSON.parse("{}");
  const again = recalculated(noodle.ok ? noodle.value.formula.graph : {}, { "flour.1.parts": value });
  expect(again.ok ? [] : again.problems.map((one) => told(one).found)).toEqual([
    expect.stringContaining("a section with keys"),
  ]);
});
