import type { Figure } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { minorPlaces } from "#core/materials/currencies.ts";
import { dec, sum } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { formulas, kitchens } from "../formula/random-spec.ts";
import { noteCodesOf } from "../formula/worked-out.ts";
import { expectSound } from "../report/sound.ts";
import { answered, toldOf } from "../told-of.ts";
import { cost, costed } from "./costed.ts";

const values = (figures: readonly (Figure | undefined)[]) =>
  sum(figures.flatMap((figure) => (figure ? [dec(figure.value)] : [])));

describe("cost", () => {
  it("of ten kilograms of flour, by hand", () => {
    // 10 000 g at 0.94 EUR/kg, 3600 g of water, 100 g of salt at 0.60 EUR/kg
    const { batch, lines, kilogram } = costed({
      batch: { flour: "10 kg" },
      prices: { "bread flour": "23.50 EUR per 25 kg", salt: "0.60 EUR/kg" },
    });
    expect(lines.map((line) => line.batch?.value)).toEqual(["9.4", "0", "0.06"]);
    expect(batch).toMatchObject({ value: "9.46", unit: "EUR", places: 2 });
    expect(dec(kilogram.value).toFixed(6)).toBe(dec("9.46").div("13.7").toFixed(6));
  });

  it("adds up to the smallest coin over ingredients, loads and bowls", () => {
    const money = fc.tuple(fc.integer({ min: 1, max: 9999 }), fc.constantFrom("EUR", "JPY", "KWD", "CLF"));
    always(
      40,
      [formulas, kitchens, money, fc.integer({ min: 1, max: 30 })],
      (written, kitchen, [cents, code], pack) => {
        const price = `${cents / 100} ${code} per ${pack} kg`;
        const names = [...written.flours, ...(written.ingredients ?? [])].map(({ name }) => name);
        const flours = written.flours.map(({ figures, ...flour }) => {
          const { price: _own, ...rest } = figures ?? {};
          return figures === undefined ? flour : { ...flour, figures: rest };
        });
        const prices = Object.fromEntries([...names, "table salt", "cornstarch"].map((name) => [name, price]));
        const found = costed({ ...written, flours, ...kitchen, prices });
        const coin = dec(10).pow(-(minorPlaces(code) ?? 0));
        const total = dec(found.batch.value);
        expect(total.mod(coin).isZero()).toBe(true);
        expect(values(found.lines.map(({ batch }) => batch)).eq(total)).toBe(true);
        expect(values(found.lines.map(({ load }) => load)).eq(found.load.value)).toBe(true);
        const unrounded = new Map(Object.values(found.graph).map(({ id, value }) => [id, value]));
        for (const one of found.lines.flatMap(({ batch, load }) =>
          [batch, load].filter((cost) => cost !== undefined),
        )) {
          const apart = dec(one.value).minus(unrounded.get(`${one.id}.exact`) ?? "NaN");
          expect(apart.abs().lt(coin)).toBe(true);
        }
        if (found.bowl) expect(values(found.lines.map(({ bowl }) => bowl)).eq(found.bowl.value)).toBe(true);
        const exact = values(
          Object.values(found.graph).filter(({ id }) => /^cost\.(?:[a-z]+\.?\d*)\.batch\.exact$/u.test(id)),
        );
        expect(exact.minus(total).abs().lte(coin.div(2))).toBe(true);
        for (const { groups } of found.shared) {
          expect(values(groups.map(({ together }) => together)).eq(total)).toBe(true);
          const each = groups.map((group) => Number(group.each.value));
          expect(
            dec(Math.max(...each))
              .minus(Math.min(...each))
              .lte(coin),
          ).toBe(true);
        }
        expectSound(found);
      },
    );
  });

  it("names what has no price and leaves it out of the totals", () => {
    const outcome = cost({ prices: { "bread flour": "1 EUR/kg" } });
    expect(noteCodesOf(outcome)).toEqual(
      expect.arrayContaining(["cost.not-priced", "cost.water-free", "cost.ingredients-only"]),
    );
    const { unpriced, batch, lines } = answered(outcome);
    expect(unpriced).toEqual(["table salt"]);
    expect(batch.label).toContain("what is priced of it");
    expect(lines.find(({ weighed }) => weighed.line.role === "salt")?.batch).toBeUndefined();
  });

  it("counts tap water where it has a price", () => {
    const prices = { "bread flour": "1 EUR/kg", salt: "1 EUR/kg", "tap water": "4 EUR per 1 tonne" };
    const outcome = cost({ prices, batch: { flour: "1 tonne" } });
    expect(noteCodesOf(outcome)).not.toContain("cost.water-free");
    expect(answered(outcome).lines.find(({ weighed }) => weighed.line.role === "water")?.batch?.value).toBe("1.44");
  });

  it("takes the spec's price before that of the material, under any name of it", () => {
    const flours = [{ name: "bread flour", amount: "100 %", figures: { price: "9 EUR/kg" } }];
    const own = costed({ flours, batch: { flour: "1 kg" } });
    expect(own.batch.value).toBe("9");
    const stated = costed({ flours, batch: { flour: "1 kg" }, prices: { "White bread flour": "2 EUR/kg" } });
    expect(stated.batch.value).toBe("2");
  });

  it("takes price and stock from what the kitchen says of a material of the catalogue", () => {
    const materials = {
      "bread flour": { price: "20 EUR per 25 kg", stock: "7 kg" },
      "table salt": { price: "0.50 EUR/kg", stock: "1 kg" },
    };
    const found = costed({ materials, batch: { flour: "10 kg" } });
    expect(found.batch.value).toBe("8.05");
    expect(found.shopping.lines.map(({ onHand, left }) => [onHand?.value, left.value])).toEqual([
      ["7000", "22000"],
      ["1000", "900"],
    ]);
  });

  it("has one price for one material, wherever it stands", () => {
    const one = costed({
      flours: [{ name: "bread flour", amount: "100 %", figures: { price: "1 EUR/kg" } }],
      dusting: { name: "bread flour", amount: "10 %" },
      prices: { salt: "1 EUR/kg" },
    });
    expect(one.unpriced).toEqual([]);
    // 7299 g and 730 g at 1 EUR/kg
    expect(one.shopping.lines.find(({ name }) => name === "bread flour")?.pay?.value).toBe("8.03");
  });

  it("points at the place and at what was likely meant", () => {
    const outcome = cost({ prices: { "bread flour": "1 EUE/kg" } });
    const [slip] = toldOf(outcome);
    expect(slip).toMatchObject({ path: ["prices", "bread flour"], found: '"EUE"', advice: "did you mean EUR?" });
    expect(toldOf(cost({ prices: { salt: "1 THX/kg" } }))).toMatchObject([{ advice: "did you mean THB?" }]);
    expect(toldOf(cost({ prices: { salt: "1 USX/kg" } }))).toMatchObject([
      { advice: "did you mean UGX or USD or USN?" },
    ]);
    const mixed = cost({ prices: { "bread flour": "1 EUR/kg", salt: "1 USD/kg" } });
    expect(toldOf(mixed)).toMatchObject([{ found: "EUR for bread flour; USD for table salt" }]);
  });

  it("says which price or stock belongs to no ingredient", () => {
    const outcome = cost({ prices: { "bread flour": "1 EUR/kg", "bred flour": "2 EUR/kg" }, stock: { rye: "1 kg" } });
    expect(noteCodesOf(outcome)).toEqual(expect.arrayContaining(["prices.not-used", "stock.not-used"]));
    expect(outcome.ok && outcome.notes[0]?.facts).toEqual({ name: "bred flour", near: "bread flour" });
  });
});
