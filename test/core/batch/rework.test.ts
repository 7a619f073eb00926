import { askCard, readNoodleData, told } from "@noodlewright/core";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nutritionOf } from "#core/batch/nutrition.ts";
import { loadWeights } from "#core/card/card-weights.ts";
import { batchTolerance } from "#core/explore/spec-tolerance.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { dec, sum } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { noteCodesOf, type Written, workedOut } from "../formula/worked-out.ts";
import { answered, codesOf } from "../told-of.ts";
import { costed } from "./costed.ts";
import { plain, plan, planned } from "./planned.ts";

const alkali = [{ name: "sodium carbonate", amount: "1 %" }];
const of = (amount: string, more: Partial<Written> = {}): Partial<Written> => ({ alkali, rework: { amount }, ...more });

describe("rework of the same dough", () => {
  it("leaves the formula, its water and its allergens as they are", () => {
    const without = workedOut({ ...plain, alkali }).formula;
    expect(workedOut({ ...plain, ...of("20 %") }).formula).toEqual(without);
    expect(without.water.tap.value).toBe("36");
  });

  it("counts in a mixer's limit of flour, which a note says, and the card by the mixer tells its rule", () => {
    const noodle = (mixer: object) =>
      answered(readNoodleData({ ...plain, name: "class noodle", batch: { dough: "10 kg" }, mixer, ...of("8 %") }));
    const said = (mixer: object) => noodle(mixer).notes.map(told).join();
    const ofFlour = { largest: "25 kg", of: "flour" };
    expect(said(ofFlour)).toContain("limits of flour count the flour in it as well");
    expect(said({ largest: "25 kg" })).not.toContain("limits of flour");
    expect(answered(askCard(noodle(ofFlour), { date: "2026-11-26" })).card.notes.join()).toMatch(
      /how old rework may be .* covered and cold, and label it/u,
    );
  });

  it("is a share of the dough in the mixer, or a mass in the whole batch", () => {
    const share = planned(of("8 %", { batch: { dough: "10 kg" } }));
    // 8 % of 10 kg; 9.2 kg of new dough is on 138 parts: 6.667 kg of flour
    expect(share.rework?.mass.value).toBe("800");
    expect(dec(share.loads.flour.value).toFixed(1)).toBe("6666.7");
    const mass = planned(of("1.2 kg", { batch: { dough: "10 kg" }, mixer: { largest: "5 kg" } }));
    expect([mass.loads.count.value, mass.rework?.mass.value, mass.rework?.batch.value]).toEqual(["2", "600", "1200"]);
    expect(dec(mass.rework?.share.value ?? 0).toFixed(6)).toBe("12.000000");
  });

  it("takes no more than there is of it, however coarse the scale", () => {
    // 5 kg over three loads is 1666.7 g each: 1680 g would be 40 g more than there is
    const written = { batch: { dough: "30 kg" }, mixer: { largest: "10 kg" }, scales: [{ division: "20 g" }] };
    expect(planned(of("5 kg", written)).rework?.batch.value).toBe("4980");
    expect(planned(of("17.15 %", written)).rework?.mass.value).toBe("1720");
  });

  it("comes beside the flour that a batch is stated by", () => {
    const batch = planned(of("8 %", { batch: { flour: "9.2 kg" } }));
    // 9.2 kg of flour make 12.696 kg of new dough, 92 % of what is in the mixer
    expect([batch.target.dough.value, batch.loads.flour.value]).toEqual(["13800", "9200"]);
    const written = planned(of("100 g", { flours: [{ name: "bread flour", amount: "500 g" }] }));
    expect([written.target.dough.value, written.loads.flour.value]).toEqual(["790", "500"]);
  });

  it("fills the mixer with the rest, within its limit", () => {
    const batch = planned(of("10 %", { batch: { bowls: 100, rawWeight: "100 g" }, mixer: { largest: "5 kg" } }));
    expect([batch.loads.count.value, batch.rework?.mass.value, batch.loadTotal.value]).toEqual(["2", "500", "5000"]);
  });

  it("adds up with all else in a load and in the batch, in the list with a stock as well", () => {
    always(
      40,
      [
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 2000, max: 30_000 }),
        fc.constantFrom("0.1 g", "1 g", "5 g", "0.1 oz"),
      ],
      (percent, dough, division) => {
        const batch = planned(
          of(`${percent} %`, { batch: { dough: `${dough} g` }, mixer: { largest: "8 kg" }, scales: [{ division }] }),
        );
        const { lines, rework, withStock, loadTotal, batchTotal, loads } = batch;
        const load = [...lines.map((line) => line.load.value), rework?.mass.value ?? 0].map(dec);
        expect(sum(load).eq(loadTotal.value)).toBe(true);
        expect(dec(loadTotal.value).times(loads.count.value).eq(batchTotal.value)).toBe(true);
        expect(dec(loadTotal.value).lte(8000)).toBe(true);
        const step = dec(lines[0]?.division ?? 0);
        expect(dec(loadTotal.value).minus(loads.dough.value).abs().lte(step.plus("1e-15"))).toBe(true);
        if (withStock === undefined) return;
        expect(withStock.map(({ name }) => name)).toContain("rework (the same dough)");
        const stocked = sum(withStock.map(({ mass }) => dec(mass.value)));
        expect(stocked.minus(loads.dough.value).abs().lte(step.plus("1e-15"))).toBe(true);
      },
    );
  });

  it("stands on the card with its weight", () => {
    const batch = planned(of("8 %", { batch: { dough: "10 kg" } }));
    const made = loadWeights(batch, { shown: [1], of: 1 });
    expect(made.rows.find(({ name }) => name.startsWith("rework"))?.weight).toBe("800");
  });

  it("costs nothing anew, and makes the noodles so much cheaper", () => {
    const prices = { "bread flour": "1 EUR/kg" };
    const whole = costed({ ...of("0 %", { prices }) });
    const less = costed({ ...of("8 %", { prices }) });
    const ratio = dec(less.kilogram.value).div(whole.kilogram.value);
    // weights to the gram of some 7 kg of flour
    expect(ratio.minus("0.92").abs().lt("0.0002")).toBe(true);
    expect(less.shopping.lines.map(({ name }) => name)).not.toContain("rework (the same dough)");
  });

  it("is in the weight of a bowl that errors are told of", () => {
    const written = of("10 %", { batch: { bowls: 40, rawWeight: "130 g" }, scales: [{ division: "1 g" }] });
    const { spec, formula } = workedOut({ ...plain, ...written });
    const { outputs } = batchTolerance(spec, formula, planned(written), { draws: 200 });
    const bowl = outputs.find(({ figure }) => figure.unit === "g")?.figure;
    expect(Math.abs(Number(bowl?.value) - 130)).toBeLessThan(0.1);
  });

  it("leaves what 100 g of the dough holds", () => {
    const nutrition = (written: Partial<Written>) => {
      const { spec, formula } = workedOut({ ...plain, ...written });
      return answered(nutritionOf(spec, formula, { rules: "EU" })).amounts;
    };
    expect(nutrition(of("8 %"))).toEqual(nutrition({ alkali }));
  });

  it("is held to the share that the kitchen sets itself, and said to be its own rule otherwise", () => {
    const held = (amount: string, dough: string) =>
      plan({ rework: { amount, most: "10 %", oldest: "1 d" }, batch: { dough } });
    expect(codesOf(held("1.2 kg", "10 kg"))).toEqual(["rework.beyond-own-limit"]);
    expect(codesOf(held("10 %", "10 kg"))).toEqual([]);
    const notes = formulaOf({ name: "test", ...plain, rework: { amount: "8 %", most: "10 %", oldest: "1 d" } });
    expect(noteCodesOf(notes)).toContain("rework.rule");
    const texts = notes.ok ? notes.notes.map(told).join(" ") : "";
    expect(texts).toContain("the kitchen's own rule: here at most 10 % of the dough and no older than 1 d");
  });
});
