import type { Decimal } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exact, worked } from "#core/figure/figure.ts";
import { dryRatio, onMoisture } from "#core/materials/moisture.ts";
import { onFactor } from "#core/materials/nitrogen.ts";
import { dec } from "#core/number/decimal.ts";
import { always } from "../../always.ts";

const moisture = fc.integer({ min: 0, max: 9990 }).map((count) => dec(count).div(100));
const share = fc.integer({ min: 0, max: 10_000 }).map((count) => dec(count).div(100));

const isNear = (one: Decimal, other: Decimal, within: string) => one.minus(other).abs().lt(within);

describe("moisture basis", () => {
  it("comes back from every basis as it went", () => {
    always(100, [share, moisture, moisture], (value, from, to) => {
      expect(isNear(onMoisture(onMoisture(value, from, to), to, from), value, "1e-30")).toBe(true);
    });
  });

  it("goes the same way by a third basis", () => {
    always(100, [share, moisture, moisture, moisture], (value, a, b, c) => {
      const detour = onMoisture(onMoisture(value, a, b), b, c);
      expect(isNear(detour, onMoisture(value, a, c), "1e-28")).toBe(true);
    });
  });

  it("is in numbers what it is in the formula of a figure", () => {
    // a figure keeps 30 digits, of values up to 100 000 here
    always(100, [share, moisture, moisture], (value, from, to) => {
      const naming = { id: "moved", label: "moved", unit: "%", places: 2 } as const;
      const formula = `value * ${dryRatio("from", "to")}`;
      const stated = { value: value.toString(), from: from.toString() };
      const moved = worked(naming, formula, { ...stated, to: to.toString() });
      expect(isNear(exact(moved), onMoisture(value, from, to), "1e-24")).toBe(true);
      const dry = worked(naming, `value * ${dryRatio("from", "0")}`, stated);
      expect(isNear(exact(dry), onMoisture(value, from, 0), "1e-24")).toBe(true);
    });
  });

  it("has no share of what is nothing but water", () => {
    expect(() => onMoisture(dec(12), 100, 14)).toThrow(RangeError);
  });
});

describe("nitrogen factor", () => {
  it("comes back as it went", () => {
    always(100, [share], (value) => {
      const there = onFactor(value, dec("5.7"), dec("6.25"));
      expect(onFactor(there, dec("6.25"), dec("5.7")).minus(value).abs().lt("1e-24")).toBe(true);
    });
  });
});
