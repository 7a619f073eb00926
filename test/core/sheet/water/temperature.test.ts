import {
  flourSpecificHeat,
  type Mix,
  type MixingHeat,
  mixingHeat,
  waterSpecificHeat,
  waterTemperature,
} from "@noodlewright/core/sheet";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { always } from "../../../always.ts";
import { answered, codesOf, toldOf } from "../../told-of.ts";

const mix: Mix = { flour: { mass: "7000", temperature: "24" }, water: "2450" };
const measured = (perKilogram: string) => ({ kind: "measured", perKilogram }) as const;
const tenths = (min: number, max: number) =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => (value / 10).toFixed(1));

describe("water temperature", () => {
  it("and the heat of mixing are each other's inverse, with egg and bowl", () => {
    let tried = 0;
    always(100, [tenths(5, 35), tenths(15, 35), tenths(0, 25), tenths(1, 3000)], (flour, wanted, perKilogram, egg) => {
      const whole: Mix = {
        flour: { mass: "7000", temperature: flour },
        water: "2450",
        others: [{ name: "egg", mass: egg, temperature: "6", specificHeat: waterSpecificHeat }],
        bowl: { name: "bowl", mass: "9000", temperature: "20", specificHeat: flourSpecificHeat },
      };
      const outcome = waterTemperature({ ...whole, wanted, heat: measured(perKilogram) });
      if (!outcome.ok) return;
      tried += 1;
      const found = answered(
        mixingHeat({ ...whole, waterTemperature: outcome.value.temperature.value, doughTemperature: wanted }),
      );
      expect(Number(found.value)).toBeCloseTo(Number(perKilogram), 9);
    });
    expect(tried).toBeGreaterThan(20);
  });

  it("with ice closes the balance to the joule", () => {
    let iced = 0;
    always(200, [tenths(20, 32), tenths(20, 26), tenths(5, 20), tenths(8, 25), tenths(-20, 0)], (...drawn) => {
      const [flour, wanted, perKilogram, tap, iceTemperature] = drawn;
      const outcome = waterTemperature({
        flour: { mass: "7000", temperature: flour },
        water: "2450",
        wanted,
        heat: measured(perKilogram),
        tap,
        iceTemperature,
      });
      if (!outcome.ok || outcome.value.ice === undefined) return;
      iced += 1;
      const { ice, tapWater } = outcome.value.ice;
      expect(Number(ice.value) + Number(tapWater.value)).toBeCloseTo(2450, 9);
      const [t, target, cold] = [Number(tap), Number(wanted), Number(iceTemperature)];
      // Choi and Okos: ice 2.0623 + 0.0060769 t; CRC: 6.01 kJ/mol.
      const toMelt = (6.01 / 18.015) * 1000 - cold * 2.0623 - (0.0060769 * cold ** 2) / 2;
      const liquid = (Number(tapWater.value) / 1000) * 4.18 * (target - t);
      const frozen = (Number(ice.value) / 1000) * (toMelt + 4.18 * target);
      const flourHeat = 7 * 1.84 * (target - Number(flour));
      expect(liquid + frozen + flourHeat).toBeCloseTo(9.45 * Number(perKilogram), 6);
    });
    expect(iced).toBeGreaterThan(20);
  });

  it("takes the heat of dry salts into account", () => {
    const heat = { kind: "estimated", hydration: "0", drySalts: [{ salt: "NaCl", mass: "1000" }] } as const;
    // 3.9 kJ/mol taken up, 58.44 g/mol.
    expect(Number(answered(waterTemperature({ ...mix, wanted: "25", heat })).heatMade.value)).toBeCloseTo(-66.73, 1);
  });

  it("says that the usual heat of hydration is no measurement, and that no mixer is counted", () => {
    const codes = (heat: MixingHeat) => {
      const outcome = waterTemperature({ ...mix, wanted: "25", heat });
      return outcome.ok && outcome.notes.map(({ code }) => code);
    };
    expect(codes({ kind: "estimated" })).toEqual(["temperature.textbook-hydration", "temperature.no-mixer-work"]);
    expect(codes({ kind: "estimated", hydration: "12" })).toEqual(["temperature.no-mixer-work"]);
    expect(codes({ kind: "estimated", hydration: "12", mixerWork: "0" })).toEqual([]);
    expect(codes(measured("12"))).toEqual([]);
  });

  it("needs no ice where the tap is cold enough", () => {
    expect(answered(waterTemperature({ ...mix, wanted: "25", heat: measured("5"), tap: "8" })).ice).toBeUndefined();
  });

  it("notes water that scalds", () => {
    const outcome = waterTemperature({
      ...mix,
      flour: { mass: "7000", temperature: "5" },
      wanted: "25",
      heat: measured("0"),
    });
    expect(outcome.ok && outcome.notes.map(({ code }) => code)).toEqual(["temperature.hot-water"]);
  });

  it.each(["20", "20.4", "20.7", "21"])(
    "says to whole degrees how cold the flour has to be where all the water as ice is not enough, for dough of %s °C",
    (wanted) => {
      const at = (temperature: string) =>
        waterTemperature({
          flour: { mass: "7000", temperature },
          water: "2450",
          wanted,
          heat: measured("20"),
          tap: "20",
        });
      const outcome = at("90");
      expect(codesOf(outcome)).toEqual(["temperature.too-warm"]);
      const advised = /to (-?\d+) °C/u.exec(outcome.ok ? "" : (toldOf(outcome)[0]?.advice ?? ""))?.[1] ?? "";
      expect(at(advised).ok).toBe(true);
      expect(at(String(Number(advised) + 1)).ok).toBe(false);
    },
  );
});
