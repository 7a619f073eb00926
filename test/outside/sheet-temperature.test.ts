import type { DissolvingSalt } from "@noodlewright/core/chemistry";
import { frictionFrom, heatOfSolution, threeTemperatureWater, waterTemperature } from "@noodlewright/core/sheet";
import { describe, expect, it } from "vitest";
import { exact, given } from "#core/figure/figure.ts";
import { definition } from "#core/figure/source.ts";
import { heatOfMelting, heatToMelt } from "#core/sheet/water/ice.ts";
import { answered } from "../core/told-of.ts";

function celsius(fahrenheit: number): string {
  return ((fahrenheit - 32) / 1.8).toFixed(12);
}

/** The rule of three temperatures as printed. */
const printed = [
  {
    source: "bakery trade magazine, June 2018, p. 29: 3 × 80 - 65 - 75 - 35 = 65 °F",
    temperatures: { dough: celsius(80), flour: celsius(65), room: celsius(75) },
    friction: (35 / 1.8).toFixed(12),
    water: (65 - 32) / 1.8,
  },
  {
    source: "online pastry school, article 427: 72 - (18 + 18 + 8) = 28 °C",
    temperatures: { dough: "24", flour: "18", room: "18" },
    friction: "8",
    water: 28,
  },
] as const;

describe.each(printed)("$source", ({ temperatures, friction, water }) => {
  it("gives the water", () => {
    expect(Number(answered(threeTemperatureWater(temperatures, friction)).value)).toBeCloseTo(water, 9);
  });

  it("gives the friction back", () => {
    const found = Number(answered(frictionFrom(temperatures, water.toFixed(12))).value);
    expect(found).toBeCloseTo(Number(friction), 9);
  });
});

/**
 * Heat balance by the first law, worked out by hand: water = target + (flour × heat × (target - flour temperature) - Q) /
 * (water × 4.18). Flour 1.84 kJ/(kg K) from Geankoplis, appendix A.4-1; water 4.18 from Çengel and Boles, problem 5-157. Two places.
 */
const balances = [
  { flour: "10000", at: "22", heat: "1.84", water: "3500", wanted: "27", made: "0", expected: 33.29 },
  { flour: "10000", at: "22", heat: "1.84", water: "3500", wanted: "27", made: "5", expected: 28.67 },
  { flour: "10000", at: "22", heat: "1.84", water: "3500", wanted: "27", made: "10", expected: 24.06 },
  { flour: "1000", at: "22", heat: "1.9", water: "350", wanted: "25", made: "0", expected: 28.9 },
] as const;

describe("water for a dough temperature", () => {
  it.each(balances)("$flour g flour at $at °C, $made kJ/kg: $expected °C", (row) => {
    const specificHeat = given({ id: "c", label: "c", unit: "kJ/(kg K)", places: 2 }, row.heat, "table");
    const plan = answered(
      waterTemperature({
        flour: { mass: row.flour, temperature: row.at, specificHeat },
        water: row.water,
        wanted: row.wanted,
        heat: { kind: "measured", perKilogram: row.made },
      }),
    );
    expect(Math.abs(Number(plan.temperature.value) - row.expected)).toBeLessThanOrEqual(0.005);
  });

  it("warms a dough of 2 kg flour and 1 kg water by the heat of hydration of 15 kJ/kg", () => {
    // Çengel and Boles, Thermodynamics, 8th ed., problem 5-157 (statement read): 45 kJ; heat capacity 2 × 1.76 + 4.18 = 7.70 kJ/K; 5.844 K.
    const specificHeat = given({ id: "c", label: "c", unit: "kJ/(kg K)", places: 2 }, "1.76", "table");
    const flour = { mass: "2000", temperature: "15", specificHeat };
    const plan = answered(waterTemperature({ flour, water: "1000", wanted: "20.844", heat: { kind: "estimated" } }));
    expect(plan.heatMade.value).toBe("45");
    expect(Math.abs(Number(plan.temperature.value) - 15)).toBeLessThanOrEqual(0.005);
  });
});

/**
 * Heat given off in kJ/kg. Enthalpies of formation of the solids by the CRC Handbook as the chemicals library 1.5.2 gives them
 * and of the ions by the same handbook; molar masses 58.443, 105.988, 138.205, 84.006, 100.115 g/mol.
 */
const solutions: readonly (readonly [DissolvingSalt, number])[] = [
  ["NaCl", (-411.2 + 240.1 + 167.2) / 0.058443],
  ["Na2CO3", (-1130.7 + 2 * 240.1 + 677.1) / 0.105988],
  ["K2CO3", (-1151 + 2 * 252.4 + 677.1) / 0.138205],
  ["NaHCO3", (-950.8 + 240.1 + 692) / 0.084006],
  ["KHCO3", (-963.2 + 252.4 + 692) / 0.100115],
];

describe("heat of solution", () => {
  it.each(solutions)("%s gives off %f kJ/kg", (salt, expected) => {
    expect(Math.abs(Number(heatOfSolution(salt).value) - expected)).toBeLessThanOrEqual(0.05);
  });
});

describe("ice", () => {
  it("melts with 333.6 kJ/kg", () => {
    // CRC Handbook: 6.01 kJ/mol; tolerance half the last digit of that.
    expect(Math.abs(Number(heatOfMelting().value) - 333.6)).toBeLessThanOrEqual(0.3);
  });

  it("takes up its own heat below 0 °C first", () => {
    // CoolProp 8.0.0, INCOMP::FoodIce: 1940.762 J/(kg K) at -20 °C and 2062.3 at 0 °C, linear in between.
    const cold = given({ id: "t", label: "t", unit: "°C", places: 0 }, -20, "thermometer", definition);
    const warmed = exact(heatToMelt(cold)).minus(exact(heatOfMelting())).toNumber();
    expect(Math.abs(warmed - (20 * (1.940762 + 2.0623)) / 2)).toBeLessThanOrEqual(0.001);
  });
});
