import {
  type Component,
  doughDensity,
  type FoodComposition,
  flourSpecificHeat,
  poreFreeDensity,
  specificHeat,
} from "@noodlewright/core/sheet";
import { describe, expect, it } from "vitest";
import { answered } from "../core/told-of.ts";

const nothing: FoodComposition = { water: "0", protein: "0", fat: "0", carbohydrate: "0", fibre: "0", ash: "0" };

/** Density in kg/m³ and specific heat in J/(kg K) of single components as CoolProp 8.0.0 gives them (fluids INCOMP::Food…), eight digits. */
// biome-ignore format: one component and temperature a line
const coolProp: readonly (readonly [Component, string, number, number])[] = [
  ["protein", "5", 1327.308, 2014.2117],
  ["protein", "25", 1316.94, 2037.6019],
  ["protein", "60", 1298.796, 2076.0076],
  ["fat", "5", 923.50215, 1991.4465],
  ["fat", "25", 915.15075, 2018.032],
  ["fat", "60", 900.5358, 2055.3151],
  ["carbohydrate", "5", 1597.5477, 1558.464],
  ["carbohydrate", "25", 1591.3385, 1594.1501],
  ["carbohydrate", "60", 1580.4724, 1645.1664],
  ["fibre", "5", 1309.6706, 1854.9367],
  ["fibre", "25", 1302.3528, 1888.7582],
  ["fibre", "60", 1289.5466, 1938.9928],
  ["ash", "5", 2422.3969, 1101.956],
  ["ash", "25", 2416.7843, 1137.5389],
  ["ash", "60", 2406.9622, 1192.7219],
];

describe("components against a general property library", () => {
  it.each(coolProp)("%s at %s °C", (component, temperature, density, heat) => {
    const food = { composition: { ...nothing, [component]: "1" }, temperature };
    expect(Math.abs(Number(answered(poreFreeDensity(food)).value) * 1000 - density)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(Number(answered(specificHeat(food)).value) * 1000 - heat)).toBeLessThanOrEqual(0.0005);
  });
});

/** Water by IAPWS-95, kg/m³ and kJ/(kg K), as CoolProp 8.0.0 gives it at one atmosphere. */
const water = [
  { temperature: "5", density: 999.967, heat: 4.205 },
  { temperature: "20", density: 998.207, heat: 4.18405 },
  { temperature: "25", density: 997.048, heat: 4.18131 },
  { temperature: "60", density: 983.196, heat: 4.18495 },
] as const;

describe("water against the formulation of the properties of water", () => {
  it.each(water)("at $temperature °C", ({ temperature, density, heat }) => {
    const food = { composition: { ...nothing, water: "1" }, temperature };
    const why = "the component equations are stated to about 0.3 % for density and 0.7 % for specific heat of water";
    expect(Math.abs((Number(answered(poreFreeDensity(food)).value) * 1000) / density - 1), why).toBeLessThan(0.003);
    expect(Math.abs(Number(answered(specificHeat(food)).value) / heat - 1), why).toBeLessThan(0.007);
  });
});

/** Strong flour, MEXT Standard Tables of Food Composition in Japan 2020, item 01020, per 100 g as is. */
const strongFlour: FoodComposition = {
  water: "14.5",
  protein: "11.8",
  fat: "1.5",
  carbohydrate: "71.7",
  fibre: "0",
  ash: "0.4",
};

function doughOf(addedWater: number): FoodComposition {
  return { ...strongFlour, water: String(14.5 + addedWater), ash: "2.4" };
}

describe("foods against measured values", () => {
  it("reads flour above its measured specific heat, so that the measured one is used", () => {
    const estimate = Number(answered(specificHeat({ composition: strongFlour, temperature: "25" })).value);
    // Geankoplis, appendix A.4-1: flour with 12 to 13.5 % water 1.80 to 1.88 kJ/(kg K); the text's 8 to 15 % above its middle.
    expect(estimate / 1.84).toBeGreaterThan(1.08);
    expect(estimate / 1.84).toBeLessThan(1.15);
    expect(flourSpecificHeat.value).toBe("1.84");
    expect(flourSpecificHeat.range).toMatchObject({ low: "1.80", high: "1.88" });
  });

  it("meets the measured specific heat of bread with 44 to 45 % water", () => {
    // Geankoplis, appendix A.4-1: white bread 2.72 to 2.85 kJ/(kg K); solids as in strong flour.
    const bread = { ...strongFlour, water: String((85.5 * 44.5) / 55.5) };
    const estimate = Number(answered(specificHeat({ composition: bread, temperature: "25" })).value);
    expect(estimate).toBeGreaterThanOrEqual(2.72);
    expect(estimate).toBeLessThanOrEqual(2.85);
  });
});

/**
 * Pore-free dough of MEXT strong flour with salt 1 and alkali 1 on 100 flour at 25 °C, kg/m³: volumes added up over the
 * component densities that CoolProp 8.0.0 gives, three places.
 */
const doughs = [
  { added: 28, density: 1307.287 },
  { added: 32, density: 1295.139 },
  { added: 34, density: 1289.413 },
  { added: 35, density: 1286.631 },
  { added: 40, density: 1273.474 },
] as const;

describe("dough density", () => {
  it.each(doughs)("with $added % water is $density kg/m³", ({ added, density }) => {
    const found = Number(answered(poreFreeDensity({ composition: doughOf(added), temperature: "25" })).value);
    expect(Math.abs(found * 1000 - density)).toBeLessThanOrEqual(0.0005);
  });

  it("with 5 % air falls by 5 %", () => {
    // USDA SR28 item 20083 with 35 water and 1 salt on 100 flour; 1282.55 kg/m³ without and 1218.42 with air, as above.
    const composition = {
      water: "48.36",
      protein: "11.98",
      fat: "1.66",
      carbohydrate: "70.13",
      fibre: "2.4",
      ash: "1.47",
    };
    const found = Number(answered(doughDensity({ composition, temperature: "25" }, "5")).value) * 1000;
    expect(Math.abs(found - 1218.42)).toBeLessThanOrEqual(0.05);
  });
});
