import { fixedText } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ceilToDivision, dec, decimalText, floorToDivision, roundToDivision, sum } from "#core/number/decimal.ts";
import { always } from "../../always.ts";

describe("dec", () => {
  it.each(["12", "-12.5", "+3", ".5", "5.", "1e3", "1.5E-7", "0"])("reads %s", (text) => {
    expect(dec(text).toNumber()).toBe(Number(text));
  });

  it.each(["", " ", "1,5", "0x10", "Infinity", "NaN", "1_000", "--1", "1e", "twelve"])("refuses %j", (text) => {
    expect(() => dec(text)).toThrow(RangeError);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])("refuses %d", (value) => {
    expect(() => dec(value)).toThrow(RangeError);
  });
});

describe("decimalText", () => {
  it.each([
    ["0", "0"],
    ["-0", "0"],
    ["-0.000", "0"],
    ["12.500", "12.5"],
    ["-12.50", "-12.5"],
    ["1e21", "1000000000000000000000"],
    ["1e-12", "0.000000000001"],
    ["123456789012345678901234567890.12", "123456789012345678901234567890"],
  ])("writes %s as %s", (input, text) => {
    expect(decimalText(dec(input))).toBe(text);
  });

  it("shows no remainder of the last digits", () => {
    const third = dec(decimalText(dec(1).div(3)));
    expect(decimalText(third.times(3))).toBe("1");
    expect(decimalText(dec(decimalText(dec(200).div(3))).times(3))).toBe("200");
  });

  it("refuses what is not finite", () => {
    expect(() => decimalText(dec(1).div(0))).toThrow(RangeError);
    expect(() => decimalText(dec(-1).sqrt())).toThrow(RangeError);
  });

  it("comes back as the same number", () => {
    always(100, [fc.integer(), fc.integer({ min: 0, max: 12 })], (digits, places) => {
      const value = dec(digits).div(dec(10).pow(places));
      expect(dec(decimalText(value)).eq(value)).toBe(true);
    });
  });
});

describe("fixedText", () => {
  it.each([
    ["2.345", 2, "2.35"],
    ["2.335", 2, "2.34"],
    ["-2.345", 2, "-2.35"],
    ["0.5", 0, "1"],
    ["1.5", 0, "2"],
    ["-0.5", 0, "-1"],
    ["-0.04", 1, "0.0"],
    ["-0", 2, "0.00"],
    ["1.005", 2, "1.01"],
    ["99.995", 2, "100.00"],
    ["3", 2, "3.00"],
    ["1e-9", 3, "0.000"],
  ] as const)("writes %s to %d places as %s", (value, places, text) => {
    expect(fixedText(value, places)).toBe(text);
  });
});

describe("divisions", () => {
  it.each([
    ["12.34", "0.5", "12.5", "12.5", "12"],
    ["12.25", "0.5", "12.5", "12.5", "12"],
    ["12.5", "0.5", "12.5", "12.5", "12.5"],
    ["7", "5", "5", "10", "5"],
    ["7.5", "5", "10", "10", "5"],
    ["0.1", "5", "0", "5", "0"],
    ["100", "2.8349523125", "99.2233309375", "102.05828325", "99.2233309375"],
  ])("%s to steps of %s: nearest %s, above %s, below %s", (value, division, nearest, above, below) => {
    expect(roundToDivision(dec(value), dec(division)).toString()).toBe(nearest);
    expect(ceilToDivision(dec(value), dec(division)).toString()).toBe(above);
    expect(floorToDivision(dec(value), dec(division)).toString()).toBe(below);
  });

  it("adds without binary noise", () => {
    expect(sum(["0.1", "0.2", "0.3"].map(dec)).toString()).toBe("0.6");
    expect(sum([]).toString()).toBe("0");
  });
});
