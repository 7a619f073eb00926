import { describe, expect, it } from "vitest";
import { formulaOf } from "#core/formula/formula.ts";
import { toldOf } from "../told-of.ts";

function advice(written: object, path: string): string {
  const outcome = formulaOf({
    name: "test",
    flours: [{ name: "bread flour", amount: "500 g" }],
    water: { tap: "170 g" },
    ...written,
  });
  const problems = toldOf(outcome);
  expect(problems.map(({ code }) => code)).toEqual(["quantity.unreadable"]);
  expect(problems[0]?.path.join(".")).toBe(path);
  return problems[0]?.advice ?? "";
}

describe("a volume in a spec is refused with the mass that would do", () => {
  it("of water: 0.9982 g/mL at 20 °C, as in every table", () => {
    expect(advice({ water: { tap: "170 mL" } }, "water.tap")).toContain('write "169.7 g"');
    expect(advice({ water: { added: "1 L" } }, "water.added")).toContain('write "998.2 g"');
  });

  // the fit lies within 0.45 % of the tables, and the mass is told to 0.1 g
  it("of a solution: potassium carbonate of 28 % is 1.2755 g/mL at 20 °C in the Handbook of Chemistry and Physics", () => {
    const figures = { composition: { K2CO3: "28 %", water: "rest" } };
    const written = { alkali: [{ name: "bottle", amount: "20 mL", figures }] };
    const grams = Number(/write "([\d.]+) g"/u.exec(advice(written, "alkali.0.amount"))?.[1]);
    expect(Math.abs(grams - 20 * 1.2755)).toBeLessThan(20 * 1.2755 * 0.0045 + 0.05);
  });

  it("of a solution written in one line, as the same in g is read", () => {
    const line = { name: "30 °Bé K2CO3", amount: "20 mL" };
    const grams = /write "(?<grams>[\d.]+ g)"/u.exec(advice({ alkali: [line] }, "alkali.0.amount"))?.groups?.["grams"];
    // 145 / (145 - 30) = 1.261 g/mL against water
    expect(Number.parseFloat(grams ?? "")).toBeCloseTo(20 * 1.26, 0);
  });

  // from memory: milk and egg of about 1.03 g/mL, oil of about 0.92 g/mL
  it.each([
    ["whole egg", "100 mL", "103.0 g"],
    ["sesame oil", "10 mL", "9.2 g"],
  ])("of %s", (name, amount, grams) => {
    expect(advice({ ingredients: [{ name, amount }] }, "ingredients.0.amount")).toContain(`write "${grams}": `);
  });

  it("of milk of the kitchen's own", () => {
    const materials = { "school milk": { kind: "other", moisture: "88 %" } };
    const written = { materials, ingredients: [{ name: "school milk", amount: "100 mL" }] };
    expect(advice(written, "ingredients.0.amount")).toContain('write "103.0 g": milk of 1.03 g/mL');
  });

  it("but not of what may be packed looser or tighter", () => {
    expect(advice({ ingredients: [{ name: "cornstarch", amount: "100 mL" }] }, "ingredients.0.amount")).not.toContain(
      "write",
    );
    for (const volume of ["5 mL", "1 tsp"]) {
      expect(advice({ salt: volume }, "salt")).not.toContain("write");
      const written = { alkali: [{ name: "potassium carbonate", amount: volume }] };
      expect(advice(written, "alkali.0.amount")).toContain("of a powder weighs more or less by how it lies");
    }
  });
});
