import type { NutrientName, RuleBookName } from "@noodlewright/core/answers";
import { describe, expect, it } from "vitest";
import { declare, impliedBy } from "#core/materials/declare.ts";
import { ruleOf } from "../core/materials/rule-of.ts";
import { answered } from "../core/told-of.ts";

/** Of each book and nutrient: a value, what has to be printed for it, and what may be printed instead. */
interface Group {
  readonly source: string;
  readonly rows: Readonly<Partial<Record<`${RuleBookName} ${NutrientName}`, string>>>;
}

/** Values on both sides of every line of the rules, by the text of the rules. Halves up: common practice, no source. */
const groups: readonly Group[] = [
  {
    source: "21 CFR 101.9(c)(1): below 5 may be 0; nearest 5 up to and including 50; nearest 10 above",
    rows: {
      "US energy": "4.9 0 5, 2 0, 5 5, 47.4 45, 47.5 50, 50 50, 54.9 50, 55 60, 108.3 110",
    },
  },
  {
    source: "21 CFR 101.9(c)(2): below 0.5 shall be 0; nearest 0.5 below 5; nearest 1 above",
    rows: {
      "US fat": "0.49 0, 0.5 0.5, 1.2 1, 3.2 3, 3.4 3.5, 4.75 5, 5.4 5, 5.5 6",
    },
  },
  {
    source: "21 CFR 101.9(c)(4): below 5 is 0; nearest 5 from 5 to 140; nearest 10 above",
    rows: {
      "US sodium": "4.99 0, 5 5, 137.5 140, 140 140, 144.9 140, 145 150",
    },
  },
  {
    source:
      "21 CFR 101.9(c)(8)(ii) to (iv), read in a copy: potassium to 1 mg; below 2 % of 4700 mg it may be 0. Its own example prints 235 mg",
    rows: {
      "US potassium": "33 0 33, 93.4 0 93, 94 94, 142 142, 235 235",
    },
  },
  {
    source: "21 CFR 101.9(c)(6): nearest 1 g; below 1 g may be less than 1 g; below 0.5 g may be 0",
    rows: {
      "US carbohydrate": "0.4 0 <1, 0.5 1 <1, 0.99 1 <1, 1 1, 21.5 22",
      "US fibre": "0.72 1 <1",
      "US sugars": "0.1 0 <1",
    },
  },
  {
    source: "21 CFR 101.9(c)(7) and FDA Food Labeling Guide, Appendix H: as carbohydrate",
    rows: {
      "US protein": "0.49 0 <1, 0.6 1 <1, 3.49 3, 3.5 4, 4.49 4",
    },
  },
  {
    source: "European Commission guidance of December 2012: energy to 1 kcal",
    rows: {
      "EU energy": "348.18 348, 348.5 349",
    },
  },
  {
    source:
      "European Commission guidance of December 2012: from 10 g to 1 g; above 0.5 and below 10 g to 0.1 g; else 0 or <0.5",
    rows: {
      "EU protein": "9.94 9.9, 9.95 10, 9.96 10, 10.4 10, 10.5 11, 0.5 0 <0.5, 0.51 0.5",
      "EU fat": "1.66 1.7",
      "EU carbohydrate": "70.13 70",
      "EU sugars": "0.31 0 <0.5",
      "EU fibre": "2.4 2.4",
    },
  },
  {
    source:
      "European Commission guidance of December 2012: salt from 1 g to 0.1 g; below to 0.01 g; to 0.0125 g 0 or <0.01",
    rows: {
      "EU salt": "0.0125 0 <0.01, 0.013 0.01, 0.994 0.99, 0.996 1.0, 1.441 1.4",
    },
  },
  {
    source: "European Commission guidance of December 2012: saturates above 0.1 and below 10 g to 0.1 g",
    rows: {
      "EU saturates": "0.14 0.1, 3.25 3.3",
    },
  },
  {
    source:
      "Japan, Food Labelling Standards (2015), Appended Table 9 (0 allowed); 0.1 g as smallest place, from memory",
    rows: {
      "JP protein": "0.49 0 0.5, 0.5 0.5",
      "JP fat": "1.66 1.7",
      "JP carbohydrate": "71.7 71.7",
      "JP energy": "4.9 0 5",
      "JP sodium": "4.9 0 5",
    },
  },
  {
    source:
      "Japan, notice on the smallest place, as a label adviser told it on 8 February 2018: salt is 0 below 5 mg of sodium, else to 0.1 g, and one digit that counts where that would be 0.0; salt in g is sodium in mg × 2.54 / 1000",
    rows: {
      "JP salt": "0.012446 0 0.01, 0.0127 0.01, 0.01778 0.02, 0.0381 0.04, 0.049784 0.05, 0.050038 0.1, 1.0414 1.0",
    },
  },
];

describe.each(groups)("$source", ({ rows: told }) => {
  const rows = Object.entries(told).flatMap(([key, list]) => {
    const [book, nutrient] = key.split(" ") as [RuleBookName, NutrientName];
    return list.split(", ").map((row) => {
      const [value = "", printed = "", ...others] = row.split(" ");
      return [book, nutrient, value, printed, others] as const;
    });
  });

  it.each(rows)("%s: %s %s is printed as %s", (book, nutrient, value, printed, others) => {
    expect(declare(ruleOf(nutrient, book), value)).toEqual([printed, ...others]);
  });

  it.each(rows)("%s: %s %s is among what %s stands for", (book, nutrient, value, printed, others) => {
    for (const text of [printed, ...others]) {
      const { low, lowIncluded, high, highIncluded } = answered(impliedBy(ruleOf(nutrient, book), text, book));
      const number = Number(value);
      expect(lowIncluded ? number >= Number(low) : number > Number(low)).toBe(true);
      expect(highIncluded ? number <= Number(high) : number < Number(high)).toBe(true);
    }
  });
});
