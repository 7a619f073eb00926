import type { Outcome, Problem } from "@noodlewright/core";
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
import { problemsOf } from "#core/figure/problem.ts";
import { type PlanRequest, planRequestProblems } from "#core/sheet/day/plan-request.ts";
import { type PassRequest, passRequestProblems } from "#core/sheet/passes/pass-request.ts";
import { cutRequestProblems } from "#core/sheet/strands/cut-request.ts";
import { mixProblems } from "#core/sheet/water/heat-balance.ts";
import { codesOf } from "../told-of.ts";

type Asked = (value: string) => readonly (readonly [code: string, place: string])[];

const placed = (problems: readonly Problem[]) => problems.map(({ code, path }) => [code, path.join(".")] as const);

/** Asks with another value at a key of a request; one that has to be a number there is one. */
const asking =
  <Request extends object>(request: Request, work: (asked: Request) => readonly Problem[] | Outcome<unknown>) =>
  (key: string, read: (value: string) => unknown = String): Asked =>
  (value) => {
    const found = work({ ...request, [key]: read(value) });
    return placed("ok" in found ? problemsOf(found) : found);
  };

const pass: PassRequest = { gaps: { kind: "list", gaps: ["2"] }, firstThickness: "3", finalThickness: "2" };
const passOf = asking(pass, passRequestProblems);
const sheet = { mass: "1000", density: givenDensity("1.25"), width: "200" };
const sheetOf = asking(sheet, (asked) => passRequestProblems({ ...pass, sheet: asked }));
const cutter = { kind: "number", number: 20 } as const;
const cut = { dough: "1000", density: givenDensity("1.25"), thickness: "1.5", width: "200", cutter, portion: "100" };
const cutOf = asking(cut, cutRequestProblems);
const boil = { kind: "work", name: "boil", machine: "pot", minutes: 20 } as const;
const day: PlanRequest = { serve: "12:15", loads: 1, machines: [{ name: "pot", count: 1 }], stages: [boil] };
const dayOf = asking(day, planRequestProblems);
const mix: Mix = { flour: { mass: "1000", temperature: "20" }, water: "350" };
const mixOf = asking(mix, mixProblems);
const flourOf = asking(mix.flour, (flour) => mixProblems({ ...mix, flour }));
const measuredOf = asking({ ...mix, waterTemperature: "20", doughTemperature: "25" }, mixingHeat);
const workOf = asking({ power: "1", minutes: "10", dough: "1000" }, mixerWork);
const waterOf = asking(
  { ...mix, wanted: "25", heat: { kind: "measured", perKilogram: "5" } } as const,
  waterTemperature,
);
const rule = { dough: "26", flour: "18", room: "18" };
const boiled = { rawWater: "33", cookedWater: "65", solidsLoss: "5" };
const basket = { water: "20000", raw: "1000", rawTemperature: "10", rawSpecificHeat: waterSpecificHeat, power: "9" };
const basketOf = asking(basket, potRecovery);
const timedOf = asking({ water: "20000", from: "20", to: "80", seconds: "600" }, powerIntoWater);
const refusals = (outcome: Outcome<unknown>) => placed(problemsOf(outcome));
const asFigure = (value: string) => ({ ...waterSpecificHeat, value });

/** Place, how a value is asked for, the values that are just kept and those just refused: the limits as the doc comments state them. */
const limits: readonly (readonly [place: string, ask: Asked, kept: readonly string[], refused: readonly string[]])[] = [
  ["firstThickness", passOf("firstThickness"), ["0.01", "500"], ["0", "500.01"]],
  ["finalThickness", passOf("finalThickness"), ["0.01", "100"], ["0", "100.01"]],
  ["largestReduction", passOf("largestReduction"), ["1", "90"], ["0.99", "90.01"]],
  ["springBack", passOf("springBack"), ["0.5", "3"], ["0.49", "3.01"]],
  ["finalTolerance", passOf("finalTolerance"), ["0", "5"], ["-0.01", "5.01"]],
  ["rollSpeed", passOf("rollSpeed"), ["0.01", "200"], ["0", "200.01"]],
  ["stands", passOf("stands", Number), ["1", "20"], ["0", "21", "1.5"]],
  ["sheet.mass", sheetOf("mass"), ["0.01"], ["0"]],
  ["sheet.width", sheetOf("width"), ["0.01", "3000"], ["0", "3000.01"]],
  ["gaps.gaps.0", passOf("gaps", (gap) => ({ kind: "list", gaps: [gap] })), ["0.01"], ["0"]],
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
  ["loads", dayOf("loads", Number), ["1", "200"], ["0", "201", "1.5"]],
  ["longestGap", dayOf("longestGap", Number), ["0", "10080"], ["-1", "10081", "0.5"]],
  ["longestHold", dayOf("longestHold", Number), ["0", "10080"], ["-1", "10081", "0.5"]],
  [
    "machines.0.count",
    dayOf("machines", (count) => [{ name: "pot", count: Number(count) }]),
    ["1", "100"],
    ["0", "101", "1.5"],
  ],
  [
    "stages.0.minutes",
    dayOf("stages", (minutes) => [{ ...boil, minutes: Number(minutes) }]),
    ["1", "10080"],
    ["0", "10081", "1.5"],
  ],
  ["flour.mass", flourOf("mass"), ["0.01"], ["0"]],
  ["flour.temperature", flourOf("temperature"), ["-30", "100"], ["-30.01", "100.01"]],
  ["flour.specificHeat", flourOf("specificHeat", asFigure), ["0.01", "5"], ["0", "5.01"]],
  ["water", mixOf("water"), ["0.01"], ["0"]],
  ["waterTemperature", measuredOf("waterTemperature"), ["0", "100"], ["-0.01", "100.01"]],
  ["doughTemperature", measuredOf("doughTemperature"), ["0", "100"], ["-0.01", "100.01"]],
  ["power", workOf("power"), ["0", "1000"], ["-0.01", "1000.01"]],
  ["minutes", workOf("minutes"), ["0", "600"], ["-1", "600.01"]],
  ["dough", workOf("dough"), ["0.01"], ["0"]],
  ["wanted", waterOf("wanted"), ["0", "60"], ["-0.01", "60.01"]],
  ["tap", waterOf("tap"), ["0.01", "100"], ["0", "100.01"]],
  ["iceTemperature", waterOf("iceTemperature"), ["-40", "0"], ["-40.01", "0.01"]],
  ["friction", (value) => refusals(threeTemperatureWater(rule, value)), ["-20", "60"], ["-20.01", "60.01"]],
  ["water", (value) => refusals(frictionFrom(rule, value)), ["0", "100"], ["-0.01", "100.01"]],
  ["room", asking(rule, (asked) => frictionFrom(asked, "20"))("room"), ["-30", "60"], ["-30.01", "60.01"]],
  ["rawWater", asking({ ...boiled, cookedWater: "99" }, gainFromWater)("rawWater"), ["1", "99"], ["0.99", "99.01"]],
  ["solidsLoss", asking(boiled, gainFromWater)("solidsLoss"), ["0", "99.99"], ["-0.01", "100"]],
  ["raw", (raw) => refusals(gainFromWeights(raw, "880")), ["0.01"], ["0"]],
  ["cooked", (cooked) => refusals(gainFromWeights("500", cooked)), ["0.01"], ["0"]],
  ["perGram", (perGram) => refusals(potWater("1000", perGram)), ["2", "50"], ["1.99", "50.01"]],
  ["rawTemperature", basketOf("rawTemperature"), ["0", "69.99"], ["-0.01", "70"]],
  ["power", basketOf("power"), ["0.01", "1000"], ["0", "1000.01"]],
  ["boilingPoint", basketOf("boilingPoint"), ["70", "105"], ["69.99", "105.01"]],
  ["from", timedOf("from"), ["0", "79.99"], ["-0.01"]],
  ["to", timedOf("to"), ["20.01", "100"], ["20", "100.01"]],
  ["seconds", timedOf("seconds"), ["0.01"], ["0"]],
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
