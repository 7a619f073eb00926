import type { Problem } from "@noodlewright/core";
import {
  frictionFrom,
  gainFromWater,
  gainFromWeights,
  givenDensity,
  type Mix,
  measuredLosses,
  mixerWork,
  mixingHeat,
  potRecovery,
  potWater,
  powerIntoWater,
  threeTemperatureWater,
  waterSpecificHeat,
  waterTemperature,
} from "@noodlewright/core/sheet";
import { expect, test } from "vitest";
import { planRequestProblems } from "#core/sheet/day/plan-request.ts";
import { passRequestProblems } from "#core/sheet/passes/pass-request.ts";
import { cutRequestProblems } from "#core/sheet/strands/cut-request.ts";
import { mixProblems } from "#core/sheet/water/heat-balance.ts";
import { codesOf } from "../told-of.ts";

type Asked = (value: string) => readonly (readonly [code: string, place: string])[];

const placed = (problems: readonly Problem[]) => problems.map(({ code, path }) => [code, path.join(".")] as const);
const problemsOf = (outcome: { readonly ok: boolean; readonly problems?: readonly Problem[] }) =>
  placed(outcome.problems ?? []);

const pass = { gaps: { kind: "list", gaps: ["2"] }, firstThickness: "3", finalThickness: "2" } as const;
const passOf =
  (key: string): Asked =>
  (value) =>
    placed(passRequestProblems({ ...pass, [key]: value }));
const sheet = { mass: "1000", density: givenDensity("1.25"), width: "200" };
const cut = {
  dough: "1000",
  density: givenDensity("1.25"),
  thickness: "1.5",
  width: "200",
  cutter: { kind: "number", number: 20 },
  portion: "100",
} as const;
const cutOf =
  (key: string): Asked =>
  (value) =>
    placed(cutRequestProblems({ ...cut, [key]: value }));
const day = {
  serve: "12:15",
  loads: 1,
  machines: [{ name: "pot", count: 1 }],
  stages: [{ kind: "work", name: "boil", machine: "pot", minutes: 20 }],
} as const;
const dayOf =
  (key: string): Asked =>
  (value) =>
    placed(planRequestProblems({ ...day, [key]: Number(value) }));
const mix: Mix = { flour: { mass: "1000", temperature: "20" }, water: "350" };
const measured = { ...mix, waterTemperature: "20", doughTemperature: "25" };
const basket = {
  water: "20000",
  raw: "1000",
  rawTemperature: "10",
  rawSpecificHeat: waterSpecificHeat,
  power: "9",
} as const;
const rule = { dough: "26", flour: "18", room: "18" };
const water = { ...mix, wanted: "25", heat: { kind: "measured", perKilogram: "5" } } as const;
const boiled = { rawWater: "33", cookedWater: "65", solidsLoss: "5" };
const timed = { water: "20000", from: "20", to: "80", seconds: "600" };

/** Place, how a value is asked for, the values that are just kept and those just refused: the limits as the doc comments state them. */
const limits: readonly (readonly [place: string, ask: Asked, kept: readonly string[], refused: readonly string[]])[] = [
  ["firstThickness", passOf("firstThickness"), ["0.01", "500"], ["0", "500.01"]],
  ["finalThickness", passOf("finalThickness"), ["0.01", "100"], ["0", "100.01"]],
  ["largestReduction", passOf("largestReduction"), ["1", "90"], ["0.99", "90.01"]],
  ["springBack", passOf("springBack"), ["0.5", "3"], ["0.49", "3.01"]],
  ["finalTolerance", passOf("finalTolerance"), ["0", "5"], ["-0.01", "5.01"]],
  ["rollSpeed", passOf("rollSpeed"), ["0.01", "200"], ["0", "200.01"]],
  [
    "stands",
    (value) => placed(passRequestProblems({ ...pass, stands: Number(value) })),
    ["1", "20"],
    ["0", "21", "1.5"],
  ],
  ["sheet.mass", (mass) => placed(passRequestProblems({ ...pass, sheet: { ...sheet, mass } })), ["0.01"], ["0"]],
  [
    "sheet.width",
    (width) => placed(passRequestProblems({ ...pass, sheet: { ...sheet, width } })),
    ["0.01", "3000"],
    ["0", "3000.01"],
  ],
  [
    "gaps.gaps.0",
    (gap) => placed(passRequestProblems({ ...pass, gaps: { kind: "list", gaps: [gap] } })),
    ["0.01"],
    ["0"],
  ],
  ["dough", cutOf("dough"), ["0.001", "10000000"], ["0.0009", "10000000.01"]],
  ["thickness", cutOf("thickness"), ["0.01", "100"], ["0", "100.01"]],
  ["width", cutOf("width"), ["0.01", "3000"], ["0", "3000.01"]],
  ["workingWidth", cutOf("workingWidth"), ["0.01", "3000"], ["0", "3000.01"]],
  ["portion", cutOf("portion"), ["0.001"], ["0.0009"]],
  ["strandLength", cutOf("strandLength"), ["1"], ["0.99"]],
  ["losses", cutOf("losses"), ["0", "99.99"], ["-0.01", "100"]],
  ["edgeTrim", cutOf("edgeTrim"), ["0"], ["-0.01"]],
  ["endTrim", cutOf("endTrim"), ["0"], ["-0.01"]],
  ["longestSheet", cutOf("longestSheet"), ["0.01"], ["0"]],
  ["loads", dayOf("loads"), ["1", "200"], ["0", "201", "1.5"]],
  ["longestGap", dayOf("longestGap"), ["0", "10080"], ["-1", "10081", "0.5"]],
  ["longestHold", dayOf("longestHold"), ["0", "10080"], ["-1", "10081", "0.5"]],
  [
    "machines.0.count",
    (count) => placed(planRequestProblems({ ...day, machines: [{ name: "pot", count: Number(count) }] })),
    ["1", "100"],
    ["0", "101", "1.5"],
  ],
  [
    "stages.0.minutes",
    (minutes) => placed(planRequestProblems({ ...day, stages: [{ ...day.stages[0], minutes: Number(minutes) }] })),
    ["1", "10080"],
    ["0", "10081", "1.5"],
  ],
  ["flour.mass", (mass) => placed(mixProblems({ ...mix, flour: { ...mix.flour, mass } })), ["0.01"], ["0"]],
  [
    "flour.temperature",
    (temperature) => placed(mixProblems({ ...mix, flour: { ...mix.flour, temperature } })),
    ["-30", "100"],
    ["-30.01", "100.01"],
  ],
  [
    "flour.specificHeat",
    (value) => placed(mixProblems({ ...mix, flour: { ...mix.flour, specificHeat: { ...waterSpecificHeat, value } } })),
    ["0.01", "5"],
    ["0", "5.01"],
  ],
  ["water", (value) => placed(mixProblems({ ...mix, water: value })), ["0.01"], ["0"]],
  [
    "waterTemperature",
    (waterTemperature) => problemsOf(mixingHeat({ ...measured, waterTemperature })),
    ["0", "100"],
    ["-0.01", "100.01"],
  ],
  [
    "doughTemperature",
    (doughTemperature) => problemsOf(mixingHeat({ ...measured, doughTemperature })),
    ["0", "100"],
    ["-0.01", "100.01"],
  ],
  [
    "power",
    (power) => problemsOf(mixerWork({ power, minutes: "10", dough: "1000" })),
    ["0", "1000"],
    ["-0.01", "1000.01"],
  ],
  [
    "minutes",
    (minutes) => problemsOf(mixerWork({ power: "1", minutes, dough: "1000" })),
    ["0", "600"],
    ["-1", "600.01"],
  ],
  ["dough", (dough) => problemsOf(mixerWork({ power: "1", minutes: "10", dough })), ["0.01"], ["0"]],
  ["wanted", (wanted) => problemsOf(waterTemperature({ ...water, wanted })), ["0", "60"], ["-0.01", "60.01"]],
  ["tap", (tap) => problemsOf(waterTemperature({ ...water, tap })), ["0.01", "100"], ["0", "100.01"]],
  [
    "iceTemperature",
    (iceTemperature) => problemsOf(waterTemperature({ ...water, iceTemperature })),
    ["-40", "0"],
    ["-40.01", "0.01"],
  ],
  ["friction", (friction) => problemsOf(threeTemperatureWater(rule, friction)), ["-20", "60"], ["-20.01", "60.01"]],
  ["water", (value) => problemsOf(frictionFrom(rule, value)), ["0", "100"], ["-0.01", "100.01"]],
  ["room", (room) => problemsOf(frictionFrom({ ...rule, room }, "20")), ["-30", "60"], ["-30.01", "60.01"]],
  [
    "rawWater",
    (rawWater) => problemsOf(gainFromWater({ ...boiled, rawWater, cookedWater: "99" })),
    ["1", "99"],
    ["0.99", "99.01"],
  ],
  [
    "solidsLoss",
    (solidsLoss) => problemsOf(gainFromWater({ ...boiled, solidsLoss })),
    ["0", "99.99"],
    ["-0.01", "100"],
  ],
  ["raw", (raw) => problemsOf(gainFromWeights(raw, "880")), ["0.01"], ["0"]],
  ["cooked", (cooked) => problemsOf(gainFromWeights("500", cooked)), ["0.01"], ["0"]],
  ["perGram", (perGram) => problemsOf(potWater("1000", perGram)), ["2", "50"], ["1.99", "50.01"]],
  [
    "rawTemperature",
    (rawTemperature) => problemsOf(potRecovery({ ...basket, rawTemperature })),
    ["0", "69.99"],
    ["-0.01", "70"],
  ],
  ["power", (power) => problemsOf(potRecovery({ ...basket, power })), ["0.01", "1000"], ["0", "1000.01"]],
  [
    "boilingPoint",
    (boilingPoint) => problemsOf(potRecovery({ ...basket, boilingPoint })),
    ["70", "105"],
    ["69.99", "105.01"],
  ],
  ["from", (from) => problemsOf(powerIntoWater({ ...timed, from })), ["0", "79.99"], ["-0.01"]],
  ["to", (to) => problemsOf(powerIntoWater({ ...timed, to })), ["20.01", "100"], ["20", "100.01"]],
  ["seconds", (seconds) => problemsOf(powerIntoWater({ ...timed, seconds })), ["0.01"], ["0"]],
];

test.each(limits)("the limits of %s are where they are said to be", (place, ask, kept, refused) => {
  const refusedAt = (value: string) => ask(value).some(([code, at]) => code === "sheet.out-of-range" && at === place);
  expect(kept.filter(refusedAt)).toEqual([]);
  expect(refused.filter((value) => !refusedAt(value))).toEqual([]);
});

test("losses that were weighed are believed from nothing to 90 %", () => {
  for (const mixing of ["10 kg to 10 kg", "10 kg to 9.95 kg", "10 kg to 1 kg"]) {
    expect(codesOf(measuredLosses({ mixing }))).toEqual([]);
  }
  expect(codesOf(measuredLosses({ mixing: "10 kg to 0.99 kg" }))).toEqual(["measured.implausible"]);
});

test("noodles that come out of the pot drier than they went in are refused, and those as wet are not", () => {
  expect(codesOf(gainFromWater({ ...boiled, cookedWater: "32.9" }))).toEqual(["cook.dried"]);
  expect(codesOf(gainFromWater({ ...boiled, cookedWater: "33" }))).toEqual([]);
});
