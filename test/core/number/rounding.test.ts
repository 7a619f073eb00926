import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dec, sum } from "#core/number/decimal.ts";
import { roundKeepingTotal } from "#core/number/rounding.ts";
import { always } from "../../always.ts";

/** Values and their divisions, apart by spaces. */
function rounded(values: string, divisions: string, least?: "proportion" | "change"): readonly string[] {
  const each = divisions.split(" ").map(dec);
  const steps = values.split(" ").map((value, index) => ({ value: dec(value), division: each[index] ?? dec(1) }));
  return roundKeepingTotal(steps, least).map(String);
}

describe("roundKeepingTotal", () => {
  it("leaves nothing a whole step off where the change itself is to be small, as for money", () => {
    // by largest remainders: what is missing goes to 0.48, 0.48 and 0.45 and not twice to the greatest
    const costs = "55.0872 12.5736 1.0509 2.4648 0.3645 2.1648";
    const money = (least: "proportion" | "change") => rounded(costs, Array(6).fill("0.01").join(" "), least);
    expect(money("change")).toEqual(["55.09", "12.57", "1.05", "2.47", "0.36", "2.17"]);
    expect(money("proportion")[0]).toBe("55.11");
  });

  it.each([
    ["each goes to its nearest step", "1.2 1.7 1.1", "1 1 1", "1 2 1"],
    ["what is missing goes where it changes least in proportion", "333 119.88 3.33 3.33", "1 1 1 1", "334 120 3 3"],
    ["ties go in the order given", "1.5 1.5", "1 1", "2 1"],
    ["what is whole stays", "3 4", "1 1", "3 4"],
    ["nothing stays nothing", "0 0", "1 0.1", "0 0"],
    ["the coarse one takes up what the fine one leaves", "1000.4 12.34", "1 0.1", "1000 12.3"],
    ["the coarse one goes up where the total asks for it", "1000.4 12.24", "1 0.1", "1000 12.2"],
    ["the total is rounded, not each", "0.4 0.4 0.4", "1 1 1", "1 0 0"],
    ["half of the coarsest division goes up", "0.25 0.25", "1 1", "1 0"],
  ])("%s", (_, values, divisions, expected) => {
    expect(rounded(values, divisions).join(" ")).toBe(expected);
  });

  it("gives nothing for nothing", () => {
    expect(roundKeepingTotal([])).toEqual([]);
  });

  const oneStep = fc.record({
    value: fc.integer({ min: 1, max: 20_000_000 }).map((n) => dec(n).div(1000)),
    division: fc.constantFrom("0.01", "0.1", "0.5", "1", "2", "5", "2.8349523125", "28.349523125").map(dec),
  });

  it("stays within half of the coarsest division of the exact total, in whole divisions", () => {
    always(400, [fc.array(oneStep, { minLength: 1, maxLength: 12 })], (items) => {
      const rounded = roundKeepingTotal(items);
      const coarsest = items.reduce((most, { division }) => (division.gt(most) ? division : most), dec(0));
      const off = sum(rounded).minus(sum(items.map(({ value }) => value)));
      expect(off.abs().lte(coarsest.div(2))).toBe(true);
      rounded.forEach((mass, index) => {
        expect(mass.mod(items[index]?.division ?? 1).isZero()).toBe(true);
      });
    });
  });

  it("takes every small weight to its nearest step where all divisions are the same", () => {
    always(
      100,
      [
        fc.array(fc.integer({ min: 0, max: 2_000_000 }), { minLength: 1, maxLength: 12 }),
        fc.constantFrom("0.1", "1", "2.8349523125"),
      ],
      (values, division) => {
        const items = values.map((value) => ({ value: dec(value).div(1000), division: dec(division) }));
        const largest = dec(Math.max(...values)).div(1000);
        roundKeepingTotal(items).forEach((mass, index) => {
          const value = items[index]?.value ?? dec(0);
          // the largest may have to take up half a step from each of the others
          if (value.lt(largest.div(20))) expect(mass.minus(value).abs().lte(dec(division).div(2))).toBe(true);
          expect(mass.isNegative()).toBe(false);
        });
      },
    );
  });

  it("never makes a mass negative, nor spoils a small one, when each goes to the finest scale that takes it", () => {
    const fine = { division: dec("0.1"), capacity: dec(500) };
    const coarse = { division: dec(5) };
    always(100, [fc.array(fc.integer({ min: 0, max: 900_000 }), { minLength: 1, maxLength: 60 })], (values) => {
      const items = values.map((value) => {
        const mass = dec(value).div(1000);
        return { value: mass, division: mass.lte(fine.capacity) ? fine.division : coarse.division };
      });
      roundKeepingTotal(items).forEach((mass, index) => {
        const { value, division } = items[index] ?? { value: dec(0), division: dec(0) };
        expect(mass.isNegative()).toBe(false);
        const most = division.plus(value.times("0.002"));
        expect(mass.minus(value).abs().lte(most)).toBe(true);
      });
    });
  });

  it("takes changes as equal that differ in digits beyond those of a figure, and lets the first give way", () => {
    // 0.6 and 1 part on 89.40909…: one step up changes both by the same part, but for the digits that the texts cut off.
    const cut = "53.645454545454545454545454545 89.409090909090909090909090909";
    expect(rounded(cut, "0.1 0.1")).toEqual(["53.7", "89.4"]);
  });
});
