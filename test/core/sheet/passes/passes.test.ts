import { told } from "@noodlewright/core";
import { toldIn } from "@noodlewright/core/figure";
import { type Gaps, givenDensity, type PassRequest, passSchedule } from "@noodlewright/core/sheet";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { always } from "../../../always.ts";
import { answered, codesOf, toldOf } from "../../told-of.ts";

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
    always(
      300,
      [gaps, hundredths(200, 3000), hundredths(30, 190), hundredths(1000, 6000), hundredths(100, 140)],
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
    expect(uneven.ok && uneven.notes.map(told).join()).toContain("pass 1 at 4.00 m/min in place of 5.00 m/min");
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
    expect(toldOf(outcome)).toMatchObject([
      {
        code: "passes.step-too-big",
        kind: "no-answer",
        path: ["gaps"],
        found: "from the first thickness of 8 mm to setting 0 (4.8 mm) one pass takes off 40.0 %",
        expected: "at most 33.3 % in one pass",
        advice: "press or roll the dough to at most 7.2 mm first",
      },
    ]);
    expect(passSchedule({ gaps: dial, firstThickness: "7.20", finalThickness: "1.5" }).ok).toBe(true);
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
    expect(toldOf(outcome)[0]?.found).toBe(
      "from setting thick (5 mm) to setting thin (2 mm) one pass takes off 60.0 %",
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
    expect(toldOf(outcome).map(({ found }) => found)).toEqual([
      "from the first thickness of 4 mm to setting 2 (2 mm) one pass takes off 50.0 %",
    ]);
  });

  it("refuses a first thickness where the dough is compounded too", () => {
    const twice = { firstThickness: "7", finalThickness: "1.5", compounding: { gap: "5", folds: 1 } };
    expect(codesOf(passSchedule({ gaps: free, ...twice }))).toContain("passes.first-thickness");
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

/** What is said of a schedule that cannot be. */
function refusalOf(request: PassRequest): readonly (readonly string[])[] {
  const outcome = passSchedule(request);
  return toldOf(outcome).map(({ found, expected, advice }) => [found, expected, advice]);
}

describe("numbers that are told", () => {
  it("are the thicknesses that rolls can give, spring-back counted", () => {
    // gaps of 0.3 to 12 mm give 0.36 to 14.4 mm; 0.3 mm asks for a gap of 0.25 mm, 15 mm for one of 12.5 mm
    const request = { gaps: free, firstThickness: "20", springBack: "1.2" } as const;
    const advice = "ask for a final thickness of 0.36 mm to 14.4 mm";
    const range = "a gap that the rolls of this machine open to: 0.3 mm to 12 mm";
    expect(refusalOf({ ...request, finalThickness: "0.3" })).toEqual([
      ["a thickness that needs a last gap of 0.25 mm, as the sheet springs back after it", range, advice],
    ]);
    expect(refusalOf({ ...request, finalThickness: "15" })).toEqual([
      ["a thickness that needs a last gap of 12.5 mm, as the sheet springs back after it", range, advice],
    ]);
    expect(passSchedule({ ...request, finalThickness: "0.36" }).ok).toBe(true);
    expect(passSchedule({ ...request, finalThickness: "14.4" }).ok).toBe(true);
  });

  it("are thicknesses that rolls can give in inches, too: 0.36 mm is 0.01417 in, 14.4 mm is 0.56693 in", () => {
    const outcome = passSchedule({ gaps: free, firstThickness: "20", springBack: "1.2", finalThickness: "0.3" });
    const advice = outcome.ok ? [] : outcome.problems.map((problem) => toldIn("us")(problem).advice);
    expect(advice).toEqual(["ask for a final thickness of 0.015 in to 0.566 in"]);
  });

  it("are how thick the dough may be before the widest gap: 6.6 / 0.7 = 9.428 mm", () => {
    const gaps: Gaps = { kind: "free", least: "0.3", greatest: "6" };
    const request = { gaps, finalThickness: "5", springBack: "1.1", largestReduction: "30" } as const;
    // 1 − 6.6 / 12
    expect(refusalOf({ ...request, firstThickness: "12" })).toEqual([
      [
        "12 mm, of which the widest gap would take off 45.0 %",
        "at most 30.0 % in one pass",
        "press or roll the dough by hand to at most 9.42 mm first",
      ],
    ]);
    expect(passSchedule({ ...request, firstThickness: "9.42" }).ok).toBe(true);
    expect(passSchedule({ ...request, firstThickness: "9.43" }).ok).toBe(false);
  });

  it("are the settings that lie nearest, and the setting that is missing between two", () => {
    // 1.5 × 1.1 and 2 × 1.1 about 1.9 mm
    expect(refusalOf({ gaps: dial, firstThickness: "7", finalThickness: "1.9", springBack: "1.1" })).toEqual([
      [
        "1.9 mm",
        "a thickness that one of the settings gives",
        "ask for 2.2 mm (setting 4) or 1.65 mm (setting 5), or allow a larger difference",
      ],
    ]);
    const settings = ["5", "2"].map((gap) => ({ name: gap, gap }));
    const [step] = refusalOf({ gaps: { kind: "sticks", settings }, firstThickness: "6", finalThickness: "2" });
    // two thirds of 5 mm
    expect(step?.[2]).toBe("find a setting between 3.33 mm and 5 mm, or allow 60.0 %");
  });

  it("are how far a listed last sheet lies from the thickness asked for, too thin or too thick", () => {
    const listed = (gap: string, finalTolerance: string): PassRequest => ({
      gaps: { kind: "list", gaps: ["2.4", gap] },
      firstThickness: "3",
      finalThickness: "1.5",
      largestReduction: "60",
      finalTolerance,
    });
    const advice = "change the last gap or the final thickness";
    expect(refusalOf(listed("1.2", "0.2"))).toEqual([["a last sheet of 1.2 mm", "1.5 mm, within 0.2 mm", advice]]);
    expect(refusalOf(listed("1.8", "0.2"))).toEqual([["a last sheet of 1.8 mm", "1.5 mm, within 0.2 mm", advice]]);
    for (const gap of ["1.2", "1.8"]) expect(passSchedule(listed(gap, "0.3")).ok).toBe(true);
  });

  it("are the pass of a list that takes off too much, compounding counted, and what it takes off", () => {
    const request = {
      gaps: { kind: "list", gaps: ["4", "2"] },
      compounding: { gap: "5", folds: 2 },
      finalThickness: "2",
    } as const;
    const outcome = passSchedule(request);
    const schedule = answered(outcome);
    const before = schedule.passes.filter(({ kind }) => kind !== "reduce").length;
    expect(outcome.ok && outcome.notes.map(told)).toEqual([
      `Pass ${before + 2} takes off 50.0 %, more than the limit of 33.3 %.`,
    ]);
    expect(schedule.passes.map(({ number, thickness }) => [number, thickness.id])).toEqual(
      schedule.passes.map((_, index) => [index + 1, `pass-${index + 1}.thickness`]),
    );
    expect(
      refusalOf({ gaps: { kind: "list", gaps: ["2", "3"] }, firstThickness: "4", finalThickness: "3" })[0]?.[0],
    ).toBe("3 mm after 2 mm");
  });
});

describe("passes of equal ratio", () => {
  const steps = (request: PassRequest) =>
    answered(passSchedule(request)).passes.map(({ gap, thickness }) => [
      Number(gap.value).toFixed(4),
      Number(thickness.value).toFixed(4),
      gap.id,
    ]);

  it("are the fewest within the limit: 8 mm to 2 mm takes four, each times the fourth root of a quarter", () => {
    // 8 / √2, 4, 4 / √2, 2; the gap is that by 1.25
    expect(steps({ gaps: free, firstThickness: "8", finalThickness: "2", springBack: "1.25" })).toEqual([
      ["4.5255", "5.6569", "pass-1.gap"],
      ["3.2000", "4.0000", "pass-2.gap"],
      ["2.2627", "2.8284", "pass-3.gap"],
      ["1.6000", "2.0000", "pass-4.gap"],
    ]);
  });

  it("follow the widest gap where the first would be wider", () => {
    // 9 mm to 3.2 mm takes three; the first would be 9 × (3.2 / 9) ^ (1 / 3) = 6.38 mm, and rolls give 4.8 × 1.25 = 6 mm;
    // then √(6 × 3.2) = 4.3818 mm
    const gaps: Gaps = { kind: "free", least: "0.3", greatest: "4.8" };
    expect(steps({ gaps, firstThickness: "9", finalThickness: "3.2", springBack: "1.25" })).toEqual([
      ["4.8000", "6.0000", "pass-1.gap"],
      ["3.5054", "4.3818", "pass-2.gap"],
      ["2.5600", "3.2000", "pass-3.gap"],
    ]);
  });
});
