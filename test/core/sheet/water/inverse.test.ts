import {
  densityFromSheet,
  givenDensity,
  lossesFrom,
  measuredSheet,
  passSchedule,
  springBackFrom,
  thicknessFromSheet,
} from "@noodlewright/core/sheet";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { always } from "../../../always.ts";
import { answered, codesOf } from "../../told-of.ts";

const hundredths = (min: number, max: number) => fc.integer({ min, max }).map((value) => (value / 100).toFixed(2));

describe("measured sheets", () => {
  it("lead back to density, thickness and spring-back of the schedule they came from", () => {
    always(
      100,
      [hundredths(100, 140), hundredths(100, 150), hundredths(50, 180), hundredths(10000, 500000)],
      (...drawn) => {
        const [density, springBack, finalThickness, mass] = drawn;
        const last = answered(
          passSchedule({
            gaps: { kind: "free", least: "0.1", greatest: "12" },
            firstThickness: "2",
            finalThickness,
            springBack,
            sheet: { mass, density: givenDensity(density), width: "250" },
          }),
        ).passes.at(-1);
        const length = last?.length?.value ?? "";
        const sheet = { length, width: "250", mass, thickness: finalThickness };
        expect(Number(answered(densityFromSheet(sheet)).value)).toBeCloseTo(Number(density), 12);
        const thickness = answered(thicknessFromSheet(sheet, givenDensity(density)));
        expect(Number(thickness.value)).toBeCloseTo(Number(finalThickness), 12);
        const found = answered(springBackFrom(thickness.value, last?.gap.value ?? ""));
        expect(Number(found.value)).toBeCloseTo(Number(springBack), 12);
      },
    );
  });
});

describe("losses of a weighed batch", () => {
  it("come stage by stage and in all", () => {
    const losses = answered(
      lossesFrom([
        { stage: "mix", before: "10000", after: "9900" },
        { stage: "roll", before: "9900", added: "100", after: "9800" },
      ]),
    );
    expect(losses.stages.map(({ loss }) => loss.value)).toEqual(["1", "2"]);
    expect(losses.total.value).toBe("2.98");
  });

  it("lead back to what was lost", () => {
    always(100, [fc.array(fc.integer({ min: 0, max: 3000 }), { minLength: 1, maxLength: 5 })], (losses) => {
      let mass = 10000;
      const stages = losses.map((loss, index) => {
        const before = mass;
        mass *= 1 - loss / 10000;
        return { stage: `stage ${index}`, before: before.toFixed(10), after: mass.toFixed(10) };
      });
      const found = answered(lossesFrom(stages));
      for (const [index, { loss }] of found.stages.entries()) {
        expect(Number(loss.value)).toBeCloseTo((losses[index] ?? 0) / 100, 8);
      }
      expect(Number(found.total.value)).toBeCloseTo((1 - mass / 10000) * 100, 8);
    });
  });
});

describe("what no dough and no rolls can do", () => {
  const strip = { length: "1 m", width: "150 mm", thickness: "1.5 mm" };
  const codes = (mass: string, gap: string) => {
    const measured = measuredSheet({ ...strip, mass, gap });
    return measured.ok ? measured.notes.map(({ code }) => code) : codesOf(measured);
  };

  it.each([
    // 0.225 L: 1.236, 1.333 and 1.711 g/mL; without any air a dough has 1.308 at 28 % of water.
    { mass: "278 g", gap: "1.35 mm", says: [] },
    { mass: "300 g", gap: "1.35 mm", says: ["sheet.denser-than-solid"] },
    { mass: "278 g", gap: "1.875 mm", says: ["sheet.thinner-than-gap"] },
    { mass: "385 g", gap: "1.35 mm", says: ["measured.implausible"] },
  ])("$mass of sheet through $gap", ({ mass, gap, says }) => {
    expect(codes(mass, gap)).toEqual(says);
  });
});
