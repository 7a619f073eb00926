import { parseQuantity } from "@noodlewright/core/figure";
import { unit } from "mathjs";
import { describe, expect, it } from "vitest";
import { dec } from "#core/number/decimal.ts";
import { fromBase, toBase } from "#core/number/quantity.ts";
import { findUnit } from "#core/number/units.ts";

/**
 * Symbol here, the unit as mathjs writes it, the base unit. mathjs 15 is a general library of units; its factors are
 * binary fractions, so they are compared to 14 digits.
 */
const units = [
  ["g", "g", "g"],
  ["kg", "kg", "g"],
  ["mg", "mg", "g"],
  ["tonne", "tonne", "g"],
  ["oz", "oz", "g"],
  ["lb", "lbm", "g"],
  ["mm", "mm", "mm"],
  ["cm", "cm", "mm"],
  ["m", "m", "mm"],
  ["in", "inch", "mm"],
  ["ft", "foot", "mm"],
  ["mL", "mL", "mL"],
  ["L", "L", "mL"],
  ["gal", "gallon", "mL"],
  ["°C", "degC", "degC"],
  ["°F", "degF", "degC"],
  ["s", "s", "s"],
  ["min", "minute", "s"],
  ["h", "hour", "s"],
  ["d", "day", "s"],
  ["g/mL", "g/mL", "g/mL"],
  ["kg/m³", "kg/m^3", "g/mL"],
  ["m/min", "m/minute", "m/minute"],
  ["m/s", "m/s", "m/minute"],
] as const;

const amounts = ["1", "0.35", "12.75", "100", "98765.4"];
const rows = units.flatMap((one) => amounts.map((amount) => [amount, ...one] as const));

describe("conversion of units, against mathjs", () => {
  it.each(rows)("%s %s", (amount, symbol, name, base) => {
    const here = findUnit(symbol);
    if (here === undefined) throw new Error(symbol);
    const there = unit(Number(amount), name).toNumber(base);
    expect(Math.abs(toBase(dec(amount), here).toNumber() - there)).toBeLessThanOrEqual(Math.abs(there) * 1e-13 + 1e-12);
    const back = unit(Number(amount), base).toNumber(name);
    expect(Math.abs(fromBase(dec(amount), here).toNumber() - back)).toBeLessThanOrEqual(Math.abs(back) * 1e-13 + 1e-12);
  });

  it.each([
    ["1 lb 4 oz", ["1 lbm", "4 oz"], "g"],
    ["2 lb 1 1/2 oz", ["2 lbm", "1.5 oz"], "g"],
    ["1 ft 2 in", ["1 foot", "2 inch"], "mm"],
    ["1 h 30 min", ["1 hour", "30 minute"], "s"],
  ] as const)("%s", (written, parts, base) => {
    const reading = parseQuantity(written, ["mass", "length", "time"]);
    const there = parts.reduce((total, part) => total + unit(part).toNumber(base), 0);
    expect(reading.ok && Number(reading.quantity.value)).toBeCloseTo(there, 9);
  });
});

/** NIST Special Publication 811 (2008), Appendix B: factors printed in bold are exact. From memory. */
describe("exact factors", () => {
  it.each([
    ["lb", "453.59237"],
    ["oz", "28.349523125"],
    ["in", "25.4"],
    ["ft", "304.8"],
    ["gal", "3785.411784"],
  ])("1 %s is %s", (symbol, factor) => {
    expect(findUnit(symbol)?.factor).toBe(factor);
  });
});
