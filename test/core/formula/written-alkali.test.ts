import { told } from "@noodlewright/core";
import { describe, expect, test } from "vitest";
import { formulaOf } from "#core/formula/formula.ts";
import { answered } from "../told-of.ts";

const dough = { name: "lye noodle", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "35 %" } };
const line = "K2CO3 at 30 °Bé";
const figures = { solution: { salts: "K2CO3", strength: "30 °Bé" } };

describe("an alkali written in one line", () => {
  test("is the same as by its figures", () => {
    const [written, stated] = [{ name: line }, { name: "potash liquid", figures }].map(
      (one) => answered(formulaOf({ ...dough, alkali: [{ ...one, amount: "1.2 %" }] })).formula,
    );
    expect(written?.alkali?.alkalinityM.value).toBe(stated?.alkali?.alkalinityM.value);
  });

  test.each([
    { name: line },
    { name: line, replaceWith: "sodium carbonate" },
    { name: "potash liquid", figures, replaceWith: "sodium carbonate" },
    { name: "sodium carbonate", replaceWith: line },
  ])("says what its degrees Baumé were taken for: $name, $replaceWith", (alkali) => {
    const outcome = formulaOf({ ...dough, alkali: [{ ...alkali, amount: "1.2 %" }] });
    const notes = outcome.ok ? outcome.notes.map(told).join() : "";
    expect(notes).toMatch(/30 °Bé is taken as read at 15\.6 °C.*26\.65 % by mass, and may be 26\.34 to 26\.96/u);
  });

  test("is not asked for where another part of the spec is wrong", () => {
    const outcome = formulaOf({ ...dough, salt: 1, alkali: [{ name: line, amount: "1.2 %" }] });
    expect(outcome.ok ? [] : outcome.problems.map(({ path }) => path)).toEqual([["salt"]]);
  });
});
