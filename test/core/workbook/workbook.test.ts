import { askBatch } from "@noodlewright/core";
import type { Graph } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { changeable } from "./changes.ts";
import {
  cellsOf,
  commandGraph,
  Engine,
  exampleData,
  examples,
  figurePlaces,
  inputPlace,
  noodleOf,
  same,
  workbookFor,
} from "./kit.ts";

/** The checks of a workbook that do not hold: those on what the tool decided for the spec, and the others. */
function failing(engine: Engine, workbook: ReturnType<typeof workbookFor>) {
  const texts = cellsOf(workbook)
    .filter(({ cell: { role, value }, column }) => role === "check" && column === 7 && value !== "")
    .map((place) => String(engine.value(place)))
    .filter((text) => text !== "fine");
  const remedies = texts.filter((text) =>
    /^noodlewright decided |^the weights hold|^too little for the scale/u.test(text),
  );
  return { remedies, others: texts.filter((text) => !remedies.includes(text)) };
}

/** Figures that rest on what a procedure found and no formula of the workbook works out. */
function restingOnDecisions(graph: Graph, workbook: ReturnType<typeof workbookFor>): ReadonlySet<string> {
  const places = figurePlaces(workbook);
  const resting = new Set<string>();
  for (const { id, working } of Object.values(graph)) {
    if (working.kind === "procedure" && places.get(id)?.cell.formula === undefined) resting.add(id);
    if (working.kind !== "formula") continue;
    const feeds = Object.values(working.from).flatMap((fed) =>
      "figure" in fed ? [fed.figure] : "figures" in fed ? fed.figures : [],
    );
    if (feeds.some((feed) => resting.has(feed))) resting.add(id);
  }
  return resting;
}

describe("a workbook, worked out by an engine that is not ours", () => {
  test.for([
    ...examples.map((name) => [name, "metric", {}] as const),
    ["evening-class", "us", {}] as const,
    ["pin-and-sticks", "us", {}] as const,
    ["school-noodle", "metric", { rework: { amount: "1.3 kg" }, batch: { load: "largest" } }] as const,
    [
      "school-noodle",
      "us",
      {
        scales: [
          { division: "0.5 oz", capacity: "20 lb" },
          { division: "0.05 oz", capacity: "10 oz" },
        ],
        alkali: [
          { name: "sodium carbonate", amount: "12 meq" },
          { name: "potassium carbonate", amount: "0.4 %", as: "anhydrous salts" },
        ],
      },
    ] as const,
    ["school-noodle", "metric", { batch: { load: "largest" }, salt: "0 %", water: { dough: "35 %" } }] as const,
  ])("comes to the values of the command: %s, %s, %j", ([name, units, changes]) => {
    const noodle = noodleOf({ ...exampleData(name), ...changes }, units);
    if (noodle === undefined) throw new Error(`${name} is refused`);
    const workbook = workbookFor(noodle);
    const engine = new Engine(workbook);
    const told = cellsOf(workbook).filter(({ cell }) => cell.formula !== undefined && cell.value !== undefined);
    const different = told.filter((place) => !same(engine.value(place), place.cell.value ?? ""));
    const broken = cellsOf(workbook).filter(
      (place) => place.cell.formula !== undefined && String(engine.value(place)).startsWith("#"),
    );
    engine.close();
    expect(told.length).toBeGreaterThan(150);
    expect(different.map(({ cell }) => cell.formula)).toEqual([]);
    expect(broken.map(({ cell }) => cell.formula)).toEqual([]);
    const graph = commandGraph(noodle);
    const places = figurePlaces(workbook);
    for (const { id, value } of Object.values(graph ?? {})) {
      expect([id, places.get(id)?.cell.value]).toEqual([id, Number(value)]);
    }
  });

  test.for([
    ["school-noodle", exampleData("school-noodle")],
    ["barley-egg-noodle", exampleData("barley-egg-noodle")],
    ["evening-class", exampleData("evening-class")],
    ["written-in-grams, of some dough", { ...exampleData("written-in-grams"), batch: { dough: "4 kg" } }],
  ] as const)("answers changed inputs as the command does, or says that it cannot: %s", ([name, data]) => {
    const noodle = noodleOf(data);
    if (noodle === undefined) throw new Error(`${name} is refused`);
    const workbook = workbookFor(noodle);
    const places = figurePlaces(workbook);
    const graph = commandGraph(noodle) ?? {};
    const scales = [...places.keys()].filter((id) => id.startsWith("scale."));
    const known: Graph = {
      ...graph,
      ...Object.fromEntries(
        scales.map((id) => [
          id,
          {
            id,
            label: id,
            value: String(places.get(id)?.cell.value ?? 0),
            unit: "g",
            places: 1,
            working: { kind: "given", by: "spec" },
            sources: [],
          },
        ]),
      ),
    };
    const open = changeable(data, known).filter(({ id }) => {
      const cell = places.get(id)?.cell;
      return cell !== undefined && inputPlace(cell) !== undefined;
    });
    expect(open.length).toBeGreaterThan(8);
    const resting = restingOnDecisions(graph, workbook);
    const engine = new Engine(workbook);
    const change = fc.record({ which: fc.nat(open.length - 1), percent: fc.integer({ min: -30, max: 40 }) });
    let answered = 0;
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
        const chosen = new Map(changes.map(({ which, percent }) => [which, percent]));
        let changed = data;
        const typed = [...chosen].flatMap(([which, percent]) => {
          const one = open[which];
          const cell = one && places.get(one.id)?.cell;
          const place = cell && inputPlace(cell);
          if (one === undefined || cell === undefined || place === undefined) return [];
          const before = Number(cell.value);
          const whole = one.id === "batch.bowls-stated";
          const value = Number((before * (1 + percent / 100)).toFixed(whole ? 0 : 2));
          changed = one.apply(value)(changed);
          return [{ place, value, before }];
        });
        engine.type(typed.map(({ place, value }) => [place, value]));
        try {
          const answer = noodleOf(changed);
          const fresh = answer && commandGraph(answer);
          const troubles = failing(engine, workbook);
          if (fresh === undefined) {
            expect(troubles.others).not.toEqual([]);
            return;
          }
          if (troubles.others.length > 0) return;
          answered += 1;
          const different = Object.values(fresh).flatMap(({ id, value }) => {
            const place = places.get(id);
            const remedied = troubles.remedies.length > 0 && /^(?:weighed|rounding)\.|\.weighed-parts$/u.test(id);
            if (place === undefined || resting.has(id) || remedied) return [];
            const mine = engine.value(place);
            return same(mine, Number(value)) ? [] : [`${id}: ${mine}, the command ${value}`];
          });
          expect(different).toEqual([]);
        } finally {
          engine.type(typed.map(({ place, before }) => [place, before]));
        }
      }),
      { numRuns: 6 },
    );
    engine.close();
    expect(answered).toBeGreaterThan(0);
  });
});

test("a spec with too little for its scale says as written what the command weighs in place of it", () => {
  const noodle = noodleOf({
    name: "by the kilogram",
    flours: [{ name: "bread flour", amount: "100 %" }],
    water: { added: "36 %" },
    alkali: [{ name: "sodium carbonate", amount: "0.8 %" }],
    salt: "0.6 %",
    batch: { flour: "1 kg" },
    scales: [{ division: "1 g", capacity: "5 kg" }],
  });
  if (noodle === undefined) throw new Error("the spec is refused");
  const batch = askBatch(noodle);
  const weights = batch.ok ? (batch.value.withStock ?? []) : [];
  const [water, dose] = ["tap water", "stock solution of the salts"].map(
    (name) => weights.find((one) => one.name === name)?.mass.value,
  );
  const workbook = workbookFor(noodle);
  const told = cellsOf(workbook).filter(({ cell }) => cell.role === "check" && cell.value !== "");
  const engine = new Engine(workbook);
  try {
    const said = `too little for the scale: noodlewright makes a stock solution of the salts: in a load weigh ${dose} g of it and ${water} g of tap water, none of the salts`;
    expect(told.map(({ cell }) => cell.value)).toEqual(expect.arrayContaining([said, "See the checks below."]));
    for (const place of told) expect(engine.value(place)).toBe(place.cell.value);
  } finally {
    engine.close();
  }
});
