import { readNoodle, readNoodleData } from "@noodlewright/core";
import { readKitchenFile } from "@noodlewright/core/spec";
import { describe, expect, it, test } from "vitest";
import { codesOf, toldOf } from "../told-of.ts";

const plain = { name: "plain", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "36 %" } };

describe("a material that a section names twice is refused with what both say", () => {
  it.each([
    [{ prices: { "bread flour": "1 EUR/kg", "Bread Flour": "2 EUR/kg" } }, "Bread Flour: 2 EUR/kg"],
    [{ prices: { salt: "1 EUR/kg", "table salt": "5 EUR/kg" } }, "table salt: 5 EUR/kg"],
    [{ stock: { "bread flour": "1 kg", "BREAD  FLOUR": "9 kg" } }, "BREAD  FLOUR: 9 kg"],
    [{ shelf: { "rye flour": { share: "at most 10 %" }, "Rye Flour": { share: "at most 50 %" } } }, "Rye Flour"],
    [{ temperature: { ingredients: { "whole egg": "4 °C", "Whole egg": "20 °C" } } }, "Whole egg: 20 °C"],
    [{ materials: { "own flour": { moisture: "13 %" }, "Own flour": { moisture: "14 %" } } }, "Own flour"],
  ])("%j", (section, other) => {
    const outcome = readNoodleData({ ...plain, ...section });
    expect(codesOf(outcome)).toEqual(["materials.named-twice"]);
    expect(toldOf(outcome)[0]?.found).toContain(`"${other}" beside "`);
  });

  it("in a kitchen file, too", () => {
    const materials = { "own flour": { moisture: "13 %" }, "Own flour": { moisture: "14 %" } };
    expect(codesOf(readKitchenFile({ materials }))).toEqual(["materials.named-twice"]);
  });

  it("and three of one name are each held against the first", () => {
    const prices = { salt: "1 EUR/kg", Salt: "2 EUR/kg", " SALT": "3 EUR/kg" };
    expect(toldOf(readNoodleData({ ...plain, prices })).map(({ found }) => found)).toEqual([
      '"Salt: 2 EUR/kg" beside "salt: 1 EUR/kg", which name one material',
      '"SALT: 3 EUR/kg" beside "salt: 1 EUR/kg", which name one material',
    ]);
  });
});

test("what the spec says of a material counts before a kitchen file, in whatever capitals", () => {
  const kitchens = [{ materials: { "Bread Flour": { moisture: "10 %", protein: "9 %" } } }];
  const materials = { "bread flour": { moisture: "13 %" } };
  const noodle = readNoodle({ ...plain, materials, shelf: { "bread flour": {} } }, { kitchens });
  expect(noodle.ok && noodle.value.formula.lines[0]?.material.moisture).toBe("13");
});
