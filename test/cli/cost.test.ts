import { describe, expect, test } from "vitest";
import { reported, runBuilt } from "./built.ts";
import { readCsv } from "./read-csv.ts";
import { readProblems } from "./read-problems.ts";

const spec = (more: string): string =>
  `name: test\nflours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36 % }\nbatch: { dough: 5 kg }\n${more}\n`;

/** Cents, so that sums are of whole numbers. */
const cents = (text: string | undefined): number => Math.round(Number(text) * 100);
const total = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);

describe("noodlewright cost", () => {
  test("adds up to the cent over ingredients, loads and bowls", () => {
    const report = reported(["cost", "examples/school-noodle.yaml"]);
    const money = (id: string): number => cents(report.figures[id]?.value);
    const names = ["flour.1", "flour.2", "alkali.1", "alkali.2", "salt", "water", "dusting"];
    expect(total(names.map((name) => money(`cost.${name}.batch`)))).toBe(money("cost.batch"));
    expect(total(names.map((name) => money(`cost.${name}.load`)))).toBe(money("cost.load"));
    for (const over of ["load", "bowl"]) {
      const shares = ["more", "less"].map((group) => money(`cost.${over}.${group}.together`));
      expect(total(shares)).toBe(money("cost.batch"));
    }
    // 22.86 kg at 23.50 EUR per 25 kg
    expect(money("cost.flour.1.batch")).toBe(2149);
  });

  test("writes the shopping list for a spreadsheet, for the batch that the flags set", () => {
    const args = ["cost", "examples/school-noodle.yaml", "--bowls", "640", "--table", "shopping", "--format", "csv"];
    const [head = [], ...rows] = readCsv(runBuilt(args).stdout);
    expect(head).toEqual(["ingredient", "needed, g", "on hand, g", "buy", "pay, EUR", "left over, g"]);
    expect(rows[0]?.slice(2, 5)).toEqual(["31000", "1 × 25 kg", "23.50"]);
    expect(cents(rows.at(-1)?.[4])).toBe(total(rows.slice(0, -1).map((row) => cents(row[4]))));
  });

  test("names what has no price, and answers a spec without any with a problem", () => {
    const some = runBuilt(["cost", "-"], { input: spec("salt: 1 %\nprices: { bread flour: 0.85 EUR/kg }") });
    expect(some.status).toBe(0);
    expect(some.stdout).toContain("no price is stated for table salt");
    expect(some.stdout).toContain("what is priced of them");
    const none = runBuilt(["cost", "examples/written-in-grams.yaml"]);
    expect(none.status).toBe(2);
    expect(readProblems(none.stderr).map(({ code }) => code)).toEqual(["cost.no-prices"]);
  });

  test.each([
    ["prices: { bread flour: 0.85 €/kg }", "price.unreadable", "0.92 EUR/kg"],
    ["prices: { bread flour: 1 EUE/kg }", "cost.unknown-currency", "did you mean EUR?"],
    ["prices: { bread flour: 1 EUR/kg, tap water: 1 USD/kg }", "cost.mixed-currencies", "no rate of exchange"],
    ["prices: { bread flour: 1 EUR/kg }\nstock: { bread flour: 5 }", "quantity.unreadable", 'add the unit: "5 g"'],
  ])("%s is refused in its place", (more, code, advice) => {
    const { status, stderr } = runBuilt(["cost", "-"], { input: spec(more) });
    expect(status).toBe(2);
    expect(stderr).toContain(`[${code}]`);
    expect(stderr).toContain(advice);
    expect(stderr).toMatch(/standard input:[56]:/u);
  });
});
