import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { declare } from "#core/materials/declare.ts";
import { type ProteinLabel, readLabels } from "#core/materials/label.ts";
import { nutrients } from "#core/materials/nutrients.ts";
import { dec } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { noteCodesOf } from "../formula/worked-out.ts";
import { answered, codesOf } from "../told-of.ts";

const four: ProteinLabel = { rules: "US", protein: "4", serving: "30", nitrogenFactor: "5.7" };

const read = (labels: readonly ProteinLabel[]) => answered(readLabels(labels));

describe("a label as a range", () => {
  it("always holds the protein that was declared", () => {
    const factor = fc.constantFrom("5.7", "5.83", "6.25");
    const protein = fc.integer({ min: 0, max: 3000 }).map((count) => dec(count).div(100));
    const serving = fc.integer({ min: 20, max: 125 });
    always(1000, [protein, serving, factor, fc.boolean(), fc.boolean()], (percent, grams, own, stated, european) => {
      // The flour has this much protein as N × 5.7; its label is made with its own factor.
      const ownPercent = percent.times(own).div("5.7");
      const book = european ? "EU" : "US";
      const labelled = european ? percent.times("6.25").div("5.7") : ownPercent.times(grams).div(100);
      for (const printed of declare(nutrients.protein.label[book], labelled)) {
        const label: ProteinLabel = european
          ? { rules: book, protein: printed }
          : { rules: book, protein: printed, serving: String(grams), ...(stated && { nitrogenFactor: own }) };
        const asIs = read([label]);
        // Factors whose quotients do not end leave a last-digit remainder.
        expect(dec(asIs.low).minus("1e-25").lte(percent) && dec(asIs.high).plus("1e-25").gte(percent)).toBe(true);
      }
    });
  });

  it("widens with a rounded serving and an open factor, and never narrows", () => {
    const plain = read([four]);
    const rounded = read([{ ...four, servingRounded: true }]);
    // 3.5 g of 30.5 g to 4.5 g of 29.5 g, in %.
    expect([dec(rounded.low).toFixed(4), dec(rounded.high).toFixed(4)]).toEqual(["11.4754", "15.2542"]);
    const { nitrogenFactor: _, ...open } = four;
    const any = read([open]);
    expect(dec(any.low).lt(dec(plain.low)) && dec(any.high).eq(dec(plain.high))).toBe(true);
  });

  it("takes half of the last digit of the serving as printed", () => {
    const tenth = read([{ ...four, serving: "30.0", servingRounded: true }]);
    expect(dec(tenth.low).toFixed(4)).toBe("11.6473");
  });

  it("is the same whatever the order of the labels, and lies within each of them", () => {
    const printed = fc.constantFrom("3", "4", "5");
    const serving = fc.constantFrom("28", "30", "34", "40");
    const label = fc.record({ rules: fc.constant("US" as const), protein: printed, serving });
    always(100, [fc.array(label, { minLength: 1, maxLength: 4 })], (labels) => {
      const ends = (reading: ReturnType<typeof readLabels>) =>
        reading.ok ? [reading.value.low, reading.value.high] : "no answer";
      const both = readLabels(labels);
      expect(ends(both)).toEqual(ends(readLabels(labels.toReversed())));
      if (!both.ok) return;
      for (const one of labels) {
        const asIs = read([one]);
        expect(dec(both.value.low).gte(dec(asIs.low)) && dec(both.value.high).lte(dec(asIs.high))).toBe(true);
      }
    });
  });
});

describe("labels that give no range", () => {
  it("disagree where they only touch", () => {
    // 3 g is up to below 11.67 %, 4 g from 11.67 %.
    expect(codesOf(readLabels([four, { ...four, protein: "3" }]))).toEqual(["label.disagree"]);
  });
});

describe("problems", () => {
  it("say which label and which part of it", () => {
    const reading = readLabels([four, { rules: "US", protein: "4.5" }]);
    expect(!reading.ok && reading.problems.map(({ path }) => path)).toEqual([
      [1, "protein"],
      [1, "serving"],
    ]);
  });
});

describe("notes", () => {
  it("say what the range does not cover", () => {
    expect(noteCodesOf(readLabels([four]))).toEqual(["label.rounding-only"]);
    expect(noteCodesOf(readLabels([{ rules: "US", protein: "4", serving: "30" }]))).toEqual([
      "label.factor-unknown",
      "label.rounding-only",
    ]);
    expect(noteCodesOf(readLabels([{ rules: "EU", protein: "12" }]))).toEqual(["label.rounding-only"]);
    expect(noteCodesOf(readLabels([{ rules: "JP", protein: "11.5", nitrogenFactor: "5.7" }]))).toEqual([]);
  });
});
