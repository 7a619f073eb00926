import { type Answer, askBatch, askDay, askSheet, askWater, type Noodle, readNoodleData } from "@noodlewright/core";
import { type Figure, parseQuantity } from "@noodlewright/core/figure";
import fc from "fast-check";
import { unit } from "mathjs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { starterSpec } from "#cli/input/starter-spec.ts";
import { inSystem } from "#core/figure/in-system.ts";
import { dec } from "#core/number/decimal.ts";
import { fromBase, toBase } from "#core/number/quantity.ts";
import { findUnit } from "#core/number/units.ts";
import { always } from "../always.ts";

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
  ["lb/gal", "lbm/gallon", "g/mL"],
  ["Btu/lb", "BTU/lbm", "kJ/kg"],
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

  // NIST Handbook 44, Appendix C: a gallon is 128 fluid ounces
  it("128 fl oz", () =>
    expect(parseQuantity("128 fl oz", ["volume"])).toMatchObject({ quantity: { value: "3785.411784" } }));

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

/** Units of answers as mathjs writes them; those of the list above stand for themselves. */
const names: Readonly<Record<string, string>> = {
  ...Object.fromEntries(units.map(([symbol, name]) => [symbol, name])),
  kJ: "kJ",
  kW: "kW",
  "kJ/kg": "kJ/kg",
  "g/L": "g/L",
  "g/m": "g/m",
  "fl oz": "fluidounce",
  hp: "hp",
  Btu: "BTU",
  "Btu/lb": "BTU/lbm",
  "lb/gal": "lbm/gallon",
  "oz/ft": "oz/foot",
  "ft/min": "foot/minute",
};
type Shown = Pick<Figure, "value" | "unit">;

/** mathjs has the horsepower to ten digits. */
function expectSame(metric: Shown, us: Shown): void {
  if (metric.unit === "K") {
    expect(us.unit).toBe("°F");
    expect(Number(us.value)).toBeCloseTo(Number(metric.value) * 1.8, 9);
    return;
  }
  const [name, usName] = [metric, us].map((one) => names[one.unit]);
  if (name === undefined || usName === undefined) {
    expect(us).toMatchObject({ value: metric.value, unit: metric.unit });
    return;
  }
  const there = unit(Number(metric.value), name).toNumber(usName);
  expect(Math.abs(Number(us.value) - there)).toBeLessThanOrEqual(Math.abs(there) * 1e-9 + 1e-9);
}

describe("an answer in US units", () => {
  it.each([
    ["2000", "mL", "fl oz"],
    ["4000", "mL", "gal"],
    ["20", "L", "gal"],
    ["3", "kg", "lb"],
    ["2", "m", "ft"],
    ["1.25", "g/mL", "lb/gal"],
    ["250", "g/L", "lb/gal"],
    ["2.6", "g/m", "oz/ft"],
    ["6", "m/min", "ft/min"],
    ["203", "kJ", "Btu"],
    ["12", "kJ/kg", "Btu/lb"],
    ["0.75", "kW", "hp"],
    ["8", "K", "°F"],
    ["0", "°C", "°F"],
  ])("tells %s %s in %s", (value, symbol, usUnit) => {
    const us = inSystem({ value, unit: symbol, places: 2 }, "us");
    expect(us.unit).toBe(usUnit);
    expectSame({ value, unit: symbol }, us);
  });

  const asked: readonly ((noodle: Noodle) => Answer<unknown>)[] = [askBatch, askSheet, askWater, askDay];
  const figuresOf = (spec: object, units: "metric" | "us", ask: (noodle: Noodle) => Answer<unknown>) => {
    const noodle = readNoodleData(spec, { units });
    const answer = noodle.ok ? ask(noodle.value) : noodle;
    if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
    return ("report" in answer ? answer.report().sections : []).flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === "figures" ? block.figures : [])),
    );
  };

  it("holds the figures of the metric one", () => {
    const starter = parse(starterSpec);
    const kinds = new Set<string>();
    always(6, [fc.integer({ min: 30, max: 900 }), fc.integer({ min: 15, max: 30 })], (bowls, room) => {
      const temperature = { dough: "25 °C", flour: "19 °C", tap: "14 °C", mixerPower: "0.1 kW", mixingTime: "5 min" };
      const spec = {
        ...starter,
        batch: { ...starter.batch, bowls },
        temperature: { ...temperature, room: `${room} °C`, friction: "8 K" },
        plan: { ...starter.plan, serve: "12:15", pot: { basket: "1.1 kg", water: "30 L", power: "12 kW" } },
      };
      for (const ask of asked) {
        const [metric, us] = [figuresOf(spec, "metric", ask), figuresOf(spec, "us", ask)];
        expect(us.map(({ id }) => id)).toEqual(metric.map(({ id }) => id));
        for (const [index, figure] of us.entries()) {
          const before = metric[index];
          if (before !== undefined) expectSame(before, figure);
          kinds.add(figure.unit);
        }
      }
    });
    expect([...kinds]).toEqual(expect.arrayContaining(["lb", "oz", "in", "°F", "Btu", "hp", "lb/gal", "oz/ft"]));
  });
});
