import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Batch } from "../../../packages/core/src/batch/batch.ts";
import type { StockRemedy } from "../../../packages/core/src/batch/remedy.ts";
import { dec, HUNDRED, sum } from "../../../packages/core/src/number/decimal.ts";
import type { Written } from "../formula/worked-out.ts";
import { lineOf, planned } from "./planned.ts";

const oneGram = [{ name: "scale", division: "1 g" }];
const soda: Partial<Written> = { alkali: [{ name: "sodium carbonate", amount: "1 %" }], salt: "0 %", scales: oneGram };

const stocksOf = (batch: Batch): readonly StockRemedy[] =>
  batch.remedies.filter((remedy): remedy is StockRemedy => remedy.kind !== "finer scale");

describe("what is too little for the scale", () => {
  it("is nothing where rounding stays within the tolerance", () => {
    const batch = planned({ ...soda, batch: { flour: "5 kg" } });
    // half of 1 g in 50 g is 1 %, the tolerance
    expect(lineOf(batch, "alkali.1").nearest.value).toBe("1");
    expect(batch.remedies).toEqual([]);
    expect(batch.withStocks).toBeUndefined();
  });

  it("becomes a stock solution where it dissolves", () => {
    const batch = planned({ ...soda, batch: { flour: "1 kg" } });
    const [stock] = stocksOf(batch);
    expect(stock).toMatchObject({
      kind: "stock solution",
      // at least 50 g: half of 1 g is 1 % of that
      ingredient: { value: "50" },
      thinner: { value: "950" },
      strength: { value: "5" },
      perLoad: { value: "200" },
      lasts: { value: "5" },
    });
    expect(batch.withStocks?.map(({ name, mass }) => [name, mass.value])).toEqual([
      ["bread flour", "1000"],
      ["tap water", "170"],
      ["stock solution of sodium carbonate", "200"],
      ["table salt", "0"],
    ]);
  });

  it("becomes a premix with flour where it is dry and does not dissolve", () => {
    const batch = planned({
      salt: "0 %",
      ingredients: [{ name: "cornstarch", amount: "2 %" }],
      batch: { flour: "1 kg" },
    });
    const [premix] = stocksOf(batch);
    expect(premix).toMatchObject({ kind: "premix", strength: { value: "25" }, carrier: { line: { id: "flour.1" } } });
  });

  it.each([
    ["is moist", { salt: "0 %", ingredients: [{ name: "whole egg", amount: "2 %" }], batch: { flour: "1 kg" } }],
    ["is for dusting", { salt: "0 %", dusting: { name: "cornstarch", amount: "2 %" }, batch: { flour: "1 kg" } }],
    ["finds too little water to dissolve in", { ...soda, water: { tap: "0.1 %" }, batch: { flour: "1 kg" } }],
    ["is the flour itself", { salt: "0 %", water: { tap: "100 %" }, batch: { flour: "20 g" } }],
  ] satisfies readonly (readonly [string, Partial<Written>])[])("needs a finer scale where it %s", (_, written) => {
    const batch = planned(written);
    expect(batch.remedies.map(({ kind }) => kind)).toContain("finer scale");
    for (const remedy of batch.remedies) {
      if (remedy.kind !== "finer scale") throw new Error(`${remedy.kind} of ${remedy.weighed.line.name}`);
      const { exact } = remedy.weighed;
      // half of that division is just the tolerance
      expect(dec(remedy.division.value).div(2).times(HUNDRED).div(exact.value).toDecimalPlaces(12).toString()).toBe(
        "1",
      );
    }
  });

  it("goes by the tolerance of the kitchen", () => {
    expect(planned({ ...soda, batch: { flour: "1 kg" }, weighingTolerance: "5 %" }).remedies).toEqual([]);
    expect(planned({ ...soda, batch: { flour: "5 kg" }, weighingTolerance: "0.5 %" }).remedies).toHaveLength(1);
  });
});

const share = (least: number, most: number) =>
  fc.integer({ min: least * 100, max: most * 100 }).map((n) => `${n / 100} %`);

const smallBatch = fc.record({
  flour: fc.integer({ min: 300, max: 6000 }).map((grams) => `${grams} g`),
  tap: share(20, 45),
  alkali: fc.array(fc.tuple(fc.constantFrom("sodium carbonate", "potassium carbonate"), share(0.05, 2)), {
    minLength: 1,
    maxLength: 3,
  }),
  salt: share(0, 2),
  starch: share(0.1, 3),
  division: fc.constantFrom("0.1 g", "0.5 g", "1 g", "5 g", "0.1 oz"),
  tolerance: fc.constantFrom("0.5 %", "1 %", "2 %", "5 %"),
  loads: fc.integer({ min: 1, max: 6 }),
});

describe("stocks and premixes", () => {
  it("deliver the need within the tolerance, last for the batch, and leave nothing negative", () => {
    let stocks = 0;
    fc.assert(
      fc.property(smallBatch, (one) => {
        const batch = planned({
          water: { tap: one.tap },
          alkali: one.alkali.map(([name, amount]) => ({ name, amount })),
          salt: one.salt,
          ingredients: [{ name: "cornstarch", amount: one.starch }],
          scales: [{ division: one.division }],
          weighingTolerance: one.tolerance,
          batch: { flour: `${Number.parseInt(one.flour, 10) * one.loads} g` },
          mixer: { largest: one.flour, of: "flour" },
        });
        const made = stocksOf(batch);
        for (const { weighed, strength, perLoad, ingredient, thinner, lasts } of made) {
          stocks += 1;
          const delivered = dec(perLoad.value).times(strength.value).div(HUNDRED);
          const off = delivered.div(weighed.exact.value).minus(1).abs().times(HUNDRED);
          expect(off.lte(dec(batch.tolerance).plus("1e-20"))).toBe(true);
          expect(dec(weighed.division).div(2).times(HUNDRED).div(ingredient.value).lte(batch.tolerance)).toBe(true);
          expect(dec(lasts.value).gte(batch.loads.count.value)).toBe(true);
          for (const mass of [ingredient, thinner, perLoad]) expect(dec(mass.value).gt(0)).toBe(true);
        }
        for (const { mass } of batch.withStocks ?? []) expect(dec(mass.value).isNegative()).toBe(false);
        if (made.length === 0) return;
        const weights = batch.withStocks;
        expect(weights).toBeDefined();
        const division = dec(batch.lines[0]?.division ?? 0);
        const off = sum((weights ?? []).map(({ mass }) => dec(mass.value)))
          .minus(batch.loadTotal.value)
          .abs();
        expect(off.lte(division.times(made.length + 2))).toBe(true);
      }),
      { numRuns: 150 },
    );
    expect(stocks).toBeGreaterThan(100);
  });

  it("stay clear in a fridge, each salt by its own limit", () => {
    const remedyFor = (formula: string) =>
      planned({
        water: { tap: "34 %" },
        alkali: [{ name: "salt of the tin", amount: "0.3 %", figures: { composition: { [formula]: "100 %" } } }],
        salt: "0 %",
        batch: { flour: "2 kg" },
        scales: oneGram,
      }).remedies[0];
    const strengthOf = (formula: string): string | undefined => {
      const remedy = remedyFor(formula);
      return remedy?.kind === "stock solution" ? dec(remedy.strength.value).toFixed(1) : remedy?.kind;
    };
    expect(strengthOf("Na2CO3")).toBe("5.0");
    // 1.68 g Na2HPO4 in 100 g water at 0 °C (chemistry/solubility-tables.ts, its source there): 1.65 % by mass
    expect(Number(strengthOf("Na2HPO4"))).toBeLessThanOrEqual(2.5);
    // no table was found for K3PO4, so nobody can say that a stock of it stays clear
    expect(strengthOf("K3PO4")).toBe("finer scale");
  });

  it("keep the total of the load", () => {
    fc.assert(
      fc.property(smallBatch, (one) => {
        const batch = planned({
          water: { tap: one.tap },
          alkali: one.alkali.map(([name, amount]) => ({ name, amount })),
          salt: one.salt,
          scales: [{ division: one.division }],
          weighingTolerance: one.tolerance,
          batch: { flour: one.flour },
        });
        if (batch.withStocks === undefined) return;
        const division = dec(batch.lines[0]?.division ?? 0);
        const total = sum(batch.withStocks.map(({ mass }) => dec(mass.value)));
        // what a rounded dose is off in its salt, less than a division for each, may turn the rounding of the total
        expect(total.minus(batch.loadTotal.value).abs().lte(division)).toBe(true);
      }),
      { numRuns: 100 },
    );
  });

  it("share the water of a load, and what finds none left needs a finer scale", () => {
    const batch = planned({
      water: { tap: "8 %" },
      alkali: [
        { name: "sodium carbonate", amount: "0.3 %" },
        { name: "potassium carbonate", amount: "0.3 %" },
      ],
      salt: "0 %",
      batch: { flour: "1 kg" },
      scales: oneGram,
    });
    expect(batch.remedies.map(({ kind }) => kind)).toEqual(["stock solution", "finer scale"]);
    expect(batch.withStocks?.every(({ mass }) => !dec(mass.value).isNegative())).toBe(true);
  });
});
