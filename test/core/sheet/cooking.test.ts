import { told } from "@noodlewright/core";
import {
  cookedMass,
  gainFromWater,
  potRecovery,
  powerIntoWater,
  rawMass,
  type SheetHazard,
  sheetCautions,
  waterSpecificHeat,
} from "@noodlewright/core/sheet";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { always } from "../../always.ts";
import { answered } from "../told-of.ts";

describe("cooked and raw", () => {
  it("lead back to each other", () => {
    always(100, [fc.integer({ min: 1, max: 100000 }), fc.integer({ min: 100, max: 300 })], (mass, percent) => {
      const gain = { gain: (percent / 100).toFixed(2) };
      const cooked = answered(cookedMass(String(mass), gain));
      expect(answered(rawMass(cooked.value, gain)).value).toBe(String(mass));
      expect(cooked.range).toBeUndefined();
    });
  });

  it("show the range of the usual gain the right way round", () => {
    expect(answered(cookedMass("100")).range).toMatchObject({ low: "170", high: "190" });
    const { low, high } = answered(rawMass("323")).range ?? {};
    expect([low, high]).toEqual(["170", "190"]);
  });
});

describe("the kitchen's own cook gain", () => {
  it("falls with the solids lost", () => {
    const gain = (solidsLoss: string) =>
      Number(answered(gainFromWater({ rawWater: "33", cookedWater: "65", solidsLoss })).value);
    expect(gain("8") / gain("0")).toBeCloseTo(0.92, 12);
  });
});

describe("pot", () => {
  const basket = {
    water: "20000",
    raw: "1000",
    rawTemperature: "20",
    rawSpecificHeat: waterSpecificHeat,
    power: "8.36",
  };

  it("falls and recovers by what the noodles take up", () => {
    // 1 kg × 4.18 × 80 K = 334.4 kJ; over 21 kg × 4.18; at 8.36 kW.
    const { drop, recovery } = answered(potRecovery(basket));
    expect(Number(drop.value)).toBeCloseTo(80 / 21, 9);
    expect(Number(recovery.value)).toBeCloseTo(40, 9);
  });

  it("states what the estimate leaves out", () => {
    const outcome = potRecovery(basket);
    expect(outcome.ok && outcome.notes.map(({ code }) => code)).toEqual(["pot.estimate"]);
  });

  it("has the power that warmed it", () => {
    // 20 kg × 4.18 × 60 K in 600 s.
    expect(answered(powerIntoWater({ water: "20000", from: "20", to: "80", seconds: "600" })).value).toBe("8.36");
  });
});

describe("cautions", () => {
  const all: readonly SheetHazard[] = ["rolls", "cutter", "dust", "pot", "standing-dough", "packed"];

  it("come once each, in the order asked for", () => {
    expect(sheetCautions(["pot", "rolls", "pot"]).map(({ code }) => code)).toEqual(["caution.pot", "caution.rolls"]);
  });

  it("defer to manual or local rules, and print no keeping time", () => {
    for (const { sources, ...caution } of sheetCautions(all)) {
      const text = told(caution);
      expect(text).toMatch(/manual|[Ll]ocal/u);
      expect(text).not.toMatch(/\d+ (?:days?|hours?|weeks?)/u);
      expect(sources.length).toBeGreaterThan(0);
    }
  });
});
