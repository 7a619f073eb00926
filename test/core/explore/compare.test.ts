import { askBatch, askCompare, readNoodleData } from "@noodlewright/core";
import type { Comparison } from "@noodlewright/core/answers";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { changedGraph } from "#core/figure/recalculate.ts";
import { always } from "../../always.ts";
import { listed } from "../formula/worked-out.ts";
import { answered } from "../told-of.ts";

const written = {
  name: "class noodle",
  flours: listed({ "bread flour": "80 %", "rye flour": "20 %" }),
  water: { added: "36 %" },
  alkali: [{ name: "sodium carbonate", amount: "1 %" }],
  salt: "1 %",
  batch: { dough: "10 kg" },
};

function noodleOf(changes: object) {
  return answered(readNoodleData({ ...written, ...changes }));
}

function compared(...all: readonly object[]) {
  const noodles = all.map((changes, index) => ({ name: `noodle ${index + 1}`, noodle: noodleOf(changes) }));
  const answer = askCompare(noodles);
  if (!answer.ok) throw new Error("no comparison");
  return { value: answer.value, noodles: noodles.map(({ noodle }) => noodle), answer };
}

function lineOf(lines: Comparison["sums"], label: string) {
  const line = lines.find((one) => one.label === label);
  return { figures: line?.figures.map((one) => one?.value), differences: line?.differences.map((one) => one?.value) };
}

describe("noodles side by side", () => {
  const { value, noodles, answer } = compared(
    {},
    { water: { added: "38 %" } },
    { flours: [{ name: "Bread flour", amount: "100 %" }], alkali: [], batch: { dough: "5 kg" } },
  );

  test("hold the first against each other one", () => {
    expect(lineOf(value.sums, "added water")).toEqual({ figures: ["36", "38", "36"], differences: ["2", "0"] });
  });

  test("a difference that is shown is that of the two figures that are shown", () => {
    const share = fc.integer({ min: 28000, max: 42000 }).map((one) => `${one / 1000} %`);
    const near = fc.integer({ min: -9, max: 9 });
    always(6, [share, near], (water, more) => {
      const other = `${(Number.parseFloat(water) + more / 1000).toFixed(3)} %`;
      const beside = compared({ water: { added: water } }, { water: { added: other }, salt: "1.004 %" });
      const number = (text = ""): number => Number(text.replaceAll("−", "-").replaceAll(/[^-\d.]/gu, ""));
      const rows = beside.answer
        .report()
        .sections.filter(({ id }) => id !== "ranges")
        .flatMap(({ blocks }) => blocks.flatMap((block) => (block.kind === "table" ? block.rows : [])))
        .map(({ cells }) => cells.slice(-3).map(({ text }) => text));
      for (const [first, second, apart] of rows.filter((row) => row[2] !== "–")) {
        expect([first, second, apart === "same" ? 0 : number(apart)]).toEqual([
          first,
          second,
          Number((number(second) - number(first)).toFixed(6)) + 0,
        ]);
      }
      expect(rows.length).toBeGreaterThan(10);
    });
  });

  test("an ingredient that a noodle has not is none of it, and a sum that it has not is left open", () => {
    expect(lineOf(value.formula, "rye flour")).toEqual({ figures: ["20", "20", "0"], differences: ["0", "-20"] });
    expect(lineOf(value.formula, "bread flour").differences).toEqual(["0", "20"]);
    const [m] = noodles.map(({ formula }) => formula.alkali?.alkalinityM.value);
    expect(lineOf(value.sums, "alkalinity M")).toEqual({ figures: [m, m, "0"], differences: ["0", `-${m}`] });
    expect(lineOf(value.sums, "potassium carbonate").figures?.[2]).toBeUndefined();
  });

  test("the weights are those of each batch, and the bowl is left out where none is stated", () => {
    const loads = noodles.map((noodle) => {
      const batch = askBatch(noodle);
      return batch.ok ? batch.value.lines.find(({ line }) => line.role === "water")?.load.value : undefined;
    });
    expect(lineOf(value.loads, "tap water").figures).toEqual(loads);
    expect(value.bowls).toEqual([]);
  });

  test("what both share moves the difference by what is left of it: none at all for one lot of flour", () => {
    const scales = { scales: [{ division: "0.1 g" }] };
    const one = { ...scales, flours: [{ name: "bread flour", amount: "100 %" }] };
    const [protein, water] = compared(one, { ...one, water: { added: "36.4 %" } }).value.ranges;
    expect([protein?.differences[0]?.range?.low, protein?.differences[0]?.range?.high]).toEqual(["0", "0"]);
    const [first, other] = water?.figures ?? [];
    expect(Number(first?.range?.high)).toBeGreaterThan(Number(other?.range?.low));
    expect(water?.apart).toEqual([true]);
  });

  test("lots of their own err each by itself: ± 0.3 and ± 0.3 make ± 0.6", () => {
    const lot = (protein: string) => ({
      flours: [
        {
          name: "bread flour",
          amount: "100 %",
          figures: { protein, proteinUncertainty: "0.3 %", moisture: "14 %", moistureUncertainty: "0.2 %" },
        },
      ],
    });
    const difference = (protein: string) => compared(lot("12 %"), lot(protein)).value.ranges[0];
    expect(difference("12.5 %")?.differences[0]?.range).toMatchObject({ low: "-0.1", high: "1.1" });
    expect(difference("12.5 %")?.apart).toEqual([false]);
    expect(difference("12.7 %")?.apart).toEqual([true]);
  });

  test("the graph works every figure out again", () => {
    for (const [id, { value: before }] of Object.entries(changedGraph(value.graph, {}))) {
      expect([id, before]).toEqual([id, value.graph[id]?.value]);
    }
  });

  test("a noodle without a batch is compared by its formula, with a note", () => {
    const { value: part, answer: told } = compared({}, { batch: undefined });
    expect(lineOf(part.sums, "added water").differences).toEqual(["0"]);
    expect(told.notes.map(({ code }) => code)).toContain("compare.no-batch");
    expect(answer.notes.map(({ code }) => code)).not.toContain("compare.no-batch");
  });
});

test("a noodle without alkali is told apart from one with it, whichever comes first", () => {
  const none = { alkali: [] };
  for (const [sides, sign] of [
    [[{}, none], -1],
    [[none, {}], 1],
  ] as const) {
    const line = compared(...sides).value.ranges.find(({ label }) => label === "alkalinity M");
    expect(line?.apart).toEqual([true]);
    const range = line?.figures.find((figure) => figure?.range !== undefined)?.range;
    const [low, high] = [Number(range?.low) * sign, Number(range?.high) * sign].toSorted((a, b) => a - b);
    const difference = line?.differences[0]?.range;
    expect([Number(difference?.low), Number(difference?.high)]).toEqual([low, high]);
  }
});

test("grams of what is weighed in ounces have no more places than a scale for grams", () => {
  const { answer } = compared({}, { scales: [{ division: "0.1 oz" }] });
  const loads = answer.report().sections.find(({ id }) => id === "loads")?.blocks[0];
  const texts = loads?.kind === "table" ? loads.rows.flatMap(({ cells }) => cells.map(({ text }) => text)) : [];
  expect(texts.filter((text) => /\.\d{3}/u.test(text))).toEqual([]);
  expect(texts.length).toBeGreaterThan(10);
});

const prices = { "bread flour": "1 EUR/kg", "sodium carbonate": "3 EUR/kg", "table salt": "1 EUR/kg" };

test("a cost that leaves out what has no price is no difference, and says so", () => {
  const { value, answer } = compared({ prices: { ...prices, "rye flour": "2 EUR/kg" } }, { prices });
  const cost = value.sums.filter(({ unit }) => unit === "EUR/kg");
  expect(cost.map(({ label, partly }) => [label, partly])).toEqual([["raw strands", true]]);
  expect(JSON.stringify(answer.report())).toContain("raw strands, what is priced of it");
  expect(answer.report().notes.find(({ text }) => text.includes("no price is stated for rye flour"))?.loud).toBe(true);
});

test("of three noodles, one without a price leaves the difference of the others", () => {
  const whole = { ...prices, "rye flour": "2 EUR/kg" };
  const { value } = compared({ prices: whole }, { prices }, { prices: { ...whole, "rye flour": "4 EUR/kg" } });
  const cost = value.sums.filter(({ unit }) => unit === "EUR/kg");
  expect(cost.map(({ differences }) => differences.map((one) => one !== null))).toEqual([[false, true]]);
});

test("of three noodles each column is headed by a number that is told", () => {
  const { answer } = compared({}, { salt: "2 %" }, { salt: "3 %" });
  const [blocks] = answer.report().sections.map((section) => section.blocks);
  const [table, legend] = blocks ?? [];
  expect(table?.kind === "table" && table.columns.map(({ label }) => label)).toEqual([
    "ingredient",
    "1",
    "2",
    "2 less 1",
    "3",
    "3 less 1",
  ]);
  expect(legend?.kind === "text" && legend.lines).toEqual(["1: noodle 1.", "2: noodle 2.", "3: noodle 3."]);
});

describe("two lines of one name", () => {
  const flour = (protein: string, amount: string) => ({
    name: "mill flour",
    amount,
    figures: { protein, moisture: "14 %", proteinUncertainty: "0.3 %", moistureUncertainty: "0.2 %" },
  });
  const twice = {
    flours: [flour("12 %", "60 %"), flour("10 %", "40 %")],
    alkali: [
      { name: "sodium carbonate", amount: "0.6 %" },
      { name: "sodium carbonate", amount: "0.3 %" },
    ],
    batch: { bowls: 80, rawWeight: "130 g" },
  };
  const { value, noodles } = compared(twice, {
    ...twice,
    flours: [flour("12 %", "70 %"), flour("10 %", "30 %")],
  });

  test("are two lines of every table, with the weights of the batch", () => {
    expect(value.formula.filter(({ label }) => label === "mill flour").map(({ figures }) => figures)).toMatchObject([
      [{ value: "60" }, { value: "70" }],
      [{ value: "40" }, { value: "30" }],
    ]);
    const loads = noodles.map((noodle) => {
      const batch = askBatch(noodle);
      return batch.ok ? batch.value.lines.map(({ load }) => load.value) : [];
    });
    expect(value.loads.map(({ figures }) => figures[0]?.value)).toEqual(loads[0]);
    expect(value.loads.map(({ figures }) => figures[1]?.value)).toEqual(loads[1]);
    expect(value.bowls.length).toBe(value.loads.length);
  });

  test("are the same two lots in a noodle beside itself: no error tells it from itself", () => {
    const scales = [{ division: "0.1 g", error: "0.000001 g" }];
    const alike = { ...twice, flours: [flour("12 %", "60 %"), flour("12 %", "40 %")], scales };
    const [protein] = compared(alike, alike).value.ranges;
    const range = protein?.differences[0]?.range;
    // no more than the microgram that each weighing is off
    expect(Number(range?.low)).toBeCloseTo(0, 6);
    expect(Number(range?.high)).toBeCloseTo(0, 6);
  });
});

test("no name is changed for the words that it shares with the tables", () => {
  const flours = [
    { name: "onion in a bowl flour", amount: "50 %", figures: { kind: "flour", moisture: "14 %" } },
    { name: "sauce in the batch flour", amount: "50 %", figures: { kind: "flour", moisture: "14 %" } },
  ];
  const bowls = { flours, batch: { bowls: 80, rawWeight: "130 g" } };
  const { value, answer } = compared(bowls, bowls);
  const names = flours.map(({ name }) => name);
  for (const lines of [value.formula, value.loads, value.bowls])
    expect(lines.slice(0, 2).map(({ label }) => label)).toEqual(names);
  for (const { id, blocks } of answer.report().sections) {
    if (id !== "formula" && id !== "loads" && id !== "bowls") continue;
    const [table] = blocks;
    expect(table?.kind === "table" && table.rows.slice(0, 2).map(({ cells }) => cells[0]?.text)).toEqual(names);
  }
});
