import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { givenDensity } from "../../../packages/core/src/sheet/food.ts";
import type { Gaps } from "../../../packages/core/src/sheet/machine.ts";
import { passSchedule } from "../../../packages/core/src/sheet/passes.ts";
import { answered, codesOf } from "./answered.ts";

const free: Gaps = { kind: "free", least: "0.3", greatest: "12" };
/** A seven-step dial of the evening class, as measured. */
const dial: Gaps = {
  kind: "dial",
  settings: ["4.8", "3.8", "3.3", "2.6", "2", "1.5", "1"].map((gap, index) => ({ name: String(index), gap })),
};
const hundredths = (min: number, max: number) => fc.integer({ min, max }).map((value) => (value / 100).toFixed(2));

describe("pass schedule", () => {
  it("never goes beyond the limit, whatever the gaps", () => {
    const gaps = fc.oneof(
      fc.constant(free),
      fc.uniqueArray(hundredths(30, 1200), { minLength: 2, maxLength: 12 }).map((all): Gaps => {
        return { kind: "sticks", settings: all.map((gap) => ({ name: gap, gap })) };
      }),
    );
    let planned = 0;
    fc.assert(
      fc.property(
        gaps,
        hundredths(200, 3000),
        hundredths(30, 190),
        hundredths(1000, 6000),
        hundredths(100, 140),
        (...drawn) => {
          const [machine, firstThickness, finalThickness, largestReduction, springBack] = drawn;
          const outcome = passSchedule({ gaps: machine, firstThickness, finalThickness, largestReduction, springBack });
          if (!outcome.ok) {
            expect(outcome.problems.length).toBeGreaterThan(0);
            return;
          }
          planned += 1;
          for (const { reduction } of outcome.value.passes) {
            expect(Number(reduction?.value)).toBeLessThanOrEqual(Number(largestReduction) + 1e-9);
            expect(Number(reduction?.value)).toBeGreaterThan(0);
          }
          const last = Number(outcome.value.passes.at(-1)?.thickness.value);
          expect(Math.abs(last - Number(finalThickness))).toBeLessThanOrEqual(0.1);
        },
      ),
      { numRuns: 300 },
    );
    expect(planned).toBeGreaterThan(50);
  });

  it("keeps the volume of the sheet: length × thickness × width × density is its mass", () => {
    const schedule = answered(
      passSchedule({
        gaps: free,
        firstThickness: "10",
        finalThickness: "1.5",
        springBack: "1.1",
        sheet: { mass: "5000", density: givenDensity("1.25"), width: "280" },
        rollSpeed: "6",
      }),
    );
    for (const { length, thickness, runningTime } of schedule.passes) {
      const mass = (Number(length?.value) * Number(thickness.value) * 280 * 1.25) / 1000;
      expect(mass).toBeCloseTo(5000, 6);
      expect(Number(runningTime?.value)).toBeCloseTo(Number(length?.value) / 100, 9);
    }
    const total = schedule.passes.reduce((sum, { runningTime }) => sum + Number(runningTime?.value), 0);
    expect(Number(schedule.runningTime?.value)).toBeCloseTo(total, 9);
  });

  it("takes as long for a trip as its longest pass, and lets every stand pass on the same volume", () => {
    const request = {
      gaps: { kind: "list", gaps: ["5.6", "4", "2.8", "2", "1.568"] },
      firstThickness: "8",
      finalThickness: "1.568",
      sheet: { mass: "20000", density: givenDensity("1.25"), width: "240" },
      stands: 5,
    } as const;
    const one = answered(passSchedule({ ...request, rollSpeed: "8" }));
    const last = one.passes.at(-1);
    // The last stand turns at 8 m/min: the sheet has left it once all its length has gone through.
    expect(Number(one.runningTime?.value)).toBeCloseTo((Number(last?.length?.value) / 1000 / 8) * 60, 9);
    // 8 × 1.568 / 5.6: the first stand turns as much slower as the sheet is thicker there.
    expect(one.passes.map(({ speed }) => Number(speed?.value).toFixed(2))).toEqual([
      "2.24",
      "3.14",
      "4.48",
      "6.27",
      "8.00",
    ]);
    for (const { runningTime } of one.passes) {
      expect(Number(runningTime?.value)).toBeCloseTo(Number(one.runningTime?.value), 9);
    }
    const apart = answered(passSchedule({ ...request, stands: 1, rollSpeed: "8" }));
    expect(Number(apart.runningTime?.value)).toBeGreaterThan(2.5 * Number(one.runningTime?.value));
  });

  it("tells where the stated speeds of the stands do not pass on the same volume", () => {
    const run = (rollSpeed: readonly string[]) =>
      passSchedule({
        gaps: { kind: "list", gaps: ["3", "2"] },
        firstThickness: "4",
        finalThickness: "2",
        sheet: { mass: "5000", density: givenDensity("1.25"), width: "250" },
        rollSpeed,
        stands: 2,
      });
    const even = run(["4", "6"]);
    expect(even.ok && even.notes.map(({ code }) => code)).not.toContain("passes.uneven-speeds");
    const uneven = run(["5", "6"]);
    expect(uneven.ok && uneven.notes.find(({ code }) => code === "passes.uneven-speeds")?.text).toContain(
      "pass 1 4.00 in place of 5.00 m/min",
    );
    // 5 kg at 2 mm are 8 m; at 6 m/min they take longer than 5.33 m at 5 m/min.
    expect(answered(uneven).runningTime?.value).toBe("80");
  });

  it("sets the gap by the spring-back and not the thickness", () => {
    const last = answered(
      passSchedule({ gaps: free, firstThickness: "2", finalThickness: "1.5", springBack: "1.25" }),
    ).passes.at(-1);
    expect([last?.gap.value, last?.thickness.value]).toEqual(["1.2", "1.5"]);
  });

  it("chooses the settings of a dial", () => {
    const schedule = answered(passSchedule({ gaps: dial, firstThickness: "7", finalThickness: "1.5" }));
    expect(schedule.passes.map(({ setting }) => setting)).toEqual(["0", "2", "3", "4", "5"]);
  });

  it("counts trips: each fold is one, and two stands take two passes", () => {
    const schedule = answered(
      passSchedule({ gaps: free, compounding: { gap: "5", folds: 2 }, finalThickness: "1.5", stands: 2 }),
    );
    // 5 mm to 1.5 mm takes 3 passes within one third.
    expect(schedule.passes.filter(({ kind }) => kind === "reduce")).toHaveLength(3);
    expect(schedule.trips.value).toBe("5");
  });

  it("begins at the widest gap where the rolls do not open further", () => {
    const gaps: Gaps = { kind: "free", least: "0.3", greatest: "6" };
    const schedule = answered(passSchedule({ gaps, firstThickness: "8.9", finalThickness: "5" }));
    expect(schedule.passes.map(({ thickness }) => thickness.value)).toEqual(["6", "5"]);
  });
});

describe("problems of a pass schedule", () => {
  it("says which step of a dial is too big and what would do", () => {
    const outcome = passSchedule({ gaps: dial, firstThickness: "8", finalThickness: "1.5" });
    expect(outcome.ok).toBe(false);
    expect(!outcome.ok && outcome.problems).toEqual([
      {
        code: "passes.step-too-big",
        kind: "no-answer",
        path: ["gaps"],
        found: "from the first thickness of 8.00 mm to setting 0 (4.80 mm) one pass takes off 40.0 %",
        expected: "at most 33.3 % in one pass",
        advice: "press or roll the dough to at most 7.19 mm first",
      },
    ]);
    expect(passSchedule({ gaps: dial, firstThickness: "7.19", finalThickness: "1.5" }).ok).toBe(true);
  });

  it("names the gap between two sticks", () => {
    const gaps: Gaps = {
      kind: "sticks",
      settings: [
        { name: "thick", gap: "5" },
        { name: "thin", gap: "2" },
      ],
    };
    const outcome = passSchedule({ gaps, firstThickness: "6", finalThickness: "2" });
    expect(!outcome.ok && outcome.problems[0]?.found).toBe(
      "from setting thick (5.00 mm) to setting thin (2.00 mm) one pass takes off 60.0 %",
    );
  });

  it("leaves out settings wider than the dough is thick", () => {
    const gaps: Gaps = {
      kind: "dial",
      settings: [
        { name: "1", gap: "5" },
        { name: "2", gap: "2" },
      ],
    };
    const outcome = passSchedule({ gaps, firstThickness: "4", finalThickness: "2" });
    expect(!outcome.ok && outcome.problems.map(({ found }) => found)).toEqual([
      "from the first thickness of 4.00 mm to setting 2 (2.00 mm) one pass takes off 50.0 %",
    ]);
  });

  it.each([
    ["passes.final-not-on-setting", { gaps: dial, firstThickness: "7", finalThickness: "1.25" }],
    ["passes.final-outside-gap", { gaps: free, firstThickness: "7", finalThickness: "0.2" }],
    ["passes.first-too-thick", { gaps: free, firstThickness: "30", finalThickness: "1.5" }],
    ["passes.not-thinner", { gaps: free, firstThickness: "1.5", finalThickness: "1.5" }],
    ["passes.not-thinner", { gaps: { kind: "list", gaps: ["2", "3"] }, firstThickness: "4", finalThickness: "3" }],
    ["passes.first-thickness", { gaps: free, finalThickness: "1.5" }],
    [
      "passes.first-thickness",
      { gaps: free, firstThickness: "7", finalThickness: "1.5", compounding: { gap: "5", folds: 1 } },
    ],
    ["passes.no-gaps", { gaps: { kind: "list", gaps: [] }, firstThickness: "4", finalThickness: "3" }],
    ["passes.list-misses-final", { gaps: { kind: "list", gaps: ["2"] }, firstThickness: "3", finalThickness: "1.5" }],
    ["compounding.gap-not-there", { gaps: dial, finalThickness: "1.5", compounding: { gap: "5", folds: 1 } }],
    ["machine.no-settings", { gaps: { kind: "dial", settings: [] }, firstThickness: "7", finalThickness: "1.5" }],
    ["sheet.out-of-range", { gaps: free, firstThickness: "-7", finalThickness: "1.5" }],
  ] as const)("%s", (code, request) => {
    expect(codesOf(passSchedule(request))).toContain(code);
  });

  it("lets a list repeat a gap", () => {
    const gaps = { kind: "list", gaps: ["2", "2"] } as const;
    const schedule = answered(passSchedule({ gaps, firstThickness: "3", finalThickness: "2" }));
    expect(schedule.passes.map(({ reduction }) => reduction?.value.slice(0, 5))).toEqual(["33.33", "0"]);
  });

  it("notes a listed pass beyond the limit without refusing it", () => {
    const outcome = passSchedule({
      gaps: { kind: "list", gaps: ["2", "1"] },
      firstThickness: "3",
      finalThickness: "1",
    });
    expect(outcome.ok && outcome.notes.map(({ code, path }) => [code, path])).toEqual([
      ["passes.above-limit", ["gaps", "gaps", 1]],
    ]);
  });
});
