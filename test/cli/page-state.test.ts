import type { Path } from "@noodlewright/core/figure";
import { describe, expect, test } from "vitest";
import type { Answers, Item } from "#cli/page/answers.ts";
import { differences } from "#cli/page/differences.ts";
import { asOnList, doughOf, itemsOfLoad, mendOf } from "#cli/page/items.ts";
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
    const today: Answers = {
      spec: {},
      name: "class noodle",
      problems: [],
      loud: [],
      loads: { count: 1, items: listed, total: flour.figure, stocked: false, remedies: [] },
      size: [],
      water: [],
      follows: [],
      allergens: [],
      cautions: [],
      notes: [],
    };
    const data = { spec: {}, files: [], said: "", found: [], units: "metric" as const, key: "" };
    const occasion = { data, state: mended, today, now: new Date(0) };
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

test("what was saved is read whole, or not at all", () => {
  const timers = [{ label: "rest", minutes: 20, end: 5, load: 2, ended: 4 }];
  const entries = [{ path: ["flours", 0, "figures", "moisture"], text: "13", unit: "%" }];
  const whole = { ...mended, entries, timers, lots: { "1/flour.1": "A" }, doughs: { 1: { note: "soft" } } };
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
  expect(differences(spec, { entries })).toEqual([
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
