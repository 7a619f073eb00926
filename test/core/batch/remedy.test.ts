import type { Batch } from "@noodlewright/core/answers";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dec, HUNDRED, sum } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import type { Written } from "../formula/worked-out.ts";
import { listed } from "../formula/worked-out.ts";
import { lineOf, planned } from "./planned.ts";

const oneGram = [{ name: "scale", division: "1 g" }];
const soda: Partial<Written> = { alkali: [{ name: "sodium carbonate", amount: "1 %" }], salt: "0 %", scales: oneGram };

const withStock = (batch: Batch) => batch.withStock?.map(({ name, mass }) => [name, mass.value]);

describe("what is too little for the scale", () => {
  it("is nothing where rounding stays within the tolerance", () => {
    const batch = planned({ ...soda, batch: { flour: "5 kg" } });
    // half of 1 g in 50 g is 1 %, the tolerance
    expect(lineOf(batch, "alkali.1").nearest.value).toBe("1");
    expect(batch.remedies).toEqual({ tooLittle: [], finer: [] });
    expect(batch.withStock).toBeUndefined();
  });

  it("goes into one stock solution of all the salts, table salt with them", () => {
    const batch = planned({
      flours: [{ name: "bread flour", amount: "200 g" }],
      water: { tap: "72 g" },
      alkali: listed({ "sodium carbonate": "2.4 g", "potassium carbonate": "1.6 g" }),
      salt: "2 g",
      scales: oneGram,
    });
    // half of 1 g is 1 % of 50 g: 32 loads until the 1.6 g have become 50 g; 6 g of these salts stay clear in a dose of 70 g
    expect(batch.remedies.stock?.parts.map(({ name, mass }) => [name, mass.value])).toEqual([
      ["sodium carbonate", "77"],
      ["potassium carbonate", "51"],
      ["table salt", "64"],
      ["tap water", "2048"],
    ]);
    expect(batch.remedies.stock?.stock).toMatchObject({ perLoad: { value: "70" }, lasts: { value: "32" } });
    expect(batch.remedies.finer).toEqual([]);
    // 72 g of water and 6 g of salts, of which the stock brings 70 g
    expect(withStock(batch)).toEqual([
      ["bread flour", "200"],
      ["tap water", "8"],
      ["stock solution of the salts", "70"],
    ]);
  });

  it("may be weighed dry on a scale as they are sold", () => {
    const dry = (flour: string) => planned({ ...soda, batch: { flour } }).remedies.stock?.dry.value;
    // twice 1 % of 10 g, 26 g, 2.9 g and 1.5 g: 0.2, 0.52, 0.058 and 0.03 g at most
    expect(["1 kg", "2.6 kg", "290 g", "150 g"].map(dry)).toEqual(["0.1", "0.5", "0.05", "0.01"]);
  });

  it("is told what the load really gets with the stock in", () => {
    const batch = planned({ ...soda, batch: { flour: "1 kg" } });
    const compared = batch.rounding;
    const alkali = compared.find(({ id }) => id === "alkali.1");
    const { stock } = batch.remedies;
    const [gram] = stock?.stock.delivered ?? [];
    expect(Number(alkali?.weighed.value)).toBeCloseTo(Number(gram?.value) / 10, 10);
    expect(Math.abs(Number(alkali?.change.value))).toBeLessThanOrEqual(1);
    expect(compared.find(({ id }) => id === "water")?.change.value.slice(0, 4)).toBe("0");
  });

  it.each([
    ["is dry", { salt: "0 %", ingredients: [{ name: "cornstarch", amount: "2 %" }], batch: { flour: "1 kg" } }, "0.1"],
    ["is moist", { salt: "0 %", ingredients: [{ name: "whole egg", amount: "2 %" }], batch: { flour: "1 kg" } }, "0.1"],
    [
      "is for dusting",
      { salt: "0 %", dusting: { name: "cornstarch", amount: "2 %" }, batch: { flour: "1 kg" } },
      "0.1",
    ],
    ["finds too little water", { ...soda, water: { tap: "0.1 %" }, batch: { flour: "1 kg" } }, "0.1"],
    ["is the flour itself", { salt: "0 %", water: { tap: "100 %" }, batch: { flour: "20 g" } }, "0.1"],
  ] satisfies readonly (readonly [string, Partial<Written>, string])[])(
    "needs a finer scale where it %s",
    (_, written, division) => {
      const { remedies } = planned(written);
      expect(remedies.stock).toBeUndefined();
      expect(remedies.finer.map((one) => one.division.value)).toContain(division);
      for (const { division: finer, weighed } of remedies.finer) {
        // half of that division is within the tolerance of 1 %
        expect(dec(finer.value).times(50).div(weighed.exact.value).lte(1)).toBe(true);
        expect(dec(finer.value).lt(weighed.division)).toBe(true);
      }
    },
  );

  it("goes by the tolerance of the kitchen", () => {
    const small = (written: Partial<Written>) => planned({ ...soda, ...written }).remedies.tooLittle.length;
    expect(small({ batch: { flour: "1 kg" }, weighingTolerance: "5 %" })).toBe(0);
    expect(small({ batch: { flour: "5 kg" }, weighingTolerance: "0.5 %" })).toBe(1);
  });

  it("is what a weight gives way for the total by more than the tolerance", () => {
    const batch = planned({
      flours: listed({ "bread flour": "50 %", "cake flour": "50 %" }),
      water: { tap: "41 %" },
      salt: "0 %",
      scales: [{ division: "2 g" }],
      batch: { flour: "202 g" },
    });
    const moved = batch.lines.filter(({ off }) => dec(off.value).abs().gt(1)).map(({ line }) => line.id);
    expect(batch.remedies.tooLittle.map(({ line }) => line.id)).toEqual(expect.arrayContaining(moved));
  });
});

const share = (least: number, most: number) =>
  fc.integer({ min: least * 100, max: most * 100 }).map((n) => `${n / 100} %`);

const smallBatch = fc.record({
  flour: fc.integer({ min: 300, max: 6000 }).map((grams) => `${grams} g`),
  tap: share(20, 45),
  alkali: fc.array(fc.tuple(fc.constantFrom("sodium carbonate", "potassium carbonate"), share(0.05, 1)), {
    minLength: 1,
    maxLength: 3,
  }),
  salt: share(0, 2),
  starch: share(0.1, 3),
  division: fc.constantFrom("0.1 g", "0.5 g", "1 g", "5 g", "0.1 oz"),
  tolerance: fc.constantFrom("0.5 %", "1 %", "2 %", "5 %"),
  loads: fc.integer({ min: 1, max: 6 }),
});

describe("a stock solution", () => {
  const batchOf = (one: typeof smallBatch extends fc.Arbitrary<infer Small> ? Small : never) =>
    planned({
      water: { tap: one.tap },
      alkali: one.alkali.map(([name, amount]) => ({ name, amount })),
      salt: one.salt,
      ingredients: [{ name: "cornstarch", amount: one.starch }],
      scales: [{ division: one.division }],
      weighingTolerance: one.tolerance,
      batch: { flour: `${Number.parseInt(one.flour, 10) * one.loads} g` },
      mixer: { largest: one.flour, of: "flour" },
    });

  it("delivers every salt within the tolerance, lasts for the batch, and brings no more water than there is", () => {
    let stocks = 0;
    always(150, [smallBatch], (one) => {
      const batch = batchOf(one);
      const { stock: remedy } = batch.remedies;
      if (remedy === undefined) return;
      stocks += 1;
      const { salts, carrier, stock } = remedy;
      const within = dec(batch.tolerance).plus("1e-20");
      for (const [index, { exact, division }] of salts.entries()) {
        const [amount, delivered] = [stock.amounts[index]?.value ?? 0, stock.delivered[index]?.value ?? 0];
        expect(dec(delivered).div(exact.value).minus(1).abs().times(HUNDRED).lte(within)).toBe(true);
        expect(dec(division).times(50).div(amount).lte(within)).toBe(true);
        expect(dec(amount).mod(division).isZero()).toBe(true);
      }
      expect(dec(carrier.division).times(50).div(stock.perLoad.value).lte(within)).toBe(true);
      expect(dec(stock.lasts.value).gte(batch.loads.count.value)).toBe(true);
      expect(dec(stock.brought.value).lte(carrier.exact.value)).toBe(true);
      expect(stock.kept.verdict).toBe("clear");
    });
    expect(stocks).toBeGreaterThan(60);
  });

  it("keeps the total of the load, which adds up exactly in whole divisions", () => {
    let stocks = 0;
    always(100, [smallBatch], (one) => {
      const batch = batchOf(one);
      if (batch.withStock === undefined) return;
      stocks += 1;
      for (const { mass, division } of batch.withStock) {
        expect(dec(mass.value).isNegative()).toBe(false);
        expect(dec(mass.value).mod(division).isZero()).toBe(true);
      }
      const total = sum(batch.withStock.map(({ mass }) => dec(mass.value)));
      const asked = sum(batch.lines.map(({ exact }) => dec(exact.value)));
      const half = dec(batch.lines[0]?.division ?? 0).div(2);
      expect(total.minus(asked).abs().lte(half.plus("1e-15"))).toBe(true);
    });
    expect(stocks).toBeGreaterThan(40);
  });

  it("is the smallest that weighs within the tolerance", () => {
    always(60, [smallBatch], (one) => {
      const batch = batchOf(one);
      const { stock: remedy } = batch.remedies;
      if (remedy === undefined) return;
      const least = dec(remedy.carrier.division).times(50).div(batch.tolerance);
      const needed = remedy.salts.map(({ exact }) => least.div(exact.value));
      const loads = needed.reduce((most, value) => (value.gt(most) ? value : most), dec(batch.loads.count.value));
      // rounding all salts at once may take some loads more
      expect(dec(remedy.stock.lasts.value).lte(loads.ceil().plus(60))).toBe(true);
    });
  });

  it("stays clear in a fridge, each salt by its own limit", () => {
    const remedyFor = (formula: string) =>
      planned({
        water: { tap: "34 %" },
        alkali: [{ name: "salt of the tin", amount: "0.3 %", figures: { composition: { [formula]: "100 %" } } }],
        salt: "0 %",
        batch: { flour: "2 kg" },
        scales: oneGram,
      }).remedies;
    const strengthOf = (formula: string): number => Number(remedyFor(formula).stock?.stock.strength.value);
    // 6 g in at least 50 g; 4 °C holds some 9 g of Na2CO3 in 100 g of water
    expect(strengthOf("Na2CO3")).toBeGreaterThan(5);
    // 1.68 g Na2HPO4 in 100 g water at 0 °C (its solubility table, with the source there): 1.65 % by mass
    expect(strengthOf("Na2HPO4")).toBeLessThanOrEqual(2.5);
    // no table was found for K3PO4, so nobody can say that a stock of it stays clear
    expect(remedyFor("K3PO4").stock).toBeUndefined();
    expect(remedyFor("K3PO4").finer).toHaveLength(1);
  });
});
