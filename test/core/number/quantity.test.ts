import { told } from "@noodlewright/core";
import { type Dimension, parseQuantity, problem, toldIn } from "@noodlewright/core/figure";
import { describe, expect, it, test } from "vitest";
import { dec } from "#core/number/decimal.ts";
import { fromBase, toBase } from "#core/number/quantity.ts";
import { findUnit, units, unitsFor } from "#core/number/units.ts";

/** What is written, what it may measure, its value in the base unit, the unit it was written in. */
const readable: readonly (readonly [string | number, readonly Dimension[], string, string])[] = [
  ["350 g", ["mass"], "350", "g"],
  ["350g", ["mass"], "350", "g"],
  ["  2.5 kg ", ["mass"], "2500", "kg"],
  ["2.50 KG", ["mass"], "2500", "kg"],
  [".5 kg", ["mass"], "500", "kg"],
  ["250 mg", ["mass"], "0.25", "mg"],
  ["1 tonne", ["mass"], "1000000", "tonne"],
  ["1 lb 4 oz", ["mass"], "566.9904625", "lb"],
  ["1lb4oz", ["mass"], "566.9904625", "lb"],
  ["2 pounds 1 1/2 ounces", ["mass"], "949.7090246875", "lb"],
  ["1 1/2 oz", ["mass"], "42.5242846875", "oz"],
  ["1½ oz", ["mass"], "42.5242846875", "oz"],
  ["¾ lb", ["mass"], "340.1942775", "lb"],
  ["3/4 lb", ["mass"], "340.1942775", "lb"],
  ["0 g", ["mass"], "0", "g"],
  ["36 %", ["share"], "36", "%"],
  ["36%", ["share", "mass"], "36", "%"],
  ["３６．５％", ["share"], "36.5", "%"],
  ["－５℃".normalize("NFC"), ["temperature"], "-5", "°C"],
  ["12 percent", ["share"], "12", "%"],
  ["500 ppm", ["share"], "0.05", "ppm"],
  ["300 mg/kg", ["share"], "0.03", "ppm"],
  ["1.4 mm", ["length"], "1.4", "mm"],
  ["1 ft 2 in", ["length"], "355.6", "ft"],
  ["500 ml", ["volume"], "500", "mL"],
  ["1 gal", ["volume"], "3785.411784", "gal"],
  ["38 °C", ["temperature"], "38", "°C"],
  ["38°C", ["temperature"], "38", "°C"],
  ["38 c", ["temperature"], "38", "°C"],
  ["212 °F", ["temperature"], "100", "°F"],
  ["100 F", ["temperature"], "37.7777777777777777777777777778", "°F"],
  ["14.4 F", ["temperature difference"], "8", "°F"],
  ["18 °F", ["temperature", "temperature difference"], "-7.77777777777777777777777777778", "°F"],
  ["3600 Btu/h", ["power"], "1.05505585262", "Btu/h"],
  ["1 hp", ["power"], "0.74569987158227022", "hp"],
  ['3/32"', ["length"], "2.38125", "in"],
  ["1 yd", ["length"], "914.4", "yd"],
  ["-5 °C", ["temperature"], "-5", "°C"],
  ["−5 °C", ["temperature"], "-5", "°C"],
  ["-40 F", ["temperature"], "-40", "°F"],
  ["1 h 30 min", ["time"], "5400", "h"],
  ["90 min", ["time"], "5400", "min"],
  ["1.25 g/mL", ["density"], "1.25", "g/mL"],
  ["1.25 g/cm3", ["density"], "1.25", "g/mL"],
  ["1250 kg/m3", ["density"], "1.25", "kg/m³"],
  ["1250 kg/m³", ["density"], "1.25", "kg/m³"],
  ["17 meq", ["alkalinity"], "17", "meq"],
  ["17 meq/100 g", ["share", "alkalinity"], "17", "meq"],
  ["17 meq/100g", ["alkalinity"], "17", "meq"],
  ["17 meq/100 g flour", ["alkalinity"], "17", "meq"],
  ["17 meq per 100 g of flour", ["alkalinity"], "17", "meq"],
  ["170 meq/kg", ["alkalinity"], "17", "meq/kg"],
  ["170 meq per kg flour", ["alkalinity"], "17", "meq/kg"],
  ["6 m/min", ["speed"], "6", "m/min"],
  ["0.1 m/s", ["speed"], "6", "m/s"],
];

describe("parseQuantity reads what people write", () => {
  it.each(readable)("%s", (written, dimensions, value, unit) => {
    const reading = parseQuantity(written, dimensions);
    if (!reading.ok) throw new Error(reading.fault.why);
    expect(reading.quantity).toEqual({
      text: String(written).trim(),
      dimension: findUnit(unit, dimensions)?.dimension,
      value,
      unit,
    });
  });
});

/** What is written, what it may measure, and what the advice must name. */
const unreadable: readonly (readonly [string | number, readonly Dimension[], string])[] = [
  ["350", ["mass"], '"350 g"'],
  [36, ["share", "mass"], '"36 %"'],
  ["1e3", ["mass"], "add the unit"],
  ["-3 g", ["mass"], "zero or more"],
  ["−3 %", ["share"], "zero or more"],
  ["1,5 kg", ["mass"], "point"],
  ["1,500 g", ["mass"], "1500"],
  ["3 furlongs", ["length"], '"furlongs" is not a unit'],
  ["1 tsp", ["mass"], "weigh it"],
  ["1 T", ["share", "mass"], "weigh it"],
  ["1 t", ["mass"], "weigh it"],
  ["2 tbsp. ", ["mass"], "weigh it"],
  ["5.8 fl oz", ["share", "mass"], "weigh it"],
  ["3 mm", ["mass"], "measures length"],
  ["20 °C", ["share"], "measures temperature"],
  ["4 oz 1 lb", ["mass"], "from large to small"],
  ["1 lb 1 lb", ["mass"], "from large to small"],
  ["1 lb 4 in", ["mass", "length"], "from large to small"],
  ["30 % 5 %", ["share"], "from large to small"],
  ["1/0 kg", ["mass"], "write it like"],
  ["", ["mass"], "write it like"],
  ["   ", ["mass"], "write it like"],
  ["about 3 g", ["mass"], "write it like"],
  ["3 g.", ["mass"], "not a unit"],
  ["3 g + 2 g", ["mass"], "write it like"],
  ["1e3 g", ["mass"], '"e" is not a unit'],
  ["NaN", ["mass"], "write it like"],
  [Number.NaN, ["mass"], "write it like"],
  [Number.POSITIVE_INFINITY, ["mass"], "write it like"],
  [`${"9".repeat(90)} g`, ["mass"], "short"],
  ["g", ["mass"], "write it like"],
  ["5 constructor", ["mass"], '"constructor" is not a unit'],
];

describe("parseQuantity says what would be right", () => {
  it.each(unreadable)("%s", (written, dimensions, advice) => {
    const reading = parseQuantity(written, dimensions);
    if (reading.ok) throw new Error(`was read as ${reading.quantity.value} ${reading.quantity.dimension}`);
    const words = told(problem("quantity.unreadable", [], { written: String(written), ...reading.fault }));
    expect(words.advice).toContain(advice);
    expect(words.expected).toContain(unitsFor(dimensions).join(", "));
  });
});

test.each([
  ["0.06", ["length"], '"0.055 in"', 'add the unit: "0.06 in"'],
  ["36", ["share", "mass"], '"36 %"', 'add the unit: "36 %" or "36 oz"'],
  ["warm", ["temperature"], '"68 °F"', 'write it like "68 °F"'],
  ["much", ["power"], '"12 hp"', 'write it like "12 hp"'],
] satisfies readonly (readonly [string, readonly Dimension[], string, string])[])(
  "what %s should be is told in the units asked for",
  (written, dimensions, example, advice) => {
    const reading = parseQuantity(written, dimensions);
    if (reading.ok) throw new Error("was read");
    const words = toldIn("us")(problem("quantity.unreadable", [], { written, ...reading.fault }));
    expect([words.advice, words.expected.includes(`such as ${example}`)]).toEqual([advice, true]);
  },
);

describe("units", () => {
  it.each(units.map((unit) => [unit.symbol, unit] as const))(
    "%s is found by its symbol and its other names",
    (_, unit) => {
      for (const name of [unit.symbol, unit.symbol.toUpperCase(), ...unit.aliases])
        expect(findUnit(name, [unit.dimension])).toBe(unit);
    },
  );

  it.each(units.map((unit) => [unit.symbol, unit] as const))("%s is read after a number", (_, unit) => {
    for (const name of [unit.symbol, ...unit.aliases]) {
      const reading = parseQuantity(`3 ${name}`, [unit.dimension]);
      expect(reading.ok && reading.quantity.unit, name).toBe(unit.symbol);
    }
  });

  it("gives no two units of one dimension the same name", () => {
    const names = units.flatMap(({ symbol, aliases, dimension }) =>
      [...new Set([symbol.toLowerCase(), ...aliases])].map((name) => `${dimension} ${name}`),
    );
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(units.map((unit) => [unit.symbol, unit] as const))("%s goes to the base unit and back", (_, unit) => {
    for (const amount of ["0", "1", "12.75", "-40"]) {
      const back = fromBase(toBase(dec(amount), unit), unit);
      expect(back.minus(amount).abs().lt("1e-35")).toBe(true);
    }
  });
});
