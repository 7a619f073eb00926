import {
  airFromDensity,
  doughDensity,
  fitProblems,
  type Machine,
  machineProblems,
  momentAt,
  poreFreeDensity,
  readTimeOfDay,
} from "@noodlewright/core/sheet";
import { describe, expect, it } from "vitest";
import { answered, toldOf } from "../../told-of.ts";

const bench: Machine = {
  name: "bench sheeter",
  rolls: { width: "300", gaps: { kind: "free", least: "0.3", greatest: "12" }, speed: "6", stands: 2 },
  cutters: [{ size: { kind: "number", number: 20 }, workingWidth: "140" }, { size: { kind: "width", width: "3.0" } }],
  longestSheet: "3000",
};

describe("machine", () => {
  it("is taken as it is when nothing is wrong", () => {
    expect(machineProblems(bench)).toEqual([]);
  });

  it("says where a number cannot be right", () => {
    const wrong: Machine = {
      ...bench,
      rolls: { ...bench.rolls, width: "0", stands: 1.5, gaps: { kind: "free", least: "12", greatest: "0.3" } },
      cutters: [{ size: { kind: "number", number: 61 } }],
    };
    expect(machineProblems(wrong).map(({ code, path }) => `${code} ${path.join(".")}`)).toEqual([
      "sheet.out-of-range rolls.width",
      "sheet.out-of-range rolls.stands",
      "sheet.out-of-range cutters.0.size.number",
      "machine.gaps-reversed rolls.gaps",
    ]);
  });
});

describe("what fits", () => {
  const sheet = { width: "140", length: "2900", cutter: { kind: "number", number: 20 } } as const;

  it("is a sheet within rolls, cutter and bench", () => {
    expect(fitProblems(sheet, bench)).toEqual([]);
    expect(fitProblems({ ...sheet, width: "300", cutter: { kind: "width", width: "3" } }, bench)).toEqual([]);
  });

  it.each([
    ["fits.rolls-too-narrow", { ...sheet, width: "310", cutter: { kind: "width", width: "3" } }, "roll it 300 mm wide"],
    ["fits.cutter-too-narrow", { ...sheet, width: "290" }, "slit the sheet lengthwise into 3 strips of about 97 mm"],
    [
      "fits.cutter-not-there",
      { ...sheet, cutter: { kind: "number", number: 22 } },
      "take no. 20, the nearest, which cuts strands of 1.5 mm",
    ],
    ["fits.sheet-too-long", { ...sheet, length: "7000" }, "divide the dough into 3 sheets of 2.33 m"],
  ] as const)("%s says what to change", (code, planned, advice) => {
    const problems = toldOf({ ok: false, problems: fitProblems(planned, bench) });
    expect(problems.map((problem) => problem.code)).toEqual([code]);
    expect(problems[0]?.advice).toContain(advice);
  });
});

describe("air in dough", () => {
  const composition = { water: "49.5", protein: "11.8", fat: "1.5", carbohydrate: "71.7", fibre: "0", ash: "2.4" };
  const food = { composition, temperature: "25" };

  it("leads to a density and back", () => {
    const density = answered(doughDensity(food, "6.5"));
    expect(Number(answered(airFromDensity(density, answered(poreFreeDensity(food)))).value)).toBeCloseTo(6.5, 9);
  });
});

describe("times of day", () => {
  it.each([
    ["9:05", 545],
    ["24:00", undefined],
    ["12:60", undefined],
    ["noon", undefined],
  ])("%s", (text, minute) => {
    expect(readTimeOfDay(text)).toBe(minute);
  });

  it("are written with their day", () => {
    expect([momentAt(735), momentAt(-80), momentAt(-1441)].map(({ text }) => text)).toEqual([
      "12:15",
      "22:40 the day before",
      "23:59, 2 days before",
    ]);
  });
});
