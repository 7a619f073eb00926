import type { Outcome } from "@noodlewright/core";
import type { NutrientName, Nutrition, RuleBookName } from "@noodlewright/core/answers";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { contentsOf } from "#core/batch/composition.ts";
import { nutritionOf } from "#core/batch/nutrition.ts";
import { declare } from "#core/materials/declare.ts";
import { lineOf } from "#core/materials/nutrients.ts";
import { dec, sum } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { formulas } from "../formula/random-spec.ts";
import { noteCodesOf, type Written, workedOut } from "../formula/worked-out.ts";
import { expectSound } from "../report/sound.ts";
import { answered } from "../told-of.ts";
import { plain } from "./planned.ts";

function nutrition(written: Partial<Written>, rules: RuleBookName = "EU"): Outcome<Nutrition> {
  const { spec, formula } = workedOut({ ...plain, ...written });
  return nutritionOf(spec, formula, { rules });
}

function amountOf({ amounts }: Nutrition, name: NutrientName) {
  const found = amounts.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
}

const own = (figures: object): Partial<Written> => ({
  flours: [{ name: "house flour", amount: "100 %", figures: { moisture: "13 %", ...figures } }],
});
const whole = { protein: "11 %", proteinBasis: "as is", ash: "0.5 %", ashBasis: "as is", fat: "1.5 %", fibre: "3 %" };

describe("nutrition", () => {
  it("per 100 g times the mass is the sum of the ingredients", () => {
    const names = ["fat", "fibre", "sodium", "potassium"] as const;
    always(30, [formulas, fc.integer({ min: 1, max: 500_000 })], (written, grams) => {
      const { spec, formula } = workedOut({ ...plain, ...written });
      const found = answered(nutritionOf(spec, formula, { rules: "US" }));
      const dough = sum(formula.lines.map(({ parts }) => dec(parts.value)));
      for (const name of [...names, "protein", "carbohydrate"] as const) {
        const weighed = formula.lines.map((line) => ({
          mass: dec(line.parts.value).times(grams).div(dough),
          of: contentsOf(line)[name],
        }));
        const inAll = sum(weighed.map(({ mass, of }) => mass.times(of?.value ?? 0).div(100)));
        const hundred = dec(amountOf(found, name).raw.hundred.value).times(grams).div(100);
        expect(hundred.toSignificantDigits(20).eq(inAll.toSignificantDigits(20))).toBe(true);
      }
      expectSound(found);
    });
  });

  it("counts parts that add up to 100 g of raw dough", () => {
    // Water, protein, fat, carbohydrate by difference and ash of bread flour add up to 100 g, salts and water besides.
    const found = answered(nutrition({ alkali: [{ name: "sodium carbonate", amount: "1 %" }] }, "US"));
    const [protein, fat, carbohydrate] = (["protein", "fat", "carbohydrate"] as const).map((name) =>
      dec(amountOf(found, name).raw.hundred.value),
    );
    const rest = dec("13.36").plus("0.47").plus(36).plus(1).plus(1).div("1.38");
    expect(sum([protein ?? dec(0), fat ?? dec(0), carbohydrate ?? dec(0), rest]).toFixed(6)).toBe("100.000000");
  });

  it("works out carbohydrate by difference where it is not stated, with the fibre in it or not", () => {
    // 100 − 13 − 11 − 1.5 − 0.5 = 74; without fibre and beside N × 6.25: 74 + 11 − 11 × 6.25/5.7 − 3
    const of = (rules: RuleBookName) =>
      amountOf(answered(nutrition({ ...own(whole), water: { tap: "0 %" }, salt: "0 %" }, rules)), "carbohydrate").raw
        .hundred;
    expect(of("US").value).toBe("74");
    expect(dec(of("EU").value).toFixed(4)).toBe(dec(82).minus(dec(11).times("6.25").div("5.7")).toFixed(4));
  });

  it("works carbohydrate out anew where the kitchen replaced what the table's own rests on", () => {
    const flours = [
      { name: "bread flour", amount: "100 %", figures: { moisture: "15 %", protein: "10 %", proteinBasis: "as is" } },
    ];
    const found = answered(nutrition({ flours, water: { tap: "0 %" }, salt: "0 %" }, "US"));
    const fatAndAsh = dec("1.66").plus("0.47").times(85).div("86.64");
    expect(dec(amountOf(found, "carbohydrate").raw.hundred.value).toFixed(6)).toBe(dec(75).minus(fatAndAsh).toFixed(6));
  });

  it("never takes what is not stated as none", () => {
    const found = nutrition(own({ protein: "11 %" }));
    expect(noteCodesOf(found)).toContain("nutrition.not-stated");
    const all = answered(found);
    for (const name of ["fat", "carbohydrate", "fibre", "sodium", "potassium", "energy", "salt"] as const) {
      expect(amountOf(all, name).missing, name).toEqual(["house flour"]);
    }
    expect(amountOf(all, "protein").missing).toEqual([]);
    const declared = all.declared.raw.filter(({ text }) => text !== undefined);
    expect(declared.map(({ label }) => label)).toEqual(["protein (N × 6.25)"]);
    const stated = answered(nutrition(own({ ...whole, sodium: "2 mg", potassium: "100 mg" })));
    expect(stated.declared.raw.every(({ text }) => text !== undefined)).toBe(true);
  });

  describe("what an ingredient does not state", () => {
    /** All but potassium, which the United States have to the single mg. */
    const texts = ({ declared }: Nutrition) =>
      declared.raw.filter(({ label }) => label !== "potassium").map(({ text }) => text);
    const withTraces = (amount: string, rules: RuleBookName) => {
      const colour = { name: "colour", amount, figures: { kind: "other" as const, moisture: "5 %", ash: "20 %" } };
      return answered(nutrition({ ingredients: [colour], batch: { rawWeight: "130 g" } }, rules));
    };

    it.each(["US", "EU", "JP"] as const)("does not stop %s from declaring where there is too little of it", (rules) => {
      const found = withTraces("0.006 %", rules);
      expect(amountOf(found, "fat").missing).toEqual(["colour"]);
      expect(texts(found).every((text) => text !== undefined)).toBe(true);
      expect(texts(found)).toEqual(texts(answered(nutrition({ batch: { rawWeight: "130 g" } }, rules))));
    });

    it("is told as a range from none to all that its other figures leave room for", () => {
      // 1.5 of 138.5 parts, 100 - 5 - 20 = 75 % of it fat or protein, 20 % of it sodium: 0.8123 g and 216.6 mg in 100 g
      const found = withTraces("1.5 %", "EU");
      const open = (name: NutrientName) => {
        const { raw, most } = amountOf(found, name);
        return dec(most?.raw.hundred.value ?? 0).minus(raw.hundred.value);
      };
      expect(open("fat").toFixed(4)).toBe("0.8123");
      expect(open("sodium").toFixed(1)).toBe("216.6");
      expect(open("energy").toFixed(4)).toBe(dec("1.5").times(75).div("138.5").times(9).toFixed(4));
      const [fat] = found.declared.raw.filter(({ label }) => label === "fat");
      expect([fat?.text, fat?.between]).toEqual([undefined, ["1.2", "2.0"]]);
      // bread flour has 100 mg of potassium in 100 g: 93.9 mg in 130 of 138.5 g; an American label may print less as 0
      const [potassium] = withTraces("1.5 %", "US").declared.raw.filter(({ label }) => label === "potassium");
      expect([potassium?.text, potassium?.between?.[0]]).toEqual([undefined, "94"]);
    });

    it("never lies outside of the range, whatever it is", () => {
      const share = fc.integer({ min: 0, max: 30 });
      always(25, [share, share, share, fc.integer({ min: 1, max: 5 })], (protein, fat, ash, parts) => {
        const stated = { kind: "other" as const, moisture: "5 %", proteinBasis: "as is", ashBasis: "as is" };
        const of = (figures: object): Partial<Written> => ({
          ingredients: [{ name: "powder", amount: `${parts} %`, figures: { ...stated, ...figures } }],
        });
        const whole = { protein: `${protein} %`, fat: `${fat} %`, ash: `${ash} %`, fibre: "2 %" };
        const known = answered(nutrition(of(whole), "US"));
        const open = answered(nutrition(of({ ash: `${ash} %` }), "US"));
        for (const name of ["energy", "protein", "fat", "carbohydrate", "fibre"] as const) {
          const value = dec(amountOf(known, name).raw.hundred.value);
          const { raw, most } = amountOf(open, name);
          expect(value.gte(raw.hundred.value) && value.lte(most?.raw.hundred.value ?? raw.hundred.value)).toBe(true);
        }
      });
    });
  });

  it("calls the protein on the other count a least value as well", () => {
    expect(answered(nutrition(own({}))).otherProtein.label).toMatch(/, at least$/u);
    expect(answered(nutrition(own({ protein: "11 %" }))).otherProtein.label).not.toContain("at least");
  });

  it("does not miss what an ingredient of which there is none does not state", () => {
    const ingredients = [{ name: "house egg", amount: "0 %", figures: { kind: "egg" as const, moisture: "75 %" } }];
    expect(answered(nutrition({ ingredients })).amounts.flatMap(({ missing }) => missing)).toEqual([]);
  });

  it("brings a bowl and boiled noodles from the same 100 g", () => {
    const found = answered(nutrition({ batch: { rawWeight: "130 g", cookGain: 1.6 } }));
    const fat = amountOf(found, "fat");
    const hundred = dec(fat.raw.hundred.value);
    expect(fat.raw.bowl?.value).toBe(hundred.times("1.3").toString().slice(0, fat.raw.bowl?.value.length));
    expect(dec(fat.cooked.hundred.value).toFixed(12)).toBe(hundred.div("1.6").toFixed(12));
    expect(fat.cooked.bowl?.value).toBe(fat.raw.bowl?.value);
    const sodium = amountOf(found, "sodium");
    const kept = dec(sodium.cooked.bowl?.value ?? 0)
      .div(sodium.raw.bowl?.value ?? 1)
      .times(100);
    expect(kept.toFixed(6)).toBe(dec(found.kept.sodium.value).toFixed(6));
    expect(found.bowl?.cooked.value).toBe("208");
  });

  it.each(["US", "EU", "JP"] as const)("declares by the rules of %s what declaring the value gives", (rules) => {
    const { declared } = answered(nutrition({ batch: { rawWeight: "130 g" } }, rules));
    expect(declared.raw.length).toBeGreaterThan(4);
    for (const { value, text } of [...declared.raw, ...declared.cooked]) {
      const name = value.id.split(".")[1];
      const nutrient = name === "kilojoule" ? "energy" : name;
      const rule = lineOf(nutrient as "fat", rules);
      expect(rule && declare(rule, value.value)[0]).toBe(text);
    }
  });

  it("declares no serving where the weight of a bowl is not stated", () => {
    const outcome = nutrition({}, "US");
    expect(noteCodesOf(outcome)).toContain("nutrition.no-serving");
    expect(answered(outcome).declared.raw).toEqual([]);
    expect(noteCodesOf(nutrition({}, "EU"))).not.toContain("nutrition.no-serving");
  });

  it("goes by another list of allergens where it is asked to", () => {
    const { spec, formula } = workedOut({ ...plain, ingredients: [{ name: "sesame oil", amount: "1 %" }] });
    const names = (jurisdiction: "JP" | "US") =>
      answered(nutritionOf(spec, formula, { rules: "EU", jurisdiction })).allergens.contains.map(({ name }) => name);
    expect(names("US")).toEqual(["wheat", "sesame"]);
    expect(names("JP")).toEqual(["wheat", "sesame"]);
  });
});
