import { writtenWorking } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exact } from "#core/figure/figure.ts";
import { declare } from "#core/materials/declare.ts";
import { type ProteinLabel, readLabels } from "#core/materials/label.ts";
import { nutrients } from "#core/materials/nutrients.ts";
import { dec } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { noteCodesOf } from "../formula/worked-out.ts";
import { answered, codesOf } from "../told-of.ts";

const four: ProteinLabel = { book: "US", printed: "4", serving: "30", nitrogenFactor: "5.7" };

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
          ? { book, printed }
          : { book, printed, serving: String(grams), ...(stated && { nitrogenFactor: own }) };
        const asIs = read([label]);
        // Factors whose quotients do not end leave a last-digit remainder.
        expect(exact(asIs.low).minus("1e-25").lte(percent) && exact(asIs.high).plus("1e-25").gte(percent)).toBe(true);
      }
    });
  });

  it("widens with a rounded serving and an open factor, and never narrows", () => {
    const plain = read([four]);
    const rounded = read([{ ...four, servingRounded: true }]);
    // 3.5 g of 30.5 g to 4.5 g of 29.5 g, in %.
    expect([exact(rounded.low).toFixed(4), exact(rounded.high).toFixed(4)]).toEqual(["11.4754", "15.2542"]);
    const { nitrogenFactor: _, ...open } = four;
    const any = read([open]);
    expect(exact(any.low).lt(exact(plain.low)) && exact(any.high).eq(exact(plain.high))).toBe(true);
  });

  it("takes half of the last digit of the serving as printed", () => {
    const tenth = read([{ ...four, serving: "30.0", servingRounded: true }]);
    expect(exact(tenth.low).toFixed(4)).toBe("11.6473");
  });

  it("carries the range on its middle and shows the working", () => {
    const asIs = read([four]);
    expect(asIs.middle.range).toMatchObject({ low: asIs.low.value, high: asIs.high.value });
    expect(exact(asIs.middle).toFixed(4)).toBe("13.3333");
    expect(writtenWorking(asIs.low)).toMatchObject({ numbers: "3.5 × 100 ÷ 30 × 5.7 ÷ 5.7" });
  });

  it("is the same whatever the order of the labels, and lies within each of them", () => {
    const printed = fc.constantFrom("3", "4", "5");
    const serving = fc.constantFrom("28", "30", "34", "40");
    const label = fc.record({ book: fc.constant("US" as const), printed, serving });
    always(100, [fc.array(label, { minLength: 1, maxLength: 4 })], (labels) => {
      const ends = (reading: ReturnType<typeof readLabels>) =>
        reading.ok ? [reading.value.low.value, reading.value.high.value] : "no answer";
      const both = readLabels(labels);
      expect(ends(both)).toEqual(ends(readLabels(labels.toReversed())));
      if (!both.ok) return;
      for (const one of labels) {
        const asIs = read([one]);
        expect(exact(both.value.low).gte(exact(asIs.low)) && exact(both.value.high).lte(exact(asIs.high))).toBe(true);
      }
    });
  });
});

describe("labels that give no range", () => {
  it("disagree where they only touch", () => {
    // 3 g is up to below 11.67 %, 4 g from 11.67 %.
    expect(codesOf(readLabels([four, { ...four, printed: "3" }]))).toEqual(["label.disagree"]);
  });
});

describe("problems", () => {
  it("say which label and which part of it", () => {
    const reading = readLabels([four, { book: "US", printed: "4.5" }]);
    expect(!reading.ok && reading.problems.map(({ path }) => path)).toEqual([
      [1, "printed"],
      [1, "serving"],
    ]);
  });
});

describe("notes", () => {
  it("say what the range does not cover", () => {
    expect(noteCodesOf(readLabels([four]))).toEqual(["label.rounding-only"]);
    expect(noteCodesOf(readLabels([{ book: "US", printed: "4", serving: "30" }]))).toEqual([
      "label.factor-unknown",
      "label.rounding-only",
    ]);
    expect(noteCodesOf(readLabels([{ book: "EU", printed: "12" }]))).toEqual(["label.rounding-only"]);
    expect(noteCodesOf(readLabels([{ book: "JP", printed: "11.5", nitrogenFactor: "5.7" }]))).toEqual([]);
  });
});
