import { describe, expect, test } from "vitest";
import { runBuilt } from "./built.ts";
import { readCsv } from "./read-csv.ts";

const spec = (more: string): string =>
  `name: test\nflours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36 % }\nbatch: { dough: 5 kg }\n${more}\n`;

/** Cents, so that sums are of whole numbers. */
const cents = (text: string | undefined): number => Math.round(Number(text) * 100);
const total = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);

describe("noodlewright cost", () => {
  test("writes the shopping list for a spreadsheet, for the batch that the flags set", () => {
    const args = ["cost", "examples/school-noodle.yaml", "--bowls", "640", "--table", "shopping", "--format", "csv"];
    const [head = [], ...rows] = readCsv(runBuilt(args).stdout);
    expect(head).toEqual(["ingredient", "needed, g", "on hand, g", "buy", "pay, EUR", "left over, g"]);
    expect(rows[0]?.slice(2, 5)).toEqual(["31000", "1 × 25 kg", "23.50"]);
    expect(cents(rows.at(-1)?.[4])).toBe(total(rows.slice(0, -1).map((row) => cents(row[4]))));
  });

  test.each([
    ["prices: { bread flour: 0.85 €/kg }", "price.unreadable", "0.92 EUR/kg"],
    ["prices: { bread flour: 1 EUR/kg }\nstock: { bread flour: 5 }", "quantity.unreadable", 'add the unit: "5 g"'],
  ])("%s is refused in its place", (more, code, advice) => {
    const { status, stderr } = runBuilt(["cost", "-"], { input: spec(more) });
    expect(status).toBe(2);
    expect(stderr).toContain(`[${code}]`);
    expect(stderr).toContain(advice);
    expect(stderr).toMatch(/standard input:[56]:/u);
  });
});
