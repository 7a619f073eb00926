import { describe, expect, it } from "vitest";
import { dec } from "../../../packages/core/src/number/decimal.ts";
import { noteCodesOf } from "../formula/worked-out.ts";
import { lineOf, plan, planned } from "./planned.ts";

const bench = { name: "bench scale", division: "5 g", capacity: "15 kg" };
const fine = { name: "fine scale", division: "0.1 g", capacity: "500 g" };

describe("scales", () => {
  it("are the finest that take the weight at once", () => {
    const batch = planned({ batch: { flour: "10 kg" }, scales: [bench, fine] });
    expect(batch.lines.map(({ line, scale, load }) => [line.id, scale, load.value])).toEqual([
      ["flour.1", "bench scale", "10000"],
      ["water", "bench scale", "3600"],
      ["salt", "fine scale", "100"],
    ]);
  });

  it("take what they cannot take at once in lots", () => {
    const outcome = plan({ batch: { flour: "40 kg" }, scales: [bench, fine] });
    if (!outcome.ok) throw new Error("refused");
    expect(lineOf(outcome.value, "flour.1")).toMatchObject({ scale: "bench scale", lots: 3 });
    expect(lineOf(outcome.value, "water")).toMatchObject({ scale: "bench scale", lots: 1 });
    expect(noteCodesOf(outcome)).toContain("weighing.lots");
  });

  it("are named after their division where nobody named them", () => {
    const batch = planned({ batch: { flour: "1 kg" }, scales: [{ division: "0.5 g" }] });
    expect(batch.lines[0]).toMatchObject({ scale: "scale to 0.5 g", division: "0.5", unit: "g", lots: 1 });
  });

  it("are assumed, with a note, where the spec names none", () => {
    const metric = plan({ batch: { flour: "1 kg" } });
    const us = plan({ batch: { flour: "2 lb" } }, true);
    expect([noteCodesOf(metric), noteCodesOf(us)]).toEqual([["scales.assumed"], ["scales.assumed"]]);
    expect(metric.ok && metric.value.lines[0]).toMatchObject({ unit: "g", division: "1" });
    expect(us.ok && us.value.lines[0]).toMatchObject({ unit: "oz", division: "2.8349523125" });
    expect(noteCodesOf(plan({ batch: { flour: "1 kg" }, scales: [bench] }))).toEqual([]);
  });

  it.each([
    ["g", "1 g"],
    ["g", "0.01 kg"],
    ["oz", "0.1 oz"],
    ["oz", "0.01 lb"],
  ])("show %s with a division of %s", (unit, division) => {
    expect(planned({ batch: { flour: "5 kg" }, scales: [{ division }] }).lines.map((line) => line.unit)).toEqual([
      unit,
      unit,
      unit,
    ]);
  });
});

describe("weights", () => {
  it("are whole divisions that add up to the load, and loads that add up to the batch", () => {
    const batch = planned({
      flours: [
        { name: "bread flour", amount: "66.7 %" },
        { name: "cake flour", amount: "rest" },
      ],
      alkali: [{ name: "sodium carbonate", amount: "0.87 %" }],
      batch: { bowls: 37, rawWeight: "128 g" },
      mixer: { largest: "2 kg" },
      scales: [{ division: "2 g" }],
    });
    expect(batch.loads.count.value).toBe("3");
    // 37 × 128 ÷ 3 = 1578.67 g of dough in a load
    expect(batch.loadTotal.value).toBe("1578");
    expect(batch.batchTotal.value).toBe("4734");
    for (const { load, batch: all } of batch.lines) {
      expect(dec(load.value).mod(2).toString()).toBe("0");
      expect(dec(load.value).times(3).toString()).toBe(all.value);
    }
  });

  it("show what rounding does to water, salt and alkali", () => {
    const batch = planned({
      alkali: [{ name: "sodium carbonate", amount: "1 %" }],
      batch: { flour: "333 g" },
    });
    // 119.88 → 120 g water, 3.33 → 3 g salt and soda; in all 459.54 → 460 g, which the flour makes up: 333 → 334 g
    expect(batch.lines.map(({ load }) => load.value)).toEqual(["334", "120", "3", "3"]);
    const shown = batch.rounding.map(({ id, asked, weighed, difference }) => [
      id,
      ...[asked, weighed, difference].map(({ value }) => dec(value).toFixed(3)),
    ]);
    expect(shown).toEqual([
      ["water", "36.002", "35.930", "-0.072"],
      ["salt", "1.000", "0.898", "-0.102"],
      ["alkali", "1.000", "0.898", "-0.102"],
    ]);
  });

  it("say how far rounding alone may be off", () => {
    const batch = planned({ batch: { flour: "500 g" } });
    // half of 1 g in 5 g of salt
    expect(lineOf(batch, "salt").worst.value).toBe("10");
    expect(planned({ salt: "0 %", batch: { flour: "500 g" } }).lines[2]?.worst.value).toBe("0");
  });

  it("keep dusting starch out of the dough", () => {
    const batch = planned({ dusting: { name: "cornstarch", amount: "2 %" }, batch: { flour: "1 kg" } });
    expect(batch.dusting?.load.value).toBe("20");
    expect(batch.loadTotal.value).toBe("1370");
  });
});
