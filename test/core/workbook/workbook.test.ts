import { askBatch, type UnitSystem } from "@noodlewright/core";
import type { Graph } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { changedSpec } from "./changes.ts";
import {
  cellsOf,
  changedBy,
  commandGraph,
  type Data,
  Engine,
  exampleData,
  examples,
  figurePlaces,
  type Input,
  inputsOf,
  noodleOf,
  same,
  type Typed,
  workbookFor,
} from "./kit.ts";

/** The checks of a workbook that do not hold: those on what the tool decided for the spec, and the others. */
function failing(engine: Engine, workbook: ReturnType<typeof workbookFor>) {
  const texts = cellsOf(workbook)
    .filter(({ cell: { role }, column }) => role === "check" && column === 1)
    .map((place) => String(engine.value(place)))
    .filter((text) => text !== "fine");
  const remedies = texts.filter((text) => /^noodlewright decided |^an ingredient is too little/u.test(text));
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

/** A workbook in another engine, held against the command. */
function beside(name: string, units: UnitSystem, more: Data) {
  const data = { ...exampleData(name), ...more };
  const noodle = noodleOf(data, units);
  if (noodle === undefined) throw new Error(`${name} is refused`);
  const workbook = workbookFor(noodle);
  const places = figurePlaces(workbook);
  const graph = commandGraph(noodle) ?? {};
  const resting = restingOnDecisions(graph, workbook);
  const engine = new Engine(workbook);
  /** Where both are not of one mind. */
  const wrong: unknown[] = [];
  let before: readonly Input[] = [];
  /** What the workbook says of changes: an answer, which is that of the command, or that it has none. */
  const answerTo = (changes: ReadonlyMap<Input, Typed>): "answered" | "refused" | "asked" => {
    const back = before.filter((input) => !changes.has(input)).map(({ place, before }) => [place, before] as const);
    engine.type([...back, ...[...changes].map(([{ place }, { value }]) => [place, value] as const)]);
    before = [...changes.keys()];
    const typed = new Map([...changes].map(([{ id }, one]) => [id, one]));
    const answer = noodleOf(changedSpec(data, graph, typed), units);
    const fresh = answer && commandGraph(answer);
    const { others, remedies } = failing(engine, workbook);
    const different = Object.values(fresh ?? {}).flatMap(({ id, value }) => {
      const place = places.get(id);
      const remedied = remedies.length > 0 && /^(?:weighed|rounding)\.|\.weighed-parts$/u.test(id);
      if (place === undefined || resting.has(id) || remedied || others.length > 0) return [];
      const mine = engine.value(place);
      return same(mine, Number(value)) ? [] : [`${id}: ${mine}, the command ${value}`];
    });
    const silent = fresh === undefined && others.length === 0 ? ["the command refuses"] : [];
    if (different.length > 0 || silent.length > 0) wrong.push([...typed], ...silent, ...different.slice(0, 5));
    return fresh === undefined ? "refused" : others.length > 0 ? "asked" : "answered";
  };
  return { workbook, places, graph, engine, inputs: inputsOf(workbook), answerTo, wrong };
}

const written: readonly (readonly [name: string, units: UnitSystem, more: Data])[] = [
  ...examples.map((name) => [name, "metric", {}] as const),
  ["evening-class", "us", {}],
  ["pin-and-sticks", "us", {}],
  ["school-noodle", "us", { rework: { amount: "1.3 kg" } }],
  ["school-noodle", "metric", { rework: { amount: "1.3 kg" }, batch: { load: "largest" } }],
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
  ],
  ["school-noodle", "metric", { batch: { load: "largest" }, salt: "0 %", water: { dough: "35 %" } }],
  ["evening-class", "metric", { batch: { flour: "3 kg" }, water: { dough: "37 %" } }],
  ["written-in-grams", "metric", { batch: { dough: "4 kg" }, rework: { amount: "8 %" } }],
  ["barley-egg-noodle", "metric", { batch: { have: { name: "barley flour", amount: "812 g" } } }],
];

describe("a workbook, worked out by an engine that is not ours", () => {
  test.for(written)(
    "comes to the values of the command for %s, %s, %j, and for a change of each input",
    ([name, units, more]) => {
      const { workbook, places, graph, engine, inputs, answerTo, wrong } = beside(name, units, more);
      const told = cellsOf(workbook).filter(({ cell }) => cell.formula !== undefined);
      const values = told.map((place) => [place.cell, engine.value(place)] as const);
      expect(told.length).toBeGreaterThan(150);
      expect(values.filter(([, value]) => String(value).startsWith("#"))).toEqual([]);
      expect(values.filter(([cell, value]) => cell.value !== undefined && !same(value, cell.value))).toEqual([]);
      for (const { id, value } of Object.values(graph)) {
        expect([id, places.get(id)?.cell.value]).toEqual([id, Number(value)]);
      }
      const all = { minLength: inputs.length, maxLength: inputs.length };
      const [order = []] = fc.sample(fc.shuffledSubarray([...inputs], all), 1);
      const [percents = []] = fc.sample(fc.array(fc.integer({ min: -30, max: 40 }), all), 1);
      const typed = order.map((input, index) => [input, changedBy(percents[index] ?? 0, input)] as const);
      const alone: Input[] = [];
      for (let from = 0; from < typed.length; from += 6) {
        const some = typed.slice(from, from + 6);
        if (answerTo(new Map(some)) !== "answered") alone.push(...some.map(([input]) => input));
      }
      const left = alone.filter((input) => answerTo(new Map([[input, changedBy(-1, input)]])) !== "answered");
      expect(wrong).toEqual([]);
      // Shares in % that leave none to be the rest come to 100 % together; and the weights that leave a little of what is
      // short unused are for the command to find.
      const forCommand = workbook.sheets[0]?.rows.some((cells) => cells[0]?.value === "what is left unused");
      const allowed = forCommand ? /^/u : /^flour\.\d+\.parts$|^batch\.have$/u;
      expect(left.map(({ id }) => id).filter((id) => !allowed.test(id))).toEqual([]);
      engine.close();
    },
  );

  test("refuses a number that the command refuses, for each kind of input", () => {
    const kinds = new Set<string>();
    for (const [name, units, more] of [written[0], written[11], written[15]].filter((one) => one !== undefined)) {
      const { engine, inputs, answerTo, wrong } = beside(name, units, more);
      for (const input of inputs) {
        const kind = input.id.replace(/\d+/gu, "");
        if (kinds.has(kind)) continue;
        kinds.add(kind);
        const { least = 0, above, most } = input.takes;
        for (const value of [above ?? least - 1, ...(most === undefined ? [] : [most + 0.5])]) {
          const answer = answerTo(new Map([[input, { value, unit: input.unit }]]));
          expect([input.id, value, answer]).toEqual([input.id, value, "refused"]);
        }
      }
      engine.close();
      expect(wrong).toEqual([]);
    }
    expect(kinds.size).toBeGreaterThan(30);
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
  const workbook = workbookFor(noodle);
  const engine = new Engine(workbook);
  const rows = workbook.sheets[0]?.rows ?? [];
  const top = rows.findIndex((cells) => cells[6]?.value === "One load with the stock solution") + 1;
  const told = () =>
    weights.map((_, index) => [
      rows[top + index]?.[6]?.value,
      engine.value({ sheet: "Noodle", row: top + index, column: 7 }),
    ]);
  expect(told()).toEqual(weights.map(({ name, mass }) => [name, Number(mass.value)]));
  expect(told().map(([name]) => name)).toContain("stock solution of the salts");
  const [input] = inputsOf(workbook);
  if (input) engine.type([[input.place, input.before * 1.1]]);
  expect(told().map(([, value]) => value)).toEqual(weights.map(() => "ask noodlewright again"));
  engine.close();
});

/** The workbook of an example after numbers were typed into it, by the ids of its inputs. */
function afterTyping(name: string, numbers: Readonly<Record<string, number>>) {
  const noodle = noodleOf(exampleData(name));
  if (noodle === undefined) throw new Error(`${name} is refused`);
  const workbook = workbookFor(noodle);
  const engine = new Engine(workbook);
  engine.type(inputsOf(workbook).flatMap(({ id, place }) => (numbers[id] === undefined ? [] : [[place, numbers[id]]])));
  const texts = cellsOf(workbook)
    .filter(({ sheet }) => sheet === "Noodle")
    .map((place) => [place.column, String(engine.value(place))] as const);
  const value = (id: string) => engine.value(figurePlaces(workbook).get(id) ?? { sheet: "", row: 0, column: 0 });
  const inColumn = (column: number) => texts.filter(([at]) => at === column).map(([, text]) => text);
  return { inColumn, value };
}

test("leaves nothing unused of an amount that was changed", () => {
  const typed = exampleData("written-in-grams");
  const asked = noodleOf({ ...typed, batch: { have: { name: "dark rye flour", amount: "10 g" } } });
  const exact = asked && Number(commandGraph(asked)?.["flour.2.load"]?.value);
  expect(afterTyping("written-in-grams", { "batch.have": 10 }).value("flour.2.load")).toBe(exact);
});

test("shows no weight below nothing, and no scale for it", () => {
  const results = afterTyping("school-noodle", { "water.added-stated": 0 }).inColumn(7);
  expect(results).toContain("none");
});

test("sends to the stock solution beside, where it holds one", () => {
  expect(afterTyping("barley-egg-noodle", {}).inColumn(1).join("\n")).toContain("go by the stock solution beside");
});

test("leaves something for the flour that is the rest, and takes the smallest load as it is typed", () => {
  expect(afterTyping("school-noodle", { "flour.1.parts": 100 }).inColumn(1)).toContain(
    "the shares of the flours do not total 100 %",
  );
  expect(afterTyping("school-noodle", { "mixer.smallest": 9900 }).inColumn(1).join("\n")).toContain(
    "a load is below the least of the mixer",
  );
});
