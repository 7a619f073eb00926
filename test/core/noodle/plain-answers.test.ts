import { readdirSync, readFileSync } from "node:fs";
import * as core from "@noodlewright/core";
import { convert, correct, dilute, makeUp, pure, severalStock } from "@noodlewright/core/chemistry";
import { searchBlend } from "@noodlewright/core/explore";
import { type Graph, recalculated } from "@noodlewright/core/figure";
import { readKitchenFile } from "@noodlewright/core/spec";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { feedsOf } from "#core/figure/figure.ts";
import { unexplained } from "../figure/explained.ts";
import { figuresIn } from "../report/figures-in.ts";

type Asked = core.Answer<object> | core.Outcome<object>;
type Question = Extract<keyof typeof core, `ask${string}`>;

/** Every question of the door, as it may be asked of any noodle. */
const asks: Readonly<Record<Question, (noodle: core.Noodle) => Asked>> = {
  askBatch: core.askBatch,
  askBlend: core.askBlend,
  askCard: (noodle) => core.askCard(noodle, { date: "2026-11-25" }),
  askCompare: (noodle) => core.askCompare(["as it is", "again"].map((name) => ({ name, noodle }))),
  askCost: core.askCost,
  askDay: core.askDay,
  askFlourReplacement: (noodle) => core.askFlourReplacement(noodle, { missing: noodle.spec.flours.at(-1)?.name ?? "" }),
  askFormula: core.askFormula,
  askIngredientReplacement: (noodle) =>
    core.askIngredientReplacement(noodle, { missing: "whole egg", by: "dried whole egg" }),
  askLot: core.askLot,
  askMend: (noodle) => core.askMend(noodle, { weighed: [{ name: "tap water", amount: "3 kg" }, ...drySalts(noodle)] }),
  askNutrition: core.askNutrition,
  askSettle: core.askSettle,
  askSheet: core.askSheet,
  askStyle: core.askStyle,
  askTolerance: (noodle) => core.askTolerance(noodle, { draws: 100 }),
  askTrial: core.askTrial,
  askWater: core.askWater,
  askWorkbook: core.askWorkbook,
};

const folder = new URL("../../../examples/", import.meta.url);
const read = (file: string): unknown => parse(readFileSync(new URL(file, folder), "utf8"));
const kitchen = readKitchenFile(read("harbour-store.yaml"));
const kitchens = kitchen.ok ? [kitchen.value] : [];

/** A noodle of a kitchen whose names are written to mislead. */
/** The salts of a noodle, none of which is in: a list with a stock solution is mended only where they are weighed dry. */
function drySalts({ formula }: core.Noodle) {
  const salts = formula.lines.filter(({ role, parts }) => /^(?:alkali|salt)$/u.test(role) && Number(parts.value) > 0);
  return salts.map(({ id }) => ({ name: id, amount: "0 g" }));
}

const hostile = (what: string) => `${what}.1 <b>Ümläut</b> "of" 5 %`;
const named: core.SpecInput = {
  name: hostile("noodle"),
  materials: {
    [hostile("flour")]: { kind: "flour", protein: "12 %", moisture: "14 %", price: "1 EUR/kg" },
    [hostile("other flour")]: { kind: "flour", protein: "9 %", moisture: "13 %", price: "2 EUR/kg" },
    [hostile("alkali")]: { composition: { Na2CO3: "50 %", K2CO3: "50 %" } },
    [hostile("egg")]: { kind: "egg", protein: "12 %", moisture: "75 %" },
  },
  flours: [
    { name: hostile("flour"), amount: "80 %" },
    { name: hostile("other flour"), amount: "rest" },
  ],
  water: { added: "36 %" },
  alkali: [{ name: hostile("alkali"), amount: "1 %" }],
  ingredients: [{ name: hostile("egg"), amount: "6 %" }],
  batch: { bowls: 12, rawWeight: "130 g" },
  scales: [{ name: hostile("scale"), division: "1 g" }],
  temperature: {
    dough: "24 °C",
    flour: "20 °C",
    room: "20 °C",
    tap: "12 °C",
    mixingHeat: "4 kJ/kg",
    ingredients: { [hostile("egg")]: "5 °C", [hostile("other flour")]: "8 °C" },
  },
  wanted: { protein: "11 %" },
  machines: {
    [hostile("machine")]: { width: "300 mm", gap: { least: "1 mm", greatest: "9 mm" }, cutters: [{ size: 20 }] },
  },
  sheet: { machine: hostile("machine"), thickness: "2 mm", cutter: 20, start: "9 mm", endTrim: "40 mm" },
};

/** An example that tells when its noodles are served, and by what weight: what its pots do is in its day. */
const school = readFileSync(new URL("school-noodle.yaml", folder), "utf8");
const served: unknown = parse(
  school
    .replace("plan:\n", 'plan:\n  serve: "12:15"\n')
    .replace(/rawWeight: .*/u, "cookedWeight: 230 g\n  cookGain: 1.75"),
);

const files = readdirSync(folder).filter((file) => file.endsWith(".yaml") && file !== "harbour-store.yaml");
const written = [...files.map((file) => [file, read(file)]), ["hostile names", named], ["served", served]] as const;
const all = written.flatMap(([file, data]) => {
  const noodle = core.readNoodleData(data, { kitchens });
  return Object.entries(asks).flatMap(([question, ask]) => {
    const answer = noodle.ok ? ask(noodle.value) : noodle;
    return answer.ok ? [{ file, question, answer }] : [];
  });
});

/** Work with alkaline products whose names are written to mislead. */
const soda = { name: hostile("soda"), composition: pure("Na2CO3"), mass: 8, parts: 3 };
const potash = { name: hostile("potash"), composition: pure("K2CO3"), mass: 5, parts: 2 };
const lye = { name: hostile("lye"), composition: { species: { Na2CO3: "10" }, water: "90", inert: "0" }, mass: 500 };
const conditions = { temperature: 20, scale: "145" } as const;
const tenPercent = { ...conditions, target: { measure: "mass-percent", value: "10" } } as const;
const solutions: readonly core.Outcome<unknown>[] = [
  makeUp({ ...tenPercent, products: [soda, potash], ratioBy: "anhydrous", amount: { grams: 1000 } }),
  dilute({ ...conditions, stock: lye, target: { measure: "mass-percent", value: "5" } }),
  correct({ ...conditions, batch: lye, salts: soda, target: { measure: "mass-percent", value: "15" } }),
  convert({ from: { ...soda, mass: "8" }, to: [potash], hold: "M" }),
  severalStock({
    ...conditions,
    products: [soda, potash],
    scales: [{ division: 1 }],
    tolerance: 1,
    loads: 9,
    storage: 4,
  }),
];

/** The graph of a result; one without figures needs none. */
function graphOf(result: object): Graph {
  return "graph" in result ? (result.graph as Graph) : {};
}

/** Fails where a graph lacks a figure that one of its figures names, or gives other values when it is worked out again. */
function expectComplete(graph: Graph): void {
  const figures = Object.values(graph);
  expect(figures.flatMap(feedsOf).filter((id) => !Object.hasOwn(graph, id))).toEqual([]);
  const leaves = figures.filter(({ working }) => working.kind !== "formula");
  const reading = recalculated(graph, Object.fromEntries(leaves.map(({ id, value }) => [id, value])));
  const again = reading.ok ? reading.value : {};
  const off = figures.filter(({ id, value }) => again[id]?.value !== value);
  expect(off.map(({ id, value }) => `${id}: ${value}, again ${again[id]?.value}`)).toEqual([]);
}

/** What is told by each id in a result and behind its figures, where that is not one and the same. */
function ambiguous(result: unknown): readonly string[] {
  const told = new Map<string, Set<string>>();
  for (const figure of new Set(figuresIn(result))) {
    // A figure by itself brings its graph along, which is no part of it.
    const { graph: _graph, ...own } = { graph: {}, ...figure };
    told.set(own.id, (told.get(own.id) ?? new Set()).add(JSON.stringify(own)));
  }
  return [...told].flatMap(([id, texts]) => (texts.size > 1 ? [[id, ...texts].join("\n")] : []));
}

it("tries every question that the door has", () => {
  expect([...new Set(all.map(({ question }) => question))].toSorted()).toEqual(Object.keys(asks));
  const unasked = ["askDay", "askIngredientReplacement", "askLot"];
  const hostileOnes = all.filter(({ file }) => file === "hostile names").map(({ question }) => question);
  expect(Object.keys(asks).filter((question) => !hostileOnes.includes(question))).toEqual(unasked);
});

const plainWord = /^[a-z0-9]+$/u;
const chemicalFormula = /^(?:[A-Z][a-z]?\d*|\((?:[A-Z][a-z]?\d*)+\)\d*)+$/u;

it("explains what is done with alkaline products in the same way", () => {
  expect(solutions.flatMap(ambiguous)).toEqual([]);
  expect(solutions.flatMap(unexplained)).toEqual([]);
});

it("gives each blend of a search figures of its own names, and its graph holds all of them", () => {
  const flours = ["9", "10", "12"].map((protein) => ({ name: `flour of ${protein}`, protein, moisture: "14" }));
  const targets = { protein: { least: "10", basis: { kind: "as is" } } } as const;
  const found = searchBlend({ flours, targets, prefer: { kind: "fewest" }, alternatives: 3 });
  expect(found.ok && found.value.kind === "found" && found.value.blends).toHaveLength(3);
  expect(ambiguous(found)).toEqual([]);
  expect(unexplained(found)).toEqual([]);
});

it("names no figure by what somebody may write: words of a-z, numbers, and chemical formulas", () => {
  expect(solutions.filter(({ ok }) => !ok)).toEqual([]);
  const ids = new Set([
    ...all.flatMap(({ answer }) => Object.keys(graphOf(answer.value))),
    ...figuresIn(solutions).map(({ id }) => id),
  ]);
  const isPlain = (part: string): boolean => plainWord.test(part) || chemicalFormula.test(part);
  expect([...ids].filter((id) => !id.split(/[.-]/u).every(isPlain))).toEqual([]);
});

describe.each(all)("$file, $question", ({ question, answer }) => {
  it("is plain data, and its report too", () => {
    const report = "report" in answer ? answer.report() : {};
    for (const result of [answer.value, answer.notes, report]) {
      expect(JSON.parse(JSON.stringify(result))).toStrictEqual(result);
      expect(structuredClone(result)).toStrictEqual(result);
      expect(figuresIn(result).filter(({ behind }) => behind !== undefined)).toEqual([]);
    }
  });

  it("explains every figure by its graph, which is worked out again, exactly", () => {
    const graph = graphOf(answer.value);
    for (const figure of figuresIn(answer.value)) {
      if (question !== "askCard") expect(graph[figure.id], figure.id).toStrictEqual(figure);
      const explained = core.explain({ graph }, figure.id);
      expect(explained.ok && explained.value.lines.length).toBeGreaterThan(0);
    }
    expectComplete(graph);
  });

  it("has no id that stands for two figures, nor has what they rest on", () => {
    // A card tells figures in its own words; those behind it are in the answers that it shows.
    const told = question === "askCard" && "graph" in answer.value ? answer.value.graph : answer.value;
    expect(ambiguous(told)).toEqual([]);
  });

  it("keeps in its report every figure that it shows", () => {
    if (!("report" in answer)) return;
    const { sections, figures } = answer.report();
    const inSections = figuresIn(sections).map(({ id }) => id);
    expect(inSections.filter((id) => !Object.hasOwn(figures, id))).toEqual([]);
    for (const id of Object.keys(figures)) expect(core.explain({ graph: figures }, id).ok, id).toBe(true);
    expectComplete(figures);
  });
});
