import { type PassRequest, type PassSchedule, passSchedule } from "@noodlewright/core/sheet";
import { describe, expect, it } from "vitest";
import { answered } from "../core/told-of.ts";

/** Laboratory gap lists, mm, with what each pass takes off in %, worked out by hand to two places. */
const gapLists = [
  {
    source: "Chinese sensory noodle method, appendix text: 3.5-3-2.5-2-1.5-1 mm",
    first: "3.5",
    gaps: ["3", "2.5", "2", "1.5", "1"],
    reductions: [14.29, 16.67, 20, 25, 33.33],
    total: 71.43,
  },
  {
    source: "textbook laboratory method for alkaline noodles, read in a copy: 2.75 mm folded, then 2.5, 2.0, 1.5 mm",
    first: "2.75",
    gaps: ["2.5", "2.0", "1.5"],
    reductions: [9.09, 20, 25],
    total: 45.45,
  },
  {
    source:
      "sensory method of SB/T 10137-93, as described by Lei et al.: a 2 mm sheet folded to 4 mm, then 3.5 mm down to 1 mm in six passes, taken as half-millimetre steps",
    first: "4",
    gaps: ["3.5", "3", "2.5", "2", "1.5", "1"],
    reductions: [12.5, 14.29, 16.67, 20, 25, 33.33],
    total: 75,
  },
] as const;

const half = 0.005;

describe.each(gapLists)("$source", ({ first, gaps, reductions, total }) => {
  const outcome = passSchedule({
    gaps: { kind: "list", gaps },
    firstThickness: first,
    finalThickness: gaps.at(-1) ?? "",
  });
  const schedule = answered(outcome);

  it.each(reductions.map((expected, index) => ({ pass: index + 1, gap: gaps[index], expected })))(
    "pass $pass through $gap mm takes off $expected %",
    ({ pass, gap, expected }) => {
      const made = schedule.passes[pass - 1];
      expect(Number(made?.gap.value)).toBe(Number(gap));
      expect(Math.abs(Number(made?.reduction?.value) - expected)).toBeLessThanOrEqual(half);
    },
  );

  it(`takes off ${total} % in all and keeps to one third in every pass`, () => {
    expect(Math.abs(Number(schedule.totalReduction.value) - total)).toBeLessThanOrEqual(half);
    expect(outcome.ok && outcome.notes).toEqual([]);
  });
});

/**
 * About 10 mm down to about 1 mm over four roll pairs or more (Japan Convenience Foods Industry Association, process page).
 * Reduction of n equal passes: 1 - 0.1^(1/n), from a table of common logarithms: 10^(-1/6) = 0.6813, 10^(-1/7) = 0.7197,
 * 10^(-1/5) = 0.6310, 10^(-1/4) = 0.5623.
 */
const equalPasses = [
  { largest: "45", passes: 4, each: 43.77 },
  { largest: "37", passes: 5, each: 36.9 },
  { largest: undefined, passes: 6, each: 31.87 },
  { largest: "30", passes: 7, each: 28.03 },
] as const;

describe("10 mm to 1 mm between rolls that open freely", () => {
  it.each(equalPasses)("takes $passes passes of $each %", ({ largest, passes, each }) => {
    const request: PassRequest = {
      gaps: { kind: "free", least: "0.5", greatest: "12" },
      firstThickness: "10",
      finalThickness: "1",
      ...(largest === undefined ? {} : { largestReduction: largest }),
    };
    const schedule: PassSchedule = answered(passSchedule(request));
    expect(schedule.passes).toHaveLength(passes);
    for (const pass of schedule.passes)
      expect(Math.abs(Number(pass.reduction?.value) - each)).toBeLessThanOrEqual(0.01);
  });
});

/** Textbook laboratory method, read in a copy: 300 g flour with 32 % water and 1 % alkali; first gap 2.75 mm, folded and rolled again twice. */
it("folds a rough sheet of 2.75 mm twice before the first reduction", () => {
  const schedule = answered(
    passSchedule({
      gaps: { kind: "list", gaps: ["2.5", "2.0", "1.5"] },
      compounding: { gap: "2.75", folds: 2 },
      finalThickness: "1.5",
    }),
  );
  expect(schedule.passes.map(({ kind, gap }) => `${kind} ${gap.value}`)).toEqual([
    "rough 2.75",
    "compound 2.75",
    "compound 2.75",
    "reduce 2.5",
    "reduce 2",
    "reduce 1.5",
  ]);
  expect(schedule.passes[1]?.reduction?.value).toBe("50");
});
