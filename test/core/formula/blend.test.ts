import { askCost, readNoodle } from "@noodlewright/core";
import { writtenWorking } from "@noodlewright/core/figure";
import { describe, expect, it } from "vitest";
import { formulaOf } from "#core/formula/formula.ts";
import { dec } from "#core/number/decimal.ts";
import { allergenLines } from "#core/report/formula-report.ts";
import { answered } from "../told-of.ts";
import { workedOut } from "./worked-out.ts";

const mixed = (flours: Parameters<typeof workedOut>[0]["flours"]) =>
  workedOut({ flours, water: { added: "36 %" } }).formula;
const places = (value: string | undefined, count: number): string | undefined =>
  value === undefined ? undefined : dec(value).toFixed(count);

describe("a blend", () => {
  // by hand: 60 % of 12 % moisture and 12 % protein at 14 % mb, 40 % of 9 % moisture and 8 % protein as is at 6.25
  const { blend } = mixed([
    {
      name: "strong",
      amount: "60 %",
      figures: { moisture: "12 %", protein: "12 %", ash: "0.5 %", ashBasis: "dry", price: "1 EUR/kg" },
    },
    {
      name: "rye",
      amount: "rest",
      figures: {
        moisture: "9 %",
        protein: "8 %",
        proteinBasis: "as is",
        nitrogenFactor: 6.25,
        ash: "1 %",
        ashBasis: "as is",
        glutenForming: false,
        wholegrain: true,
        allergens: ["rye"],
        price: "25 EUR per 25 kg",
      },
    },
  ]);

  it.each([
    ["moisture", blend.moisture.value, "10.8000"],
    ["protein as is", blend.protein?.asIs.value, "10.2858"],
    ["protein dry", blend.protein?.dry.value, "11.5312"],
    ["protein at 14 % mb", blend.protein?.at14.value, "9.9168"],
    ["gluten-forming protein as is", blend.glutenProtein?.asIs.value, "7.3674"],
    ["gluten-forming protein at 14 % mb", blend.glutenProtein?.at14.value, "7.1031"],
    ["other protein at 14 % mb", blend.otherProtein?.value, "2.8137"],
    ["ash as is", blend.ash?.asIs.value, "0.6640"],
    ["ash at 14 % mb", blend.ash?.at14.value, "0.6402"],
    ["wholegrain", blend.wholegrain.value, "40.0000"],
    ["price", blend.price?.value, "1.0000"],
  ])("%s", (_, value, expected) => {
    expect(places(value, 4)).toBe(expected);
  });

  it("names its allergens and its currency", () => {
    expect(blend.allergens).toEqual(["rye"]);
    expect(blend.currency).toBe("EUR");
  });
});

describe("what is not known", () => {
  it("takes the basis that nobody states as that of certificates, says so once, and gives it its own source", () => {
    const own = { moisture: "13 %", protein: "12 %" };
    const flours = ["one", "two"].map((name) => ({ name, amount: "50 %", figures: own }));
    const read = (written: typeof flours) => {
      const outcome = formulaOf({ name: "test", flours: written, water: { added: "36 %" } });
      return { formula: answered(outcome).formula, notes: outcome.ok ? outcome.notes : [] };
    };
    const { formula, notes } = read(flours);
    expect(notes.filter(({ code }) => code === "blend.basis-assumed").map(({ facts }) => facts)).toEqual([
      expect.objectContaining({ names: ["one", "two"] }),
    ]);
    const basis = Object.values(formula.graph).find(
      ({ label }) => label === "moisture that the protein of one is stated on",
    );
    expect(basis).toMatchObject({
      working: { by: "assumed, since nobody states the basis" },
      sources: [{ cite: expect.stringContaining("14.0 % moisture") }],
    });
    const stated = flours.map((flour) => ({ ...flour, figures: { ...own, proteinBasis: "14 % mb" } }));
    const said = read(stated);
    expect(said.notes.filter(({ code }) => code === "blend.basis-assumed")).toEqual([]);
    expect(said.formula.blend.protein?.asIs.value).toBe(formula.blend.protein?.asIs.value);
  });

  it("calls the allergens of a flour not stated, and never none", () => {
    const text = JSON.stringify(
      allergenLines(mixed([{ name: "own", amount: "100 %", figures: { moisture: "13 %" } }])),
    );
    expect(text).toContain("Contains: not stated.");
    expect(text).toContain("Not stated, and not to be taken as free of any: own.");
    expect(text).not.toMatch(/none/u);
  });

  const plain = { moisture: "14 %", protein: "10 %", ash: "0.5 %" };

  it("leaves out the protein, the ash and the price that a flour does not state", () => {
    const { blend } = mixed([
      { name: "a", amount: "50 %", figures: { ...plain, price: "1 EUR/kg" } },
      { name: "b", amount: "rest", figures: { moisture: "14 %" } },
    ]);
    expect([blend.protein, blend.ash, blend.price, blend.otherProtein]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  it("has the prices that the spec states by a name of the material, and one figure of each with what they cost", () => {
    const flours = [
      { name: "bread flour", amount: "50 %", figures: { price: "9 EUR/kg" } },
      { name: "own", amount: "rest", figures: { ...plain, price: "1 EUR/kg" } },
    ];
    const prices = { "white bread flour": "2 EUR/kg", "tap water": "0.002 EUR/kg" };
    const noodle = answered(
      readNoodle({ name: "bought", flours, water: { added: "36 %" }, prices, batch: { flour: "1 kg" } }),
    );
    const { price, graph } = { ...noodle.formula.blend, graph: noodle.formula.graph };
    const cost = askCost(noodle);
    expect([price?.value, cost.ok && cost.value.batch.value]).toEqual(["1.5", "1.5"]);
    const ofFlours = ["flour.1.price", "flour.2.price"].map((id) => graph[id]);
    expect(ofFlours.map((figure) => figure?.value)).toEqual(["2", "1"]);
    expect(cost.ok && ofFlours.map((figure) => cost.value.graph[figure?.id ?? ""])).toEqual(ofFlours);
  });

  it("adds up no prices in two currencies", () => {
    const { blend } = mixed([
      { name: "a", amount: "50 %", figures: { ...plain, price: "1 EUR/kg" } },
      { name: "b", amount: "rest", figures: { ...plain, price: "1 USD/kg" } },
    ]);
    expect(blend.price).toBeUndefined();
  });

  it("has no gluten-forming protein without gluten-forming flour", () => {
    const { blend } = mixed([{ name: "a", amount: "rest", figures: { ...plain, glutenForming: false } }]);
    expect(blend.glutenProtein?.at14.value).toBe("0");
    expect(blend.otherProtein?.value).toBe("10");
    expect(blend.glutenProtein && writtenWorking(blend.glutenProtein.asIs)?.numbers).toBe("0 ÷ 100");
  });

  it("says whose allergens nobody stated", () => {
    const formula = mixed([
      { name: "bread flour", amount: "50 %" },
      { name: "b", amount: "rest", figures: plain },
    ]);
    expect(formula.allergens).toEqual(["wheat"]);
    expect(formula.allergensUnknown).toEqual(["b"]);
  });
});
