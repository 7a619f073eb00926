import { cookedMass, gainFromWater, potWater, rawMass } from "@noodlewright/core/sheet";
import { describe, expect, it } from "vitest";
import { answered } from "../core/told-of.ts";

/** Raw and boiled mass that sources give together. */
const cooked = [
  { source: "trade page: 112 g raw, 200 g boiled, low end", raw: "112", boiled: 200 },
  { source: "trade page: 112 g raw, 210 g boiled, high end", raw: "112", boiled: 210 },
  { source: "Japanese patent 6571559, examples 1 to 9: boiled to 190 % of the noodle", raw: "100", boiled: 190 },
  { source: "MEXT 2020, items 01047 and 01048, ratio of protein 8.6 to 4.9", raw: "100", boiled: 175.5 },
  { source: "MEXT 2020, Okinawa soba 01052 and 01053, ratio of protein 9.2 to 5.2", raw: "100", boiled: 176.9 },
] as const;

describe("cook gain", () => {
  it.each(cooked)("covers $source", ({ raw, boiled }) => {
    const { range } = answered(cookedMass(raw));
    expect(Number(range?.low)).toBeLessThanOrEqual(boiled);
    expect(Number(range?.high)).toBeGreaterThanOrEqual(boiled);
  });

  it("leads from a boiled pack of 200 g to about 112 g raw", () => {
    // Trade page: 112 g raw to 200 to 210 g boiled.
    expect(Math.abs(Number(answered(rawMass("200")).value) - 112)).toBeLessThan(1);
  });
});

/**
 * Water in % of raw and boiled noodles, MEXT Standard Tables of Food Composition in Japan 2020, and the ratio of their dry matter
 * to three places. The table's own protein ratio, 1.755 for the Chinese noodle, is lower: solids go into the pot.
 */
const boiled = [
  { item: "Chinese noodle, 01047 and 01048", raw: "33.0", cooked: "65.0", ratio: 1.914 },
  { item: "Okinawa soba, 01052 and 01053", raw: "32.3", cooked: "65.5", ratio: 1.962 },
  { item: "udon, 01038 and 01039", raw: "33.5", cooked: "75.0", ratio: 2.66 },
  { item: "buckwheat noodle, 01127 and 01128", raw: "33.0", cooked: "68.0", ratio: 2.094 },
] as const;

describe("cook gain by the solids", () => {
  it.each(boiled)("$item: $ratio", ({ raw, cooked: water, ratio }) => {
    const gain = answered(gainFromWater({ rawWater: raw, cookedWater: water, solidsLoss: "0" }));
    expect(Math.abs(Number(gain.value) - ratio)).toBeLessThanOrEqual(0.0005);
  });
});

it("boils 50 g of noodles in 500 g of water", () => {
  // Chinese sensory noodle method, appendix text: 50 g in 500 mL.
  expect(answered(potWater("50")).value).toBe("500");
});
