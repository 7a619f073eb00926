import { type Report, told, type UnitSystem } from "@noodlewright/core";
import {
  calibrateReport,
  measuredCooking,
  measuredLosses,
  measuredMixing,
  measuredSheet,
  plainMixWater,
  temperatureReport,
} from "@noodlewright/core/sheet";
import { readKitchenFile } from "@noodlewright/core/spec";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planBatch } from "#core/batch/batch.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { dec, sum } from "#core/number/decimal.ts";
import { planReport } from "#core/report/plan-report.ts";
import { sheetReport } from "#core/report/sheet-report.ts";
import { planDay } from "#core/sheet/day/day-plan.ts";
import { planSheet } from "#core/sheet/sheet-plan.ts";
import { loadWater } from "#core/sheet/water/dough-water.ts";
import { always } from "../../always.ts";
import { listed, noteCodesOf } from "../formula/worked-out.ts";
import { answered, codesOf, toldOf } from "../told-of.ts";
import { linesOf, tablesOf } from "./parts.ts";
import { expectWhole } from "./sound.ts";

const { machines } = answered(
  readKitchenFile({
    machines: {
      "two-stand sheeter": {
        width: "240 mm",
        gap: { least: "0.4 mm", greatest: "10 mm" },
        speed: "6 m/min",
        stands: 2,
        cutters: [{ size: 20 }, { size: "3 mm", over: "200 mm" }],
        longestSheet: "7.5 m",
      },
      "hand crank": {
        width: "145 mm",
        dial: { "1": "4.8 mm", "2": "3.8 mm", "3": "3 mm", "4": "2.4 mm", "5": "1.9 mm", "6": "1.5 mm", "7": "1 mm" },
        cutters: [{ size: "2 mm" }],
        longestSheet: "900 mm",
      },
    },
  }),
);

const school = {
  name: "School noodle",
  flours: listed({ "bread flour": "85 %", "whole wheat flour": "rest" }),
  water: { added: "35 %" },
  alkali: listed({ "sodium carbonate": "0.6 %", "potassium carbonate": "0.4 %" }),
  salt: "1 %",
  ingredients: [{ name: "whole egg", amount: "4 %" }],
  dusting: { name: "cornstarch", amount: "1.5 %" },
  batch: { bowls: 320, rawWeight: "110 g" },
  losses: { mixing: "0.5 %", sheeting: "3 %", cutting: "1 %" },
  mixer: { largest: "10 kg", of: "flour" },
  sheet: {
    machine: "two-stand sheeter",
    thickness: "1.4 mm",
    cutter: 20,
    compounding: { gap: "6 mm", folds: 2 },
    springBack: 1.08,
    air: "3 %",
    edgeTrim: "2 mm",
    endTrim: "20 mm",
  },
  temperature: {
    dough: "25 °C",
    flour: "21 °C",
    room: "22 °C",
    tap: "24 °C",
    friction: "8 K",
    mixerPower: "0.75 kW",
    mixingTime: "10 min",
  },
  plan: {
    serve: "12:15",
    weigh: "10 min",
    mix: "15 min",
    rest: { least: "20 min", most: "60 min" },
    compound: "10 min",
    roll: "15 min",
    mature: { least: "30 min", most: "2 h" },
    cut: "12 min",
    boil: "25 min",
    pots: 2,
    longestStanding: "15 min",
    pot: { basket: "1.1 kg", water: "30 L", power: "12 kW" },
  },
};

function worked(input: unknown) {
  const { spec, formula } = answered(formulaOf(input));
  return { spec, formula, batch: answered(planBatch(spec, formula)) };
}

/** The sheets of a spec, with some of its keys changed. */
function sheetOf(input: object, sheet: object = {}) {
  const { spec, formula, batch } = worked({ ...input, sheet: { ...school.sheet, ...sheet } });
  return planSheet(spec, formula, batch, machines);
}

function dayOf(plan: object | undefined, more: object = {}) {
  const { spec, formula, batch } = worked({ ...school, ...more, plan });
  return planDay(spec, formula, batch);
}

function reportOfSheet(input: unknown, units: UnitSystem = "metric"): Report {
  const { spec, formula, batch } = worked(input);
  return sheetReport(formula, answered(planSheet(spec, formula, batch, machines)), { notes: [], units });
}

function reportOfDay(input: unknown, units: UnitSystem = "metric"): Report {
  const { spec, formula, batch } = worked(input);
  const sheet = answered(planSheet(spec, formula, batch, machines));
  return planReport(formula, batch, answered(planDay(spec, formula, batch, sheet)), { notes: [], units });
}

function reportOfWater(input: unknown, units: UnitSystem = "metric"): Report {
  const { spec, batch } = worked(input);
  return temperatureReport("water", answered(loadWater(spec, batch)), [], units);
}

const strip = { length: "1 m", width: "150 mm", mass: "278 g", gap: "1.35 mm" };
const plainMix = { flour: "10 kg", water: "3.5 kg" };
const weighed = { mixing: "10 kg to 9.95 kg", cutting: "9.6 kg + 90 g to 9.58 kg" };
const evening = {
  ...school,
  batch: { bowls: 8, rawWeight: "130 g" },
  sheet: { machine: "hand crank", thickness: "1.5 mm", cutter: "2 mm", start: "6 mm", strandLength: "280 mm" },
};

function onLine(speed: string | readonly string[]) {
  const line = {
    width: "240 mm",
    gap: { least: "0.4 mm", greatest: "10 mm" },
    speed,
    stands: 4,
    cutters: [{ size: 20 }],
  };
  return { ...school, machines: { line }, sheet: { ...school.sheet, machine: "line" } };
}

const reports: Readonly<Record<string, () => Report>> = {
  "sheet with compounding": () => reportOfSheet(school),
  "sheet that gives too few": () => reportOfSheet({ ...school, losses: {} }),
  "sheet in US units": () => reportOfSheet(school, "us"),
  "sheet on a line with a speed for each stand": () =>
    reportOfSheet(onLine(["2.5 m/min", "3.7 m/min", "5.4 m/min", "7 m/min"])),
  "sheet on a dial": () => reportOfSheet(evening),
  "sheet of measured density": () => reportOfSheet({ ...school, sheet: { ...school.sheet, density: "1.2 g/mL" } }),
  "sheet by a list of gaps": () =>
    reportOfSheet({ ...school, sheet: { ...school.sheet, gaps: ["4 mm", "2.7 mm", "1.9 mm", "1.3 mm"] } }),
  day: () => reportOfDay(school),
  "day in US units": () => reportOfDay(school, "us"),
  "water with ice": () => reportOfWater(school),
  "water warmer than the tap": () =>
    reportOfWater({ ...school, temperature: { ...school.temperature, dough: "45 °C" } }, "us"),
  "water by the measured heat": () =>
    reportOfWater({ ...school, temperature: { ...school.temperature, mixingHeat: "12 kJ/kg" } }),
  "water of a plain mix": () => {
    const temperature = { dough: "27 °C", flour: "22 °C", tap: "20 °C" };
    return temperatureReport("mix", answered(plainMixWater({ ...plainMix, temperature })), []);
  },
  "density and spring-back": () =>
    calibrateReport("sheet", answered(measuredSheet({ ...strip, thickness: "1.5 mm" })), []),
  "thickness and spring-back": () =>
    calibrateReport("sheet", answered(measuredSheet({ ...strip, density: "1.24 g/mL" })), [], "us"),
  losses: () => calibrateReport("losses", answered(measuredLosses(weighed)), []),
  mixing: () => {
    const mixed = { ...plainMix, flourAt: "19 °C", waterAt: "14 °C", doughAt: "25 °C", roomAt: "20 °C" };
    return calibrateReport("mixing", answered(measuredMixing(mixed)), []);
  },
  cooking: () => calibrateReport("cooking", answered(measuredCooking({ raw: "500 g", cooked: "880 g" })), []),
  "cooking by the water": () =>
    calibrateReport("cooking", answered(measuredCooking({ rawWater: "33 %", cookedWater: "65 %" })), []),
};

it.each(Object.entries(reports))("the report of %s is whole", (_, build) => {
  const report = build();
  expectWhole(report);
  expect(report.figures).not.toEqual({});
});

describe("what the spec states against what can be", () => {
  const codesOfSheet = (sheet: object) => noteCodesOf(sheetOf(school, sheet));

  it("a density above that of the dough without air, and a sheet thinner than its gap", () => {
    expect(codesOfSheet({ density: "1.24 g/mL" })).not.toContain("sheet.denser-than-solid");
    expect(codesOfSheet({ density: "1.34 g/mL" })).toContain("sheet.denser-than-solid");
    expect(codesOfSheet({ springBack: 0.8 })).toContain("sheet.thinner-than-gap");
  });

  it("a slitter in line, compounding on rolls of their own, and a rest of the sheets before they are rolled", () => {
    const plan = {
      ...school.plan,
      cut: "0 min",
      compounders: 1,
      relax: { least: "20 min", most: "40 min" },
      longestStanding: undefined,
    };
    const { time } = answered(dayOf(plan));
    const names = ["weigh", "mix", "rest", "compound", "relax", "roll", "mature", "boil"];
    expect(time.loads[0]?.stages.map(({ name }) => name)).toEqual(names);
    expect(time.paces.map(({ machine }) => machine)).toContain("compounder");
    // A mixer, the rolls that compound and those that roll each take a load in 15 min at most, the two pots in 12.5.
    expect(time.paces[0]?.minutesPerLoad.value).toBe("15");
  });

  it("a gap of the rolls that compound beside those that roll", () => {
    const line = (compoundingGap?: string) => ({
      width: "240 mm",
      line: { first: "4 mm", second: "2.7 mm", third: "1.9 mm", fourth: "1.4 mm" },
      stands: 4,
      cutters: [{ size: 20 }],
      ...(compoundingGap !== undefined && { compoundingGap }),
    });
    const sheetOn = (compoundingGap?: string) => {
      const sheet = { machine: "line", thickness: "1.4 mm", cutter: 20, compounding: { gap: "6 mm", folds: 1 } };
      const { spec, formula, batch } = worked({ ...school, machines: { line: line(compoundingGap) }, sheet });
      return planSheet(spec, formula, batch);
    };
    expect(answered(sheetOn("6 mm")).schedule.passes.map(({ gap }) => gap.value)).toEqual([
      "6",
      "6",
      "4",
      "2.7",
      "1.9",
      "1.4",
    ]);
    expect(codesOf(sheetOn())).toEqual(["compounding.gap-not-there"]);
  });

  it("a line that rolls in the time planned is not warned of", () => {
    const codesOfDay = (roll: string, compound: string) => {
      const spec = onLine("8 m/min");
      const { spec: read, formula, batch } = worked({ ...spec, plan: { ...spec.plan, compound, roll } });
      const day = planDay(read, formula, batch, answered(planSheet(read, formula, batch, machines)));
      return noteCodesOf(day);
    };
    // 29 m of sheet at 8 m/min take 219 s, and three passes of compounding 47 s each.
    // Neither may lean on the time of the other.
    expect(codesOfDay("4 min", "3 min")).not.toContain("plan.rolling-too-short");
    expect(codesOfDay("3 min", "10 min")).toContain("plan.rolling-too-short");
    expect(codesOfDay("10 min", "2 min")).toContain("plan.rolling-too-short");
  });
});

/** The masses of a column of the account, as printed and exactly, the dough last. */
function accountColumn(report: Report, column: number): readonly (readonly [shown: string, exact: string])[] {
  const account = tablesOf(report).find(({ id }) => id === "account");
  return (account?.rows ?? []).map(({ cells }) => [
    (cells[column]?.text ?? "").replaceAll(/\s/gu, "").replace("−", "-"),
    cells[column]?.value ?? "",
  ]);
}

describe("what becomes of the dough", () => {
  it("adds up exactly, and as printed, whatever the sheet", () => {
    always(
      40,
      [
        fc.integer({ min: 30, max: 400 }),
        fc.integer({ min: 80, max: 180 }),
        fc.integer({ min: 10, max: 24 }),
        fc.integer({ min: 0, max: 60 }),
      ],
      (bowls, grams, tenths, trim) => {
        const report = reportOfSheet({
          ...school,
          batch: { bowls, rawWeight: `${grams} g` },
          sheet: {
            ...school.sheet,
            thickness: `${tenths / 10} mm`,
            edgeTrim: `${trim / 10} mm`,
            endTrim: `${trim} mm`,
          },
        });
        const columns = tablesOf(report).find(({ id }) => id === "account")?.columns.length ?? 0;
        expect(columns).toBeGreaterThan(1);
        for (let column = 1; column < columns; column += 1) {
          const masses = accountColumn(report, column);
          const parts = masses.slice(0, -1);
          const [shown = "", exact = ""] = masses.at(-1) ?? [];
          expect(sum(parts.map(([, value]) => dec(value))).toFixed()).toBe(dec(exact).toFixed());
          expect(sum(parts.map(([text]) => dec(text))).toFixed(1)).toBe(shown);
        }
      },
    );
  });
});

describe("the sheet of a spec", () => {
  it("points at the spec and not at the request", () => {
    expect(toldOf(sheetOf(school, { thickness: "7 mm" })).map(({ path }) => path)).toEqual([["sheet", "thickness"]]);
  });

  it("tells of a portion that is left over at the ends of the sheets, and the strands that use them up", () => {
    // 461 g at 1.24 g/mL, 145 mm wide and 1.3 mm thick is 1972 mm of sheet: four of 493 mm with one strand of 300 mm each
    const crank = { width: "145 mm", dial: { "1": "1.95 mm", "2": "1.3 mm" }, cutters: [{ size: "2 mm" }] };
    const cutTo = (strandLength: string) => {
      const sheet = { machine: "crank", thickness: "1.3 mm", cutter: "2 mm", start: "2.9 mm", density: "1.24 g/mL" };
      const { spec, formula, batch } = worked({
        ...school,
        machines: { crank: { ...crank, longestSheet: "600 mm" } },
        batch: { dough: "461 g" },
        losses: {},
        sheet: { ...sheet, portion: "130 g", strandLength },
      });
      return planSheet(spec, formula, batch);
    };
    const wasteful = cutTo("300 mm");
    const text = wasteful.ok ? wasteful.notes.map(told).join() : "";
    expect(text).toContain("enough for 1 more portion: the last 193 mm of each sheet");
    expect(text).toContain("Strands of 246 mm or 493 mm");
    const better = cutTo("246 mm");
    expect(answered(better).strands?.portions.value).toBe("3");
    expect(noteCodesOf(better)).not.toContain("sheet.much-left-over");
    const long = cutTo("550 mm");
    expect(toldOf(long).map(({ advice }) => advice)).toEqual([
      "write a `strandLength` of at most 493 mm, or roll longer sheets or wider ones",
    ]);
  });

  it("tells that the portions fall short, and says by how much the losses are off", () => {
    const { spec, formula, batch } = worked({ ...school, losses: {}, sheet: { ...school.sheet, edgeTrim: "20 mm" } });
    const outcome = planSheet(spec, formula, batch, machines);
    const plan = answered(outcome);
    expect(Number(plan.strands?.wanted?.spare.value)).toBeLessThan(0);
    const notes = outcome.ok ? outcome.notes : [];
    expect(notes.map(({ code }) => code)).toContain("sheet.portions-short");
    const { "batch.portions-short": short, ...others } = sheetReport(formula, plan, { notes }).figures;
    expect(short).toMatchObject({
      label: "portions short of the bowls wanted",
      value: plan.strands?.wanted?.spare.value.replace("-", ""),
    });
    expect(others["batch.portions-spare"]?.value).toBe(plan.strands?.wanted?.spare.value);
  });

  it("calls what only ice reaches the temperature without ice", () => {
    const labelAt = (dough: string) =>
      reportOfWater({ ...school, temperature: { ...school.temperature, dough } }).figures["water.temperature"]?.label;
    expect(labelAt("25 °C")).toBe("temperature the water would need without ice");
    expect(labelAt("45 °C")).toBe("water temperature");
  });

  it("says what it assumed where a material has no fat and fibre, and asks for no more where the density is measured", () => {
    const bare = { name: "own flour", amount: "100 %", figures: { moisture: "13.5 %", protein: "12 %" } };
    const notesOf = (sheet: object) => noteCodesOf(sheetOf({ ...school, flours: [bare] }, sheet));
    expect(notesOf({})).toEqual(expect.arrayContaining(["food.not-stated", "dough.density-estimate"]));
    expect(notesOf({ density: "1.22 g/mL" })).not.toContain("food.not-stated");
  });

  it("cuts the sheet as thick as the dial gives it, not as it was asked for", () => {
    const { spec, formula, batch } = worked({ ...evening, sheet: { ...evening.sheet, thickness: "1.45 mm" } });
    const plan = answered(planSheet(spec, formula, batch, machines));
    expect(plan.schedule.passes.at(-1)?.thickness.value).toBe("1.5");
    // 2 mm × 1.5 mm × density = g for a metre.
    expect(Number(plan.strands?.cut.massPerMetre.value)).toBeCloseTo(2 * 1.5 * Number(plan.density.value), 9);
  });
});

describe("the day of a spec", () => {
  it.each([
    [school.temperature, "22", "the spec"],
    [undefined, "20", "the usual value"],
  ])("says where the temperature of the noodles is from: %#", (temperature, value, by) => {
    const { graph } = answered(dayOf(school.plan, { temperature }));
    const own = graph["pot.raw-temperature"];
    expect({ value: own?.value, working: own?.working }).toEqual({ value, working: { kind: "given", by } });
  });

  it("warns where the rolls alone run longer than the time planned for them", () => {
    const { spec, formula, batch } = worked({ ...school, plan: { ...school.plan, compound: "1 min", roll: "2 min" } });
    const sheet = answered(planSheet(spec, formula, batch, machines));
    expect(noteCodesOf(planDay(spec, formula, batch, sheet))).toContain("plan.rolling-too-short");
  });
});

describe("the lines of a day", () => {
  it("say of a single load neither what sets the pace nor that it does not wait", () => {
    const linesFor = (bowls: number) => {
      const report = reportOfDay({ ...school, batch: { bowls, rawWeight: "110 g" } });
      return linesOf(report, report.sections[0]?.id);
    };
    expect(linesFor(40)).toEqual([expect.stringMatching(/^Start at .*, serve at 12:15: 1 load\.$/u)]);
    expect(linesFor(320)).toHaveLength(3);
  });
});

describe("the water of a spec", () => {
  it("comes back to the mixing heat that was measured: the inverse of forward is the identity", () => {
    always(60, [fc.integer({ min: 0, max: 300 }), fc.integer({ min: 10, max: 24 })], (tenths, flour) => {
      const heat = (tenths / 10).toFixed(1);
      const water = plainMixWater({
        ...plainMix,
        temperature: { dough: "27 °C", flour: `${flour} °C`, mixingHeat: `${heat} kJ/kg` },
      });
      if (!water.ok) return;
      const waterAt = `${dec(water.value.plan.temperature.value).toFixed(20)} °C`;
      const back = measuredMixing({ ...plainMix, flourAt: `${flour} °C`, waterAt, doughAt: "27 °C" });
      expect(Number(answered(back).results[0]?.value)).toBeCloseTo(tenths / 10, 12);
    });
  });
});

describe("the kitchen's own figures", () => {
  it("tell of noodles that weigh less cooked than raw", () => {
    const notes = (cooked: string) => noteCodesOf(measuredCooking({ raw: "500 g", cooked }));
    expect([notes("400 g"), notes("500 g")]).toEqual([["cook.lighter"], []]);
  });

  it("come as YAML that the spec takes", () => {
    const lines = [
      ...answered(measuredSheet({ ...strip, thickness: "1.5 mm" })).lines,
      ...answered(measuredLosses(weighed)).lines,
    ];
    expect(lines).toEqual([
      "sheet: { density: 1.236 g/mL, springBack: 1.111 }",
      "losses: { mixing: 0.50 %, cutting: 1.14 % }",
    ]);
  });

  it("say nothing for the spec where a mix came out colder than can be", () => {
    const outcome = measuredMixing({ ...plainMix, flourAt: "19 °C", waterAt: "40 °C", doughAt: "15 °C" });
    expect(answered(outcome).lines).toEqual([]);
    expect(noteCodesOf(outcome)).toContain("measured.cold-mix");
  });
});
