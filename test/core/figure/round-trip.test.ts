import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { planBatch } from "#core/batch/batch.ts";
import { costOf } from "#core/batch/cost.ts";
import { nutritionOf } from "#core/batch/nutrition.ts";
import { designBlend } from "#core/blend/spec-blend.ts";
import { correctForLot, replaceFlour } from "#core/blend/spec-substitute.ts";
import { usualHold } from "#core/blend/substitute-question.ts";
import { card } from "#core/card/card.ts";
import { batchTolerance } from "#core/explore/spec-tolerance.ts";
import { formulaTrial } from "#core/explore/spec-trial.ts";
import { weighTrial } from "#core/explore/trial-weights.ts";
import { feedsOf, type Graph } from "#core/figure/graph.ts";
import type { Outcome } from "#core/figure/problem.ts";
import { recalculated } from "#core/figure/recalculate.ts";
import { writtenWorking } from "#core/figure/written-working.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { batchReport } from "#core/report/batch-report.ts";
import { blendSearchReport } from "#core/report/blend-search-report.ts";
import { costReport } from "#core/report/cost-report.ts";
import { formulaReport } from "#core/report/formula-report.ts";
import { nutritionReport } from "#core/report/nutrition-report.ts";
import { planReport } from "#core/report/plan-report.ts";
import type { Report } from "#core/report/schema.ts";
import { sheetReport } from "#core/report/sheet-report.ts";
import { substituteReport } from "#core/report/substitute-report.ts";
import { temperatureReport } from "#core/report/temperature-report.ts";
import { toleranceReport } from "#core/report/tolerance-report.ts";
import { trialReport } from "#core/report/trial-report.ts";
import { planDay } from "#core/sheet/day/day-plan.ts";
import { planSheet } from "#core/sheet/sheet-plan.ts";
import { loadWater } from "#core/sheet/water/dough-water.ts";
import { readKitchenFile } from "#core/spec/read-spec.ts";
import { figuresIn } from "../report/figures-in.ts";
import { expectOneFigureAnId } from "../report/sound.ts";
import { answered } from "../sheet/answered.ts";

const folder = new URL("../../../examples/", import.meta.url);
const read = (file: string): unknown => parse(readFileSync(new URL(file, folder), "utf8"));
const kitchen = answered(readKitchenFile(read("harbour-store.yaml")));

/** A result, and the report that its answer and those it rests on give as they are, or as a copy of them. */
interface Made {
  readonly name: string;
  readonly result: object;
  readonly report: (copy: Copy) => Report;
}

type Copy = <T>(value: T) => T;

/** Each result that an example has an answer for. */
function resultsOf(file: string): readonly Made[] {
  const outcome = formulaOf(read(file), kitchen.materials);
  if (!outcome.ok) return [];
  const { spec, formula } = outcome.value;
  const notes = outcome.notes;
  const batch = answered(planBatch(spec, formula));
  const made: Made[] = [
    { name: "formula", result: formula, report: (copy) => formulaReport(copy(formula), copy(notes)) },
    { name: "batch", result: batch, report: (copy) => batchReport(copy(formula), copy(batch), copy(notes)) },
  ];
  const add = <T extends object>(name: string, one: Outcome<T>, report: (value: T, copy: Copy) => Report): void => {
    if (one.ok) made.push({ name, result: one.value, report: (copy) => report(copy(one.value), copy) });
  };
  add("cost", costOf(spec, formula, batch), (cost, copy) => costReport(copy(formula), copy(batch), cost, []));
  for (const rules of ["EU", "US", "JP"] as const)
    add(`nutrition ${rules}`, nutritionOf(spec, formula, { rules }), (one, copy) =>
      nutritionReport(copy(formula), one, []),
    );
  const sheet = planSheet(spec, formula, batch, kitchen.machines);
  add("sheet", sheet, (one, copy) => sheetReport(copy(formula), one, []));
  add("plan", planDay(spec, formula, batch, sheet.ok ? sheet.value : undefined), (day, copy) =>
    planReport(copy(formula), copy(batch), day, []),
  );
  if (spec.temperature !== undefined)
    add("water", loadWater(spec, batch), (one) => temperatureReport("Water for one load", one, []));
  add("tolerance", batchTolerance(spec, batch, { draws: 100 }), (one, copy) => toleranceReport(copy(formula), one, []));
  add("blend", designBlend(spec, formula, kitchen.materials), (one, copy) => blendSearchReport(copy(formula), one, []));
  add("lot", correctForLot(spec, formula, usualHold, kitchen.materials), (one, copy) =>
    substituteReport("lot", "lot", copy(formula), one, [], copy(spec.lot)),
  );
  const missing = spec.flours.at(-1)?.name ?? "";
  add("replace", replaceFlour(spec, formula, { missing, hold: usualHold }, kitchen.materials), (one, copy) =>
    substituteReport("replace", "replace", copy(formula), one, []),
  );
  const trial = answered(formulaTrial(formula, {}));
  made.push({ name: "trial", result: trial, report: (copy) => trialReport(copy(formula), copy(trial), []) });
  add("trial weights", weighTrial(spec, formula, trial, false), (weights, copy) =>
    trialReport(copy(formula), copy(trial), [], "metric", weights),
  );
  return made;
}

const plainId = /^[a-z0-9]+(?:-[a-z0-9]+)*$/u;
const chemicalFormula = /^(?:[A-Z][a-z]?\d*|\((?:[A-Z][a-z]?\d*)+\)\d*)+$/u;

const files = readdirSync(folder).filter((file) => file.endsWith(".yaml") && file !== "harbour-store.yaml");
const all = files.flatMap((file) => resultsOf(file).map((made) => ({ ...made, file })));
const asIs: Copy = (value) => value;
const throughJson: Copy = <T>(value: T): T => (value === undefined ? value : (JSON.parse(JSON.stringify(value)) as T));

/** The graph of a published result; that of a result whose figures hold what they rest on themselves is made here. */
function graphIn(result: object): Graph | undefined {
  return "graph" in result ? (result.graph as Graph) : undefined;
}

/** Fails where a graph lacks a figure that one of its figures names, or gives other values when it is worked out again. */
function expectComplete(graph: Graph): void {
  const figures = Object.values(graph);
  expect(figures.flatMap(feedsOf).filter((id) => !Object.hasOwn(graph, id))).toEqual([]);
  const leaves = figures.filter(({ working }) => working.kind !== "formula");
  const again = recalculated(graph, Object.fromEntries(leaves.map(({ id, value }) => [id, value])));
  const off = figures.filter(({ id, value }) => again[id]?.value !== value);
  expect(off.map(({ id, value }) => `${id}: ${value}, again ${again[id]?.value}`)).toEqual([]);
}

/** The card of an example with the water of its loads, made from copies of what it shows. */
function cardOf(file: string, copy: Copy): unknown {
  const { spec, formula } = answered(formulaOf(read(file), kitchen.materials));
  const batch = answered(planBatch(spec, formula));
  const water = spec.temperature && answered(loadWater(spec, batch));
  return card(spec, copy(formula), copy(batch), {
    about: "",
    date: "",
    files: [],
    said: "",
    loads: [],
    units: "metric",
    ...(water && { water: copy(water) }),
    notes: [],
  });
}

it.each(["school-noodle.yaml", "evening-class.yaml", "pin-and-sticks.yaml"])(
  "%s gives the same card from copies",
  (file) => {
    expect(cardOf(file, throughJson)).toEqual(cardOf(file, asIs));
  },
);

it("is tried on each kind of result", () => {
  const names = new Set(all.map(({ name }) => name));
  const kinds = ["formula", "batch", "cost", "nutrition EU", "nutrition US", "nutrition JP", "sheet", "plan", "water"];
  const questions = ["tolerance", "blend", "lot", "replace", "trial", "trial weights"];
  expect([...names].toSorted()).toEqual([...kinds, ...questions].toSorted());
});

it("tries blends with the graph of their figures", () => {
  const blends = all.filter(({ name }) => ["blend", "lot", "replace"].includes(name));
  expect(blends.filter(({ result }) => graphIn(result) === undefined)).toEqual([]);
});

it("names no figure of a blend by what somebody may write: words of a-z, numbers, and chemical formulas", () => {
  const blends = all.filter(({ name }) => ["blend", "lot", "replace"].includes(name));
  const ids = blends.flatMap(({ result }) => Object.keys(graphIn(result) ?? {}));
  const isPlain = (part: string): boolean => plainId.test(part) || chemicalFormula.test(part);
  expect([...new Set(ids)].filter((id) => !id.split(".").every(isPlain))).toEqual([]);
});

describe.each(all)("$file, $name", ({ result, report }) => {
  const graph = graphIn(result);
  const shown = report(asIs);

  it("gives the same report after JSON and after a structured clone", () => {
    expect(report(throughJson)).toEqual(shown);
    expect(report(structuredClone)).toEqual(shown);
    expect(throughJson(shown)).toEqual(shown);
  });

  it("explains every figure", () => {
    const figures = figuresIn(result);
    expect(figures.length).toBeGreaterThan(0);
    for (const figure of figures) expect(() => writtenWorking(figure, graph), figure.id).not.toThrow();
    if (graph) expectOneFigureAnId(figures);
    const inReport = figuresIn(shown.sections);
    expect(inReport.filter(({ id }) => !Object.hasOwn(shown.figures, id))).toEqual([]);
    for (const figure of inReport) expect(() => writtenWorking(figure, shown.figures), figure.id).not.toThrow();
  });

  it("holds all that a figure rests on, and is worked out again, exactly", () => {
    if (graph) expectComplete(graph);
    expectComplete(shown.figures);
  });
});
