import { told } from "@noodlewright/core";
import { answer, citation, pathText, problem, shown, shownValue, writtenWorking } from "@noodlewright/core/figure";
import { describe, expect, it } from "vitest";
import { exact, found, given, renamed, worked } from "#core/figure/figure.ts";
import { refuse } from "#core/figure/problem.ts";
import { at, commonPractice, definition, fromSpec } from "#core/figure/source.ts";

const naming = { id: "dough.water", label: "dough water", unit: "% of dough", places: 2 };
const flour = given({ id: "flour.mass", label: "flour", unit: "g", places: 0 }, "300", "spec", fromSpec);
const water = given({ id: "water.mass", label: "water", unit: "g", places: 0 }, "96", "spec", fromSpec);

describe("figures", () => {
  it("keeps who gave a value", () => {
    expect(flour).toMatchObject({ value: "300", working: { kind: "given", by: "spec" }, sources: [fromSpec] });
  });

  it("keeps the procedure that found a value", () => {
    const load = found(naming, "12.50", "rounded to 0.5 g");
    expect(load.value).toBe("12.5");
    expect(load.working).toEqual({ kind: "procedure", by: "rounded to 0.5 g" });
  });

  it("shows the formula in names and in numbers", () => {
    const share = worked(naming, "100 * water / (water + flour)", { water, flour }, definition);
    expect(share.value).toBe("24.2424242424242424242424242424");
    expect(writtenWorking(share)).toMatchObject({
      names: "100 × water ÷ (water + flour)",
      numbers: "100 × 96 ÷ (96 + 300)",
    });
    expect(share.sources).toEqual([definition]);
    expect(shown(share)).toBe("24.24 % of dough");
  });

  it("writes lists, plain numbers and negative numbers", () => {
    const total = worked(naming, "sum(all_parts) - loss", { all_parts: [flour, water], loss: "-3" });
    expect(total.value).toBe("399");
    expect(writtenWorking(total)).toMatchObject({ names: "sum(all parts) − −3", numbers: "(300 + 96) − (−3)" });
  });

  it.each([
    ["0.123456789", "0.1234568"],
    ["1234567.89123", "1234567.8912"],
    ["0.00001234567891", "0.00001234568"],
    ["100", "100"],
  ])("shortens %s to %s in the working, the value stays exact", (value, short) => {
    const figure = worked(naming, "x + 0", { x: value });
    expect(writtenWorking(figure)).toMatchObject({ numbers: `${short} + 0` });
    expect(exact(figure).toFixed()).toBe(value);
  });

  it.each([
    ["x / 0", { x: 1 }],
    ["x + y", { x: 1 }],
    ["ln(x)", { x: 0 }],
  ])("throws on %s: only bugs do that", (formula, from) => {
    expect(() => worked(naming, formula, from)).toThrow(RangeError);
  });

  it("rounds halves away from zero and shows no negative zero", () => {
    expect(shownValue({ value: "36.25", places: 1 })).toBe("36.3");
    expect(shownValue({ value: "-0.004", places: 2 })).toBe("0.00");
    expect(shown({ ...flour, unit: "" })).toBe("300");
  });

  it("takes another name and stays the same figure", () => {
    expect(renamed(flour, "flour.again")).toEqual({ ...flour, id: "flour.again" });
    expect(renamed(flour, "flour.again", "the flour")).toEqual({ ...flour, id: "flour.again", label: "the flour" });
  });
});

describe("problems", () => {
  it("tells a wrong input from a question without answer", () => {
    const wrong = problem("blend.alternatives", ["alternatives"], { count: 30 });
    expect(wrong).toEqual({ code: "blend.alternatives", path: ["alternatives"], facts: { count: 30 } });
    expect(told(wrong)).toEqual({
      kind: "input",
      found: "30",
      expected: "a whole number from 1 to 20",
      advice: "ask for a few, such as 3",
    });
    expect(told(problem("ph.no-water", [], {})).kind).toBe("no-answer");
    expect(answer(3)).toEqual({ ok: true, value: 3, notes: [] });
    expect(refuse(wrong)).toEqual({ ok: false, problems: [wrong] });
  });

  it.each([
    [[], ""],
    [["flours", 0, "amount"], "flours[0].amount"],
    [["flours"], "flours"],
    [[0, "name"], "[0].name"],
    [["materials", "house flour", "moisture"], 'materials."house flour".moisture'],
    [["materials", "Na2CO3.10H2O"], 'materials."Na2CO3.10H2O"'],
  ] as const)("writes the path %j as %s", (path, text) => {
    expect(pathText(path)).toBe(text);
  });
});

describe("sources", () => {
  it.each([
    [{ cite: "ICC Standard 115/1", standing: "read" }, "ICC Standard 115/1"],
    [{ cite: "A table", at: "row 3", standing: "copy" }, "A table, row 3 [read in a copy]"],
    [{ cite: "A table", standing: "memory" }, "A table [from memory]"],
    [commonPractice, "common practice, no source"],
    [at(definition, "section 2"), "by definition, section 2"],
  ] as const)("%j reads %s", (source, text) => {
    expect(citation(source)).toBe(text);
  });
});
