import type { Nutrient } from "@noodlewright/core/answers";
import { describe, expect, expectTypeOf, it } from "vitest";
import { countingOf, lineOf, nutrientNames, nutrients } from "#core/materials/nutrients.ts";

const books = ["US", "EU", "JP"] as const;

describe("the records of the nutrients", () => {
  it("leave no field out: what is not known is said to be so", () => {
    expectTypeOf<Required<Nutrient>>().toEqualTypeOf<Nutrient>();
    expectTypeOf<Omit<Nutrient, "boiling">>().not.toExtend<Nutrient>();
  });

  it.each(books)("give each line of a label in %s a place of its own", (book) => {
    const places = nutrientNames.map((name) => lineOf(name, book)?.line).filter((line) => typeof line === "number");
    expect(new Set(places).size).toBe(places.length);
    expect([...places].sort((one, other) => one - other)).toEqual(places.map((_, index) => index + 1));
  });

  it.each(books)("say of all that is told in %s what boiling does with it", (book) => {
    const told = nutrientNames.filter((name) => countingOf(name, book) !== undefined);
    expect(told.filter((name) => nutrients[name].boiling === "not known")).toEqual([]);
    expect(told).toContain("energy");
  });
});
