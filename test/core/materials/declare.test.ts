import type { NutrientName, RuleBookName } from "@noodlewright/core/answers";
import type { Decimal } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { declare, type Interval, impliedBy } from "#core/materials/declare.ts";
import { lineOf, nutrientNames, nutrients } from "#core/materials/nutrients.ts";
import { dec } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { answered, codesOf, toldOf } from "../told-of.ts";
import { ruleOf } from "./rule-of.ts";

const lines = (["US", "EU", "JP"] as const).flatMap((book) =>
  nutrientNames.filter((name) => lineOf(name, book) !== undefined).map((nutrient) => ({ book, nutrient })),
);
const anyLine = fc.constantFrom(...lines);
/** Fine enough to fall on every line of the rules: whole multiples of 0.0005. */
const anyValue = fc.integer({ min: 0, max: 400_000 }).map((count) => dec(count).div(2000));

function printed(nutrient: NutrientName, value: Decimal, book: RuleBookName): readonly string[] {
  return declare(ruleOf(nutrient, book), value);
}

function implied(nutrient: NutrientName, text: string, book: RuleBookName): Interval {
  return answered(impliedBy(ruleOf(nutrient, book), text, book));
}

function holds({ low, lowIncluded, high, highIncluded }: Interval, value: Decimal): boolean {
  return (lowIncluded ? value.gte(low) : value.gt(low)) && (highIncluded ? value.lte(high) : value.lt(high));
}

describe("declaring and reading back", () => {
  it("whatever may be printed for a value implies that value", () => {
    always(2000, [anyLine, anyValue], ({ book, nutrient }, value) => {
      for (const text of printed(nutrient, value, book)) {
        expect(holds(implied(nutrient, text, book), value), `${book} ${nutrient} ${value.toString()} as ${text}`).toBe(
          true,
        );
      }
    });
  });

  it("whatever a printed value implies may be printed so, and nothing beyond it", () => {
    always(2000, [anyLine, anyValue, anyValue], ({ book, nutrient }, value, other) => {
      for (const text of printed(nutrient, value, book)) {
        const within = holds(implied(nutrient, text, book), other);
        expect(within, `${book} ${nutrient} ${other.toString()} as ${text}`).toBe(
          printed(nutrient, other, book).includes(text),
        );
      }
    });
  });

  it("holds at the ends of each interval", () => {
    always(2000, [anyLine, anyValue], ({ book, nutrient }, value) => {
      for (const text of printed(nutrient, value, book)) {
        const interval = implied(nutrient, text, book);
        for (const end of [dec(interval.low), dec(interval.high)]) {
          expect(printed(nutrient, end, book).includes(text), `${book} ${nutrient} ${end.toString()}`).toBe(
            holds(interval, end),
          );
        }
      }
    });
  });

  it("rounds up no value past a greater one", () => {
    always(100, [anyLine, anyValue, anyValue], ({ book, nutrient }, a, b) => {
      const [less, more] = a.lt(b) ? [a, b] : [b, a];
      expect(Number(printed(nutrient, less, book)[0])).toBeLessThanOrEqual(Number(printed(nutrient, more, book)[0]));
    });
  });
});

describe("what is refused", () => {
  it.each([
    ["<2", "label.not-by-the-book"],
    ["11.4", "label.not-by-the-book"],
    ["-1", "label.unreadable"],
    ["1,5", "label.unreadable"],
    ["", "label.unreadable"],
  ])("protein printed as %j on a US label", (text, code) => {
    expect(codesOf(impliedBy(nutrients.protein.label.US, text, "US"))).toEqual([code]);
  });

  it("names what the book could print", () => {
    const refused = impliedBy(nutrients.protein.label.US, "4.3", "US");
    expect(toldOf(refused)[0]?.expected).toBe("a value that the book's rounding can give, such as 4");
  });
});

describe("more digits than the rules ask for", () => {
  // The Commission's guidance binds nobody, and Japan's smallest places may be exceeded: what the digits say then holds.
  it.each([
    ["EU", "protein", "11.4 g", "11.35", "11.45"],
    ["EU", "protein", "11.0 g", "10.95", "11.05"],
    ["EU", "protein", "9.64", "9.635", "9.645"],
    ["EU", "protein", "0.3", "0.25", "0.35"],
    ["EU", "salt", "1.25", "1.245", "1.255"],
    ["JP", "salt", "0.013", "0.0125", "0.0135"],
  ] as const)("%s %s %s", (book, nutrient, text, low, high) => {
    expect(implied(nutrient, text, book)).toEqual({ low, lowIncluded: true, high, highIncluded: false });
  });
});

describe("what is understood", () => {
  it.each(["4", "4 g", "4g", " 4 grams "])("%j", (text) => {
    expect(implied("protein", text, "US")).toMatchObject({ low: "3.5", high: "4.5" });
  });

  it.each(["<1", "< 1 g", "Less than 1 g"])("%j", (text) => {
    expect(implied("protein", text, "US")).toEqual({ low: "0", lowIncluded: true, high: "1", highIncluded: false });
  });
});
