import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exact } from "#core/figure/figure.ts";
import { writtenWorking } from "#core/figure/written-working.ts";
import { availableCarbohydrate, energyByTable, energyEU, saltFromSodium } from "#core/materials/energy.ts";

const grams = fc.integer({ min: 0, max: 5000 }).map((count) => String(count / 100));

describe("energy", () => {
  it("of two portions is twice that of one", () => {
    fc.assert(
      fc.property(grams, grams, grams, grams, (protein, carbohydrate, fat, fibre) => {
        const one = energyEU({ protein, carbohydrate, fat, fibre });
        const twice = (text: string) => String((Number(text) * 200) / 100);
        const two = energyEU({
          protein: twice(protein),
          carbohydrate: twice(carbohydrate),
          fat: twice(fat),
          fibre: twice(fibre),
        });
        expect(exact(two.kcal).eq(exact(one.kcal).times(2))).toBe(true);
        expect(exact(two.kilojoule).eq(exact(one.kilojoule).times(2))).toBe(true);
      }),
    );
  });

  it("shows its working", () => {
    const { kcal } = energyEU({ protein: 10, carbohydrate: 70, fat: 1, fibre: 3 });
    expect(writtenWorking(kcal)).toMatchObject({ numbers: "(10 × 4 + 70 × 4 + 1 × 9 + 3 × 2)" });
  });

  it("is not made up where the table gives no factors", () => {
    expect(energyByTable({ protein: { value: "12" }, fat: "1", carbohydrate: "70" })).toBeUndefined();
    // USDA Standard Reference 28, NDB 04058: 8.84 kcal/g, 884 kcal printed.
    expect(energyByTable({ fat: "100.00", energyFactors: { fat: "8.84" } })?.value).toBe("884");
  });

  it("takes the fibre out of the carbohydrate, and no more than there is", () => {
    expect(availableCarbohydrate("72.53", "2.4")).toMatchObject({ ok: true, value: { value: "70.13" } });
    expect(availableCarbohydrate("2", "2.4")).toMatchObject({ ok: false, problems: [{ code: "energy.fibre" }] });
  });

  it("names salt as the place does", () => {
    expect([saltFromSodium(410, "EU").label, saltFromSodium(410, "JP").label]).toEqual(["salt", "salt equivalent"]);
    expect(writtenWorking(saltFromSodium(410, "JP"))).toMatchObject({ numbers: "410 × 2.54 ÷ 1000" });
  });
});
