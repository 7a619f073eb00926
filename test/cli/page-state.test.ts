import type { Path } from "@noodlewright/core/figure";
import { describe, expect, test } from "vitest";
import type { Answers, Item } from "#cli/page/answers.ts";
import { openDesk } from "#cli/page/desk.ts";
import { differences } from "#cli/page/differences.ts";
import {
  asOnList,
  bowlOf,
  doughOf,
  isPast,
  itemsOfLoad,
  lastLoad,
  mendOf,
  otherStock,
  withItem,
} from "#cli/page/items.ts";
import { freshState, isState, lotOf, type State, sameNumber, withWeight } from "#cli/page/state.ts";
import { batchRecord, doughRows } from "#cli/page/take-along.ts";
import { readCsv } from "./read-csv.ts";

const item = (id: string, name: string, grams: string): Item => ({
  id,
  name,
  grams,
  figure: { from: "batch", id: `${id}.load`, label: name, text: `${grams} g` },
  unit: "g",
  division: "1",
  scale: "bench scale",
  kind: "ingredient",
});
const flour = item("flour.1", "white flour", "1000");
const water = item("water.1", "tap water", "360");
const listed = [flour, water];
const weight = (one: Item, grams = one.grams) => ({ grams, name: one.name, at: 0 });

const mended: State = {
  ...freshState,
  weighed: { "1/water.1": weight(water, "400") },
  mended: {
    1: {
      "flour.1": { grams: "1111", division: "1", scale: "bench scale", of: asOnList(flour) },
      "water.1": { grams: "400", division: "1", scale: "bench scale", of: asOnList(water) },
    },
  },
};

const data = { spec: {}, files: [], said: "", units: "metric" as const, key: "" };

function todayOf(count: number, items: readonly Item[]): Answers {
  return {
    spec: {},
    name: "class noodle",
    names: [],
    stages: [],
    problems: [],
    loud: [],
    found: [],
    loads: { count, items, total: flour.figure, remedies: [] },
    size: [],
    water: [],
    follows: [],
    allergens: [],
    cautions: [],
    notes: [],
  };
}

describe("a mend", () => {
  test("holds as long as the list that it mends stays", () => {
    expect(itemsOfLoad(listed, mended, 1).map(({ grams }) => grams)).toEqual(["1111", "400"]);
    expect(doughOf(itemsOfLoad(listed, mended, 1))).toBe("1511");
    for (const changed of [item("flour.1", "white flour", "1001"), item("flour.1", "brown flour", "1000")]) {
      expect(mendOf([changed, water], mended, 1)).toBe("void");
      expect(itemsOfLoad([changed, water], mended, 1)).toEqual([changed, water]);
    }
    expect(mendOf([water], mended, 1)).toBe("void");
  });

  test("stands in the rows and in the record, with the dough it makes", () => {
    const occasion = { data, state: mended, today: todayOf(1, listed), now: new Date(0) };
    const [heads = [], row = []] = readCsv(doughRows(occasion));
    const value = (head: string) => row[heads.indexOf(head)];
    expect([value("dough on the list, g"), value("mended to")]).toEqual([
      "1511.00",
      "white flour 1111 g; tap water 400 g",
    ]);
    const record = JSON.stringify(batchRecord(occasion).sections.at(-1));
    expect(record).toContain("mended to, g");
    expect(record).toContain("mend what was too much");
  });
});

test("what is in and not on the list bars what stands for the same entry of the spec, and nothing else", () => {
  const soda = item("alkali.1", "sodium carbonate monohydrate", "63");
  const potash = item("alkali.2", "potassium carbonate", "36");
  const list = [...listed, soda, potash, item("salt", "table salt", "20")];
  const barred = (id: string, entry: State["weighed"][string]) => {
    const bowl = bowlOf(list, { ...freshState, weighed: { [`1/${id}`]: entry } }, 1);
    return bowl.foreign.map((one) => [one.name, bowl.barredBy(one).map(({ name }) => name)]);
  };
  const stock = item("common-stock.per-load", "stock solution", "100");
  const holds = [{ id: "alkali.2", name: "another potash", grams: "9" }];
  expect(barred("alkali.1", { grams: "54", name: "sodium carbonate", at: 0 })).toEqual([
    ["sodium carbonate", ["sodium carbonate monohydrate"]],
  ]);
  expect(barred("alkali.1.2", weight(potash))).toEqual([["potassium carbonate", ["sodium carbonate monohydrate"]]]);
  expect(barred(stock.id, { ...weight(stock), of: { ...stock, holds } })).toEqual([
    ["stock solution", ["potassium carbonate"]],
  ]);
  // What an earlier page kept of a stock does not tell what it holds.
  expect(barred(stock.id, weight(stock))).toEqual([
    ["stock solution", ["tap water", "sodium carbonate monohydrate", "potassium carbonate", "table salt"]],
  ]);
});

test("a stock of another strength that an earlier load took is told of, until the load has its own", () => {
  const stock = (salt: string): Item => ({
    ...item("stock", "stock solution", "100"),
    kind: "stock",
    holds: [{ id: "salt", name: "table salt", grams: salt }],
  });
  const took = (salt: string, load: number, before = freshState): State =>
    withItem([flour, stock(salt)], before, load, stock(salt), { grams: "100", at: load });
  const list = [flour, stock("10")];
  const told = [took("12", 1), took("10", 1), took("10", 2, took("12", 1)), took("10", 3, took("12", 1))];
  expect(told.map((state) => otherStock(list, state, 3))).toEqual([1, undefined, undefined, undefined]);
  expect(otherStock(listed, took("12", 1), 2)).toBe(undefined);
});

test("a bottle of another strength is told apart from the one that is in, and is not added to it", () => {
  const spec = {
    name: "From the bottle",
    flours: [{ name: "bread flour", amount: "100 %" }],
    water: { added: "36 %" },
    alkali: [
      {
        name: "class bottle",
        amount: "3 %",
        figures: { solution: { salts: "K2CO3", strength: "30 °Bé", modulus: 144.3 }, allergens: [] },
      },
    ],
    batch: { dough: "4 kg" },
  };
  const desk = openDesk({ ...data, spec });
  const path = ["alkali", 0, "figures", "solution", "strength"];
  const listOf = (text: string) => {
    return desk.answers({ keepWet: true, entries: [{ path, text, unit: "°Bé" }] }).loads?.items ?? [];
  };
  const bottle = listOf("30").find(({ id }) => id === "alkali.1");
  if (bottle === undefined) throw new Error("there is no bottle");
  const state = withItem(listOf("30"), freshState, 1, bottle, { grams: bottle.grams, at: 0 });
  const told = (items: readonly Item[]) => {
    const bowl = bowlOf(items, state, 1);
    return bowl.foreign.map((one) => [one.name, ...bowl.barredBy(one).map(({ name }) => name)]);
  };
  expect([told(listOf("30")), told(listOf("27"))]).toEqual([[], [["class bottle", "class bottle, 27 °Bé"]]]);
  const typed = [{ path: ["alkali", 0, "replaceWith"], text: "Na2CO3 at 10 %", unit: "" }];
  const { problems, loads } = desk.answers({ keepWet: true, entries: typed });
  expect([problems, loads?.items[2]?.name]).toEqual([[], "Na2CO3 at 10 %"]);
});

describe("a load that was weighed before the list changed", () => {
  const noon = (day: number, minutes = 0) => new Date(2026, 2, day, 12, minutes).getTime();
  const half = [item("flour.1", "white flour", "500"), item("stock", "stock solution", "9")];
  const put = (state: State, load: number, one: Item, minutes: number) =>
    withItem(listed, state, load, one, { grams: one.grams, at: noon(2, minutes), differs: [`bowls: ${minutes}`] });
  const all = [1, 3].reduce((state, load) => listed.reduce((now, one) => put(now, load, one, load), state), freshState);
  const some = put(all, 2, water, 2);
  const state = { ...some, timers: [{ label: "rest", minutes: 780, end: noon(3, 60), ended: noon(3, 60), load: 1 }] };
  const occasion = { data, state, today: todayOf(1, half), now: new Date(noon(9)) };

  test("is judged by the list it was weighed by until something of it is weighed anew", () => {
    expect([1, 2, 3].map((load) => isPast(half, state, load))).toEqual([true, false, true]);
    expect(itemsOfLoad(half, state, 1).map(({ grams, name }) => [name, grams])).toEqual([
      ["white flour", "1000"],
      ["tap water", "360"],
    ]);
    expect(itemsOfLoad(half, state, 2)).toEqual(half);
    expect(lastLoad(occasion.today, state)).toBe(3);
    const more = withItem(half, state, 1, water, { grams: "370", at: noon(9), differs: [] });
    expect(itemsOfLoad(half, more, 1).map(({ grams }) => grams)).toEqual(["1000", "360"]);
  });

  test("stays in the rows and in the record when there are fewer loads, with the list of then", () => {
    const [heads = [], ...rows] = readCsv(doughRows(occasion));
    const column = (head: string) => rows.map((row) => row[heads.indexOf(head)]);
    expect(column("load")).toEqual(["1", "2", "3"]);
    expect(column("dough on the list, g")).toEqual(["1360.00", "509.00", "1360.00"]);
    expect(column("weighed, g")).toEqual(["1360.00", "360.00", "1360.00"]);
    const tables = batchRecord(occasion).sections.flatMap(({ blocks }) =>
      blocks.flatMap((block) =>
        block.kind === "table" ? [block.rows.map(({ cells }) => cells.map(({ text }) => text))] : [],
      ),
    );
    expect(tables[0]).toEqual([
      ["white flour", "1000", "1000", "", "12:01"],
      ["tap water", "360", "360", "", "12:01"],
    ]);
    expect(tables[2]).toEqual([
      ["white flour", "500", "–", "", ""],
      ["stock solution", "9", "–", "", ""],
      ["tap water", "360", "360", "", "12:02"],
    ]);
  });

  test("carries what differed from the spec then, whatever differs since, and what changed while it was weighed", () => {
    const told = (of: State) => {
      const [heads = [], ...rows] = readCsv(doughRows({ ...occasion, state: of }));
      return rows.map((row) => row[heads.indexOf("Differs from the spec")]);
    };
    expect(told(state)).toEqual(["bowls: 1", "bowls: 2", "bowls: 3"]);
    const later = withItem(half, put(state, 2, flour, 5), 1, water, {
      grams: "370",
      at: noon(2, 5),
      differs: ["less"],
    });
    expect(told(later)).toEqual(["bowls: 1", "bowls: 2; from 12:05 on: bowls: 5", "bowls: 3"]);
    expect(told(mended)).toEqual(["not known, an earlier page took the weights"]);
    expect(JSON.stringify(batchRecord({ ...occasion, state: later }).sections[2])).toContain(
      '"Differs from the spec: bowls: 2","Differs from the spec: from 12:05 on: bowls: 5"',
    );
  });

  test("carries what was found for it then, whatever is found since", () => {
    const found = { ...occasion.today, found: ["found for you: salt 1 %"] };
    const weighed = withItem(half, freshState, 1, water, {
      grams: "360",
      at: noon(9),
      found: ["found for you: salt 2 %"],
    });
    const told = (of: State) =>
      JSON.stringify(batchRecord({ ...occasion, today: found, state: of })).match(/salt \d/gu);
    expect([told(weighed), told(freshState)]).toEqual([["salt 2"], ["salt 1"]]);
  });

  test("carries the day on which it was weighed, and another day where a step went on to it", () => {
    const [heads = [], row = []] = readCsv(doughRows(occasion));
    expect(["date", "rest began", "rest ended"].map((head) => row[heads.indexOf(head)])).toEqual([
      "2026-03-02",
      "2026-03-03 00:00:00",
      "2026-03-03 13:00:00",
    ]);
    const [about] = batchRecord(occasion).sections;
    expect(about?.blocks[0]).toMatchObject({
      lines: ["2026-03-02", "written out 2026-03-09, 12:00", expect.any(String)],
    });
  });
});

test("what was saved is read whole, or not at all", () => {
  const timers = [{ label: "rest", minutes: 20, end: 5, load: 2, ended: 4 }];
  const entries = [{ path: ["flours", 0, "figures", "moisture"], text: "13", unit: "%" }];
  const lists = {
    1: listed.map(({ id, name, grams, unit, division, scale, kind }) => {
      return { id, name, grams, unit, division, scale, kind };
    }),
  };
  const whole = { ...mended, lists, entries, timers, lots: { "1/flour.1": "A" }, doughs: { 1: { note: "soft" } } };
  expect(isState(whole)).toBe(true);
  const { lots: _, ...less } = whole;
  const wrong: readonly unknown[] = [
    less,
    { ...whole, more: 1 },
    { ...whole, load: 0 },
    { ...whole, load: "1" },
    { ...whole, keepWet: null },
    { ...whole, timers: [{ ...timers[0], end: null }] },
    { ...whole, entries: [{ ...entries[0], path: [-1] }] },
    { ...whole, weighed: { "1/x": { grams: "1e9", name: "x", at: 0 } } },
    { ...whole, doughs: [] },
    { ...whole, lists: { 1: [{ ...lists[1][0], kind: "other" }] } },
    { ...whole, doughs: { 1: { note: 1 } } },
    { ...whole, lots: { x: "y".repeat(2001) } },
    undefined,
    "x",
  ];
  expect(wrong.filter(isState)).toEqual([]);
});

test("what differs is told as the fields are named, not by keys", () => {
  const spec = {
    flours: [{ name: "rye", figures: { moisture: "13 %", protein: "9 %", proteinBasis: "dry" } }],
    alkali: [{ name: "soda" }],
    scales: [{ division: "1 g" }],
  };
  const entry = (path: Path, text: string, unit = "") => ({ path: [...path], text, unit });
  const entries = [
    entry(["batch", "bowls"], "40", "number"),
    entry(["losses", "sheeting"], "3", "%"),
    entry(["temperature", "tap"], "12", "°C"),
    entry(["flours", 0, "figures", "moisture"], "13", "%"),
    entry(["flours", 0, "figures", "protein"], "9", "%"),
    entry(["alkali", 0, "replaceWith"], "potassium carbonate"),
    entry(["scales", 0, "division"], "1", "g"),
  ];
  expect(differences({}, spec, { entries })).toEqual([
    "bowls: 40",
    "loss at the rolls: 3 %",
    "temperature of tap water: 12 °C",
    "rye, moisture: 13 %",
    "rye, protein, dry: 9 %",
    "in the place of soda: potassium carbonate",
    "step of scale 1: 1 g",
  ]);
});

test("a new sack in a later load leaves the lot of an earlier one, and goes on from there", () => {
  const first = withWeight({ ...freshState, lots: { "1/flour.1": "A" } }, 1, flour.id, weight(flour));
  expect(lotOf(first, 2, flour.id)).toBe("A");
  const second = withWeight({ ...first, lots: { ...first.lots, "2/flour.1": "B" } }, 2, flour.id, weight(flour));
  expect([1, 2, 3].map((load) => lotOf(second, load, flour.id))).toEqual(["A", "B", "B"]);
  const late = { ...withWeight(first, 2, flour.id, weight(flour)) };
  expect(lotOf({ ...late, lots: { ...late.lots, "1/flour.1": "C" } }, 2, flour.id)).toBe("A");
});

test("a number is the same however it is typed", () => {
  expect([sameNumber("13,60", "13.6"), sameNumber("60.", "60"), sameNumber("", "0"), sameNumber("x", "x")]).toEqual([
    true,
    true,
    false,
    false,
  ]);
});
