import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dec } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { listed, noteCodesOf } from "../formula/worked-out.ts";
import { answered } from "../told-of.ts";
import { cost, costed } from "./costed.ts";

const flour = (stock: string, price = "23.50 EUR per 25 kg") => {
  const { lines } = costed({
    batch: { flour: "30 kg" },
    prices: { "bread flour": price, salt: "1 EUR/kg" },
    stock: { "bread flour": stock },
  }).shopping;
  const found = lines.find(({ name }) => name === "bread flour");
  if (found === undefined) throw new Error("no flour on the list");
  return found;
};

describe("loads from what is on hand", () => {
  it("are never told to be more than there are", () => {
    // 29.9 kg for loads of 10 kg of flour
    const { reach } = costed({
      batch: { flour: "30 kg" },
      mixer: { largest: "10 kg", of: "flour" },
      prices: { "bread flour": "1 EUR/kg" },
      stock: { "bread flour": "29.9 kg" },
    }).shopping;
    expect([reach?.lines[0]?.loads.value, reach?.loads.value]).toEqual(["2.9", "2"]);
  });
});

describe("shopping list", () => {
  it.each([
    // on hand, packs, bought g, to pay EUR, left over g: 30 kg are needed
    ["0 kg", "2", "50000", "47", "20000"],
    ["5 kg", "1", "25000", "23.5", "0"],
    ["4.999 kg", "2", "50000", "47", "24999"],
    ["30 kg", "0", "0", "0", "0"],
    ["31 kg", "0", "0", "0", "1000"],
  ])("with %s on hand", (stock, packs, buy, pay, left) => {
    const line = flour(stock);
    const found = [line.packs?.count.value, line.buy.value, line.pay?.value, line.left.value];
    expect(found).toEqual([packs, buy, pay, left]);
  });

  it.each(["0.94 EUR/kg", "0.94 EUR per kg"])("buys by weight at %s", (price) => {
    const line = flour("4.5 kg", price);
    expect(line.packs).toBeUndefined();
    expect([line.buy.value, line.pay?.value, line.left.value]).toEqual(["25500", "23.97", "0"]);
  });

  it("buys enough and not a pack too many, and adds up", () => {
    const grams = fc.integer({ min: 0, max: 60_000 });
    always(60, [grams, fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 9999 })], (stock, pack, cents) => {
      const { lines, pay } = costed({
        batch: { flour: "30 kg" },
        prices: { "bread flour": `${cents / 100} EUR per ${pack} kg`, salt: "0.333 EUR/kg" },
        stock: { "bread flour": `${stock} g` },
      }).shopping;
      for (const { need, onHand, buy, left } of lines) {
        const there = dec(onHand?.value ?? 0).plus(buy.value);
        expect(there.minus(need.value).eq(left.value)).toBe(true);
        expect(dec(left.value).gte(0)).toBe(true);
      }
      const [first] = lines;
      const spare = dec(first?.left.value ?? 0);
      if (dec(first?.buy.value ?? 0).gt(0)) expect(spare.lt(pack * 1000)).toBe(true);
      const paid = lines.reduce((total, line) => total.plus(line.pay?.value ?? 0), dec(0));
      expect(paid.eq(pay.value)).toBe(true);
    });
  });

  it("puts what is one material on one line, and no tap water", () => {
    const { lines } = costed({
      flours: listed({ "bread flour": "95 %", cornstarch: "rest" }),
      dusting: { name: "cornstarch", amount: "5 %" },
      batch: { flour: "10 kg" },
      prices: { cornstarch: "2 EUR per 1 kg" },
    }).shopping;
    expect(lines.map(({ name }) => name)).toEqual(["bread flour", "cornstarch", "table salt"]);
    expect(lines[1]).toMatchObject({ need: { value: "1000" }, packs: { count: { value: "1" } } });
  });
});

describe("what is on hand", () => {
  it("is told by what runs out first", () => {
    const outcome = cost({
      batch: { bowls: 100, rawWeight: "137 g" },
      mixer: { largest: "6.85 kg" },
      prices: { "bread flour": "1 EUR/kg" },
      stock: { "bread flour": "24 kg", salt: "120 g" },
    });
    // 100 bowls are 13.7 kg of dough: 2 loads of 5000 g flour and 50 g salt. Flour is enough for 4.8 loads, salt for 2.4.
    const { reach } = answered(outcome).shopping;
    expect(reach?.lines.map(({ line, loads }) => [line.name, loads.value])).toEqual([
      ["table salt", "2.4"],
      ["bread flour", "4.8"],
    ]);
    expect([reach?.loads.value, reach?.bowls?.value]).toEqual(["2", "120"]);
    expect(noteCodesOf(outcome)).not.toContain("stock.not-stated");
  });

  it("names the ingredients whose stock nobody stated", () => {
    const outcome = cost({ prices: { "bread flour": "1 EUR/kg" }, stock: { "bread flour": "24 kg" } });
    expect(noteCodesOf(outcome)).toContain("stock.not-stated");
  });

  it("makes no load where one thing is out, and is left out where nothing is stated", () => {
    const prices = { "bread flour": "1 EUR/kg" };
    expect(costed({ prices, stock: { salt: "0 g", "bread flour": "9 kg" } }).shopping.reach?.loads.value).toBe("0");
    expect(costed({ prices }).shopping.reach).toBeUndefined();
  });
});
