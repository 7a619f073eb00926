import { askBatch, askCost, askWorkbook, readNoodle } from "@noodlewright/core";
import type { Batch } from "@noodlewright/core/answers";
import { type Graph, recalculated } from "@noodlewright/core/figure";
import { describe, expect, it } from "vitest";
import { dec } from "#core/number/decimal.ts";
import { listed, noteCodesOf } from "../formula/worked-out.ts";
import { answered, toldOf } from "../told-of.ts";
import { lineOf, plan, planned } from "./planned.ts";

/** What weighing makes of water and salts: asked, weighed, change, and change in %. */
const shown = ({ rounding }: Batch) =>
  rounding.map(({ id, asked, weighed, difference, change }) => [
    id,
    ...[asked, weighed, difference].map(({ value }) => dec(value).toFixed(3)),
    dec(change.value).toFixed(1),
  ]);

const bench = { name: "bench scale", division: "5 g", capacity: "15 kg" };
const fine = { name: "fine scale", division: "0.1 g", capacity: "500 g" };

describe("scales", () => {
  it("of which the finest states no capacity are told of", () => {
    const codes = (finest: { readonly division: string; readonly capacity?: string }) =>
      noteCodesOf(plan({ batch: { flour: "10 kg" }, scales: [{ division: "1 g" }, finest] }));
    expect(codes({ division: "0.1 g" })).toContain("scales.capacity-unknown");
    expect(codes({ division: "0.1 g", capacity: "500 g" })).not.toContain("scales.capacity-unknown");
  });

  it("that were chosen by the weighing tolerance are told of where that changes", () => {
    const { graph } = planned({ batch: { flour: "4 kg" }, scales: [{ division: "5 g" }, { division: "0.1 g" }] });
    const changed = recalculated(graph, { "weighing.tolerance": "0.2" });
    const ids = changed.ok ? changed.notes.flatMap(({ facts }) => ("ids" in facts ? facts.ids : [])) : [];
    expect(ids).toContain("salt.division");
  });

  it("weigh on the coarsest of unknown capacity that shows a weight to within the tolerance, and finer where needed", () => {
    const [coarse, exact] = [{ division: "5 g" }, { division: "0.1 g" }];
    const on = (scales: readonly { readonly division: string; readonly capacity?: string }[], more: object = {}) => {
      const { lines } = planned({ batch: { flour: "4 kg" }, scales: [...scales], ...more });
      return lines.map(({ scale }) => scale);
    };
    // 4 kg of flour, 1440 g of water, 40 g of salt: 5 g is 12.5 % of the salt
    expect(on([coarse, exact])).toEqual(["scale to 5 g", "scale to 5 g", "scale to 0.1 g"]);
    expect(on([exact, coarse], { weighingTolerance: "0.2 %" })).toEqual([
      "scale to 5 g",
      "scale to 0.1 g",
      "scale to 0.1 g",
    ]);
    expect(on([{ ...coarse, capacity: "2 kg" }, exact])).toEqual(["scale to 0.1 g", "scale to 5 g", "scale to 0.1 g"]);
    expect(on([coarse, { ...exact, capacity: "2 kg" }])).toEqual(["scale to 5 g", "scale to 0.1 g", "scale to 0.1 g"]);
  });

  it("have nothing to do with what is written at 0 %, which is no egg to be careful with and nothing to price", () => {
    const none = { name: "whole egg", amount: "0 %" };
    const spec = {
      name: "test",
      flours: listed({ "barley flour": "0 %", "bread flour": "100 %" }),
      water: { tap: "36 %" },
      salt: "0 %",
      ingredients: [none],
      dusting: { ...none, name: "cornstarch" },
      prices: { "barley flour": "2 EUR/kg", "bread flour": "1 EUR/kg" },
      batch: { flour: "10 kg" },
    };
    const noodle = answered(readNoodle(spec));
    const cost = answered(askCost(noodle));
    const rows = answered(askWorkbook(noodle)).sheets.flatMap((sheet) => sheet.rows);
    const inputs = rows.filter((cells) => cells.some((cell) => cell?.role === "input"));
    const [weighed, other] = [["flour.2", "water"], /egg|barley flour|cornstarch/iu];
    const batch = askBatch(noodle);
    expect(answered(batch).lines.map(({ line }) => line.id)).toEqual(weighed);
    expect(cost.lines.map((one) => one.weighed.line.id)).toEqual(weighed);
    expect(cost.unpriced).toEqual([]);
    const { sections, cautions } = batch.ok ? batch.report() : {};
    expect(JSON.stringify([sections, cautions])).not.toMatch(other);
    expect(cautions).toHaveLength(1);
    expect(inputs.length).toBeGreaterThan(3);
    expect(JSON.stringify(inputs)).not.toMatch(other);
  });

  it("are the finest that take the weight at once", () => {
    const batch = planned({ batch: { flour: "10 kg" }, scales: [bench, fine] });
    expect(batch.lines.map(({ line, scale, load }) => [line.id, scale, load.value])).toEqual([
      ["flour.1", "bench scale", "10000"],
      ["water", "bench scale", "3600"],
      ["salt", "fine scale", "100"],
    ]);
  });

  it("are one figure each, and a change of one tells of every weight that rests on it", () => {
    const divisions = (graph: Graph) => Object.keys(graph).filter((id) => id.endsWith(".division"));
    const one = planned({ batch: { flour: "10 kg" }, scales: [{ division: "1 g" }] });
    expect(divisions(one.graph)).toEqual(["scale.1.division"]);
    for (const { graph, lines } of [one, planned({ batch: { flour: "10 kg" }, scales: [bench, fine] })]) {
      const changed = recalculated(graph, { "scale.1.division": "2" });
      const found = changed.ok ? changed.notes.flatMap(({ facts }) => ("ids" in facts ? facts.ids : [])) : [];
      expect(found).toEqual(expect.arrayContaining(lines.map(({ load }) => load.id)));
    }
  });

  it("leave of what there is a part that is a figure", () => {
    const written = { batch: { have: { name: "salt", amount: "9.7 g" } }, scales: [{ division: "1 g" }] };
    const { graph } = planned(written);
    expect(graph["batch.have-unused"]).toMatchObject({
      value: "0.5",
      working: { kind: "procedure", on: ["batch.have"] },
    });
  });

  it("take what they cannot take at once in lots", () => {
    const outcome = plan({ batch: { flour: "40 kg" }, scales: [bench, fine] });
    expect(lineOf(answered(outcome), "flour.1")).toMatchObject({ scale: "bench scale", lots: 3 });
    expect(lineOf(answered(outcome), "water")).toMatchObject({ scale: "bench scale", lots: 1 });
    expect(noteCodesOf(outcome)).toContain("weighing.lots");
  });

  it("are asked for as fine as they have to be in the unit that they show, beyond those that are sold, too", () => {
    // 0.4 % of 7.05 oz is 0.0282 oz, of which half of 0.0006 oz is 1.06 % and half of 0.0005 oz 0.89 %
    const written = { alkali: [{ name: "potassium carbonate", amount: "0.4 %" }], batch: { flour: "7.05 oz" } };
    const dry = planned({ ...written, scales: [{ division: "0.01 oz" }] }).remedies.stock?.dry;
    expect(dry && dec(dry.value).div("28.349523125").toString()).toBe("0.0005");
    expect(planned({ ...written, scales: [{ division: "0.0005 oz" }] }).remedies.tooLittle).toEqual([]);
  });

  it("of two systems are refused by their names, with the reason", () => {
    const scales = [{ name: "pocket scale", division: "0.01 g" }, { division: "0.1 oz" }];
    expect(toldOf(plan({ batch: { flour: "4 kg" }, scales }))).toMatchObject([
      { code: "scales.mixed-systems", found: "the pocket scale in grams beside the scale to 0.1 oz in ounces" },
    ]);
  });

  it("are named after their division where nobody named them", () => {
    const batch = planned({ batch: { flour: "1 kg" }, scales: [{ division: "0.5 g" }] });
    expect(batch.lines[0]).toMatchObject({ scale: "scale to 0.5 g", division: "0.5", unit: "g", lots: 1 });
  });

  it("are said, first of all, to show nothing of what the dough asks for", () => {
    const notes = (salt: string) => {
      const outcome = plan({ salt, batch: { flour: "200 g" }, scales: [{ division: "5 g" }] });
      return outcome.ok && outcome.notes.filter(({ loud }) => loud).map(({ code, facts }) => [code, facts]);
    };
    expect([notes("1 %"), notes("2 %"), notes("0 %")]).toEqual([
      [["weighing.nothing", { names: ["table salt"], stock: false }]],
      [],
      [],
    ]);
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
    const { lines } = planned({ batch: { flour: "5 kg" }, scales: [{ division }] });
    expect(new Set(lines.map((line) => line.unit))).toEqual(new Set([unit]));
  });
});

describe("weights", () => {
  it("are whole divisions that add up to the load, and loads that add up to the batch", () => {
    const batch = planned({
      flours: listed({ "bread flour": "66.7 %", "cake flour": "rest" }),
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
      weighingTolerance: "50 %",
    });
    // 119.88 → 120 g water, 3.33 → 3 g salt and soda; in all 459.54 → 460 g, which the flour makes up: 333 → 334 g
    expect(batch.lines.map(({ load }) => load.value)).toEqual(["334", "120", "3", "3"]);
    expect(shown(batch)).toEqual([
      ["water", "36.002", "35.930", "-0.072", "-0.2"],
      ["alkali.1", "1.000", "0.898", "-0.102", "-10.2"],
      ["salt", "1.000", "0.898", "-0.102", "-10.2"],
      // 2 × 1000 ÷ 105.988 meq in a gram of sodium carbonate
      ["alkalinity-m", "18.870", "16.949", "-1.921", "-10.2"],
    ]);
  });

  it("show each salt, also where the sum of the salts stays", () => {
    const batch = planned({
      flours: [{ name: "bread flour", amount: "200 g" }],
      alkali: listed({ "sodium carbonate": "2.4 g", "potassium carbonate": "1.6 g" }),
      weighingTolerance: "50 %",
    });
    expect(shown(batch)).toEqual([
      ["water", "36.002", "36.002", "0.000", "0.0"],
      ["alkali.1", "1.200", "1.000", "-0.200", "-16.7"],
      ["alkali.2", "0.800", "1.000", "0.200", "25.0"],
      ["salt", "1.000", "1.000", "0.000", "0.0"],
      ["alkali", "2.000", "2.000", "0.000", "0.0"],
      ["alkalinity-m", "34.221", "33.341", "-0.880", "-2.6"],
      ["potassium-share", "40.000", "50.000", "10.000", "25.0"],
    ]);
  });

  it("say how far each is off as printed, and how near the scale tells it", () => {
    const batch = planned({ batch: { flour: "540 g" } });
    // 5.4 g of salt as 5 g; half of 1 g in 5.4 g
    expect(dec(lineOf(batch, "salt").off.value).toFixed(2)).toBe("-7.41");
    expect(dec(lineOf(batch, "salt").nearest.value).toFixed(2)).toBe("9.26");
    const eggs = { water: { tap: "0 %" }, ingredients: [{ name: "whole egg", amount: "45 %" }] };
    expect(planned({ ...eggs, batch: { flour: "500 g" } }).lines[1]).toMatchObject({
      off: { value: "0" },
      nearest: { value: "0" },
    });
  });

  it("keep dusting starch out of the dough", () => {
    const batch = planned({ dusting: { name: "cornstarch", amount: "2 %" }, batch: { flour: "1 kg" } });
    expect(batch.dusting?.load.value).toBe("20");
    expect(batch.loadTotal.value).toBe("1370");
  });
});
