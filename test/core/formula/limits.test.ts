import { convert, pure } from "@noodlewright/core/chemistry";
import { describe, expect, it } from "vitest";
import { formulaOf } from "#core/formula/formula.ts";
import { formulaReport } from "#core/report/formula-report.ts";
import { answered, codesOf } from "../told-of.ts";
import { type Written, workedOut } from "./worked-out.ts";

const inGrams: Written = { flours: [{ name: "bread flour", amount: "500 g" }], water: { tap: "170 g" } };
const inPercent: Written = { flours: [{ name: "bread flour", amount: "100 %" }], water: { tap: "34 %" } };
const soda = (amount: string, name = "sodium carbonate") => ({ alkali: [{ name, amount }] });
const pellets = (amount: string) => ({
  alkali: [{ name: "pellets", amount, figures: { composition: { NaOH: "100 %" } } }],
});
const codes = (written: Partial<Written>, base = inGrams) => codesOf(formulaOf({ name: "test", ...base, ...written }));

function loud(written: Partial<Written>, base = inGrams): readonly string[] {
  const outcome = formulaOf({ name: "test", ...base, ...written });
  return outcome.ok ? outcome.notes.filter((note) => note.loud).map(({ code }) => code) : ["refused"];
}

describe("limits hold for parts, however they are written", () => {
  it.each([
    ["salt of 50 % as a mass", { salt: "250 g" }],
    ["soda of a slip of the unit", soda("5 kg")],
    ["oil of 300 % as a mass", { ingredients: [{ name: "sesame oil", amount: "1.5 kg" }] }],
    ["dusting of 300 % as a mass", { dusting: { name: "cornstarch", amount: "1.5 kg" } }],
    ["water of 340 % as a mass", { water: { tap: "1.7 kg" } }],
  ] satisfies readonly (readonly [string, Partial<Written>])[])("%s is refused", (_, written) => {
    expect(codes(written)).toEqual(["quantity.out-of-range"]);
  });

  it.each([
    ["5 % of salts", "alkali.too-much", soda("25 g"), soda("25.1 g")],
    ["5 % of salts, and soda of 100 % as a mass", "alkali.too-much", soda("25 g"), soda("500 g")],
    ["10 % of salt", "salt.too-much", { salt: "50 g" }, { salt: "50.1 g" }],
    // 5 % of sodium carbonate is 94.4 meq per 100 g flour, 3.774 % of sodium hydroxide (molar masses 105.988 and 39.997).
    ["the alkalinity of 5 % of sodium carbonate", "alkali.too-much", pellets("18.8 g"), pellets("18.9 g")],
  ] satisfies readonly (readonly [string, string, Partial<Written>, Partial<Written>])[])(
    "above %s a spec has to accept it",
    (_, code, most, more) => {
      expect(codes(most)).toEqual([]);
      expect(codes(more)).toEqual([code]);
      expect(codes({ ...more, accept: [code === "salt.too-much" ? "high alkali" : "high salt"] })).toEqual([code]);
      expect(codes({ ...more, accept: ["high salt", "high alkali"] })).toEqual([]);
    },
  );

  it("in % the same doses are refused", () => {
    expect(codes({ ...soda("5.1 %"), salt: "10.1 %" }, inPercent)).toEqual(["alkali.too-much", "salt.too-much"]);
    expect(codes(soda("100 meq"), inPercent)).toEqual(["alkali.too-much"]);
  });

  it("counts salt that is listed among the ingredients", () => {
    expect(codes({ salt: "30 g", ingredients: [{ name: "table salt", amount: "30 g" }] })).toEqual(["salt.too-much"]);
  });
});

describe("the greatest parts that are believed", () => {
  const accept: Written["accept"] = ["high salt", "high alkali"];
  const oil = (amount: string) => ({ name: "sesame oil", amount });
  const liquor = { name: "thin liquor", figures: { composition: { Na2CO3: "1 %", water: "rest" } } };
  it.each<[what: string, most: Partial<Written>, more: Partial<Written>]>([
    ["salt of 20 %", { salt: "100 g" }, { salt: "100.1 g" }],
    ["an ingredient of 200 %", { ingredients: [oil("1 kg")] }, { ingredients: [oil("1000.1 g")] }],
    ["dusting of 200 %", { dusting: oil("1 kg") }, { dusting: oil("1000.1 g") }],
    ["water of 200 %", { water: { tap: "1 kg" } }, { water: { tap: "1000.1 g" } }],
    [
      "a thin liquor of 200 %",
      { alkali: [{ ...liquor, amount: "1 kg" }], water: { added: "1 kg" } },
      { alkali: [{ ...liquor, amount: "1000.1 g" }], water: { added: "1 kg" } },
    ],
  ])("are %s", (_, most, more) => {
    expect(codes({ ...most, accept })).toEqual([]);
    expect(codes({ ...more, accept })).toEqual(["quantity.out-of-range"]);
  });
});

describe("beyond the greatest published use", () => {
  it.each([
    ["salts", [], soda("8.5 g")],
    ["salts", ["alkali.unusual", "alkali.food-law"], soda("8.6 g")],
    ["salt", [], { salt: "20 g" }],
    ["salt", ["salt.unusual"], { salt: "20.1 g" }],
    ["hydroxide", ["alkali.hydroxide"], pellets("2.6 g")],
  ] satisfies readonly (readonly [string, readonly string[], Partial<Written>])[])("%s: %j", (_, expected, written) => {
    const food = loud(written).filter((code) => code !== "alkali.food-law" || expected.some((one) => one === code));
    expect(food).toEqual(expected);
  });

  it("the report says so before anything else", () => {
    const outcome = formulaOf({ name: "test", ...inGrams, salt: "25 g" });
    const notes = outcome.ok ? outcome.notes : [];
    const report = formulaReport(answered(outcome).formula, { notes });
    expect(report.notes.filter((note) => note.loud).map(({ code }) => code)).toEqual(["salt.unusual"]);
  });

  it("tells a dose that is converted on its own, and refuses one that is no dose", () => {
    const [carbonate, bicarbonate] = [pure("Na2CO3"), pure("NaHCO3")];
    const converted = (mass: string) =>
      convert({
        from: { name: "soda", composition: carbonate, mass },
        to: [{ name: "baking soda", composition: bicarbonate }],
        hold: "M",
        flour: "100",
      });
    const told = (mass: string) => {
      const outcome = converted(mass);
      return outcome.ok ? outcome.notes.filter((note) => note.loud).map(({ code }) => code) : codesOf(outcome);
    };
    expect(told("1.7")).not.toContain("alkali.unusual");
    expect(told("1.71")).toContain("alkali.unusual");
    expect(told("50")).toContain("alkali.unusual");
    expect(told("50.1")).toEqual(["quantity.out-of-range"]);
  });
});

describe("salts that a food law limits in noodles", () => {
  // 10 000 mg/kg in a dough of 100 flour, 34 water, 1 salt and x soda: x = 0.01 (135 + x), x = 1.35 / 0.99 = 1.3636.
  it.each([
    ["1.363 %", "9995", []],
    ["1.364 %", "10003", ["alkali.food-law"]],
  ])("%s of sodium carbonate is %s mg per kg", (amount, perKg, said) => {
    const written = { ...soda(amount), salt: "1 %" };
    const { formula } = workedOut({ ...inPercent, ...written });
    const [one] = formula.legal;
    expect(Number(one?.figure.value).toFixed(0)).toBe(perKg);
    expect(one?.limit.most).toBe("10000");
    expect(loud(written, inPercent)).toEqual(said);
  });

  it("counts the salt of a hydrate without its water", () => {
    const { formula } = workedOut({ ...inPercent, ...soda("1 %", "sodium carbonate decahydrate") });
    const [one] = formula.legal;
    // 0.37041 g of the anhydrous salt in 1 g, molar masses 105.988 and 286.138; dough of 135.
    expect(Number(one?.figure.value)).toBeCloseTo((10_000 * 0.370409) / 1.35, -1);
  });

  it("says nothing of salts without a limit", () => {
    const { formula } = workedOut({ ...inPercent, ...soda("1 %", "baking soda") });
    expect(formula.legal).toEqual([]);
  });
});
