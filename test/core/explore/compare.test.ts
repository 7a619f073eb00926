import { askBatch, askCompare, askTolerance, readNoodleData } from "@noodlewright/core";
import type { Comparison } from "@noodlewright/core/answers";
import { describe, expect, test } from "vitest";
import { recalculated } from "#core/figure/recalculate.ts";

const written = {
  name: "class noodle",
  flours: [
    { name: "bread flour", amount: "80 %" },
    { name: "rye flour", amount: "20 %" },
  ],
  water: { added: "36 %" },
  alkali: [{ name: "sodium carbonate", amount: "1 %" }],
  salt: "1 %",
  batch: { dough: "10 kg" },
};

function noodleOf(changes: object) {
  const reading = readNoodleData({ ...written, ...changes });
  if (!reading.ok) throw new Error("the noodle cannot be read");
  return reading.value;
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

  test("an ingredient that a noodle has not is none of it, and a sum that it has not is left open", () => {
    expect(lineOf(value.formula, "rye flour")).toEqual({ figures: ["20", "20", "0"], differences: ["0", "-20"] });
    expect(lineOf(value.formula, "bread flour").differences).toEqual(["0", "20"]);
    expect(lineOf(value.sums, "alkalinity M").figures?.[2]).toBeUndefined();
  });

  test("the weights are those of each batch, and the bowl is left out where none is stated", () => {
    const loads = noodles.map((noodle) => {
      const batch = askBatch(noodle);
      return batch.ok ? batch.value.lines.find(({ line }) => line.role === "water")?.load.value : undefined;
    });
    expect(lineOf(value.loads, "tap water in a load").figures).toEqual(loads);
    expect(value.bowls).toEqual([]);
  });

  test("a range is told apart where it has nothing in common with that of the first", () => {
    const ranges = noodles.map((noodle) => {
      const tolerance = askTolerance(noodle);
      const water = tolerance.ok
        ? tolerance.value.outputs.find(({ figure }) => figure.id.includes("water"))
        : undefined;
      return water?.figure.range;
    });
    const line = value.ranges.find(({ label }) => label === "dough water");
    const [first, ...others] = ranges;
    const apart = others.map(
      (range) => Number(range?.low) > Number(first?.high) || Number(range?.high) < Number(first?.low),
    );
    expect(line?.apart).toEqual(apart);
    const far = compared({}, { water: { added: "45 %" } }).value.ranges;
    expect(far.find(({ label }) => label === "dough water")?.apart).toEqual([true]);
    expect(far.find(({ label }) => label.startsWith("protein"))?.apart).toEqual([false]);
  });

  test("the graph works every figure out again", () => {
    for (const [id, { value: before }] of Object.entries(recalculated(value.graph, {}))) {
      expect([id, before]).toEqual([id, value.graph[id]?.value]);
    }
  });

  test("a noodle without a batch is compared by its formula, with a note", () => {
    const { value: part, answer: told } = compared({}, { batch: undefined });
    expect(lineOf(part.sums, "added water").differences).toEqual(["0"]);
    expect(told.notes.map(({ code }) => code)).toContain("compare.no-batch");
    expect(answer.notes.map(({ code }) => code)).not.toContain("compare.no-batch");
  });

  test("one noodle alone is refused", () => {
    expect(askCompare([{ name: "alone", noodle: noodleOf({}) }])).toMatchObject({ ok: false });
  });
});
