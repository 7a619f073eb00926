import { nearestNames } from "@noodlewright/core/chemistry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findMaterial } from "#core/materials/catalogue.ts";
import { editDistance, plainName } from "#core/materials/nearest.ts";
import { always } from "../../always.ts";

describe("edit distance", () => {
  it.each([
    // From the literature: kitten/sitting of Levenshtein's measure; ca/abc and teh/the of the optimal string alignment.
    ["kitten", "sitting", 3],
    ["ca", "abc", 3],
    ["teh", "the", 1],
    ["", "abc", 3],
    ["same", "same", 0],
  ])("%s to %s is %i", (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
  });

  it("is the same both ways, and zero only for the same text", () => {
    always(100, [fc.string({ maxLength: 12 }), fc.string({ maxLength: 12 })], (a, b) => {
      expect(editDistance(a, b)).toBe(editDistance(b, a));
      expect(editDistance(a, b) === 0).toBe(a === b);
      expect(editDistance(a, b)).toBeLessThanOrEqual(Math.max(a.length, b.length));
    });
  });
});

describe("nearest names", () => {
  const names = ["bread flour", "rye flour", "salt", "bread flour"];

  it("takes each name once, best first, and not more than asked for", () => {
    expect(nearestNames("bread flower", names)).toEqual(["bread flour"]);
    expect(nearestNames("flour", names, 1)).toHaveLength(1);
    expect(nearestNames("flour", names)).toEqual(["rye flour", "bread flour"]);
  });

  it.each([
    ["spelt flour", ["spelt", "spelt, whole grain"]],
    ["whole wheat", "whole wheat flour"],
    ["durum flour", ["durum wheat", "durum semolina", "durum wheat, whole grain"]],
    ["semolna", ["semolina", "durum semolina", "semolina, enriched"]],
    ["hole egg", ["whole egg", "whole egg, raw", "dried whole egg"]],
    ["whole weat flour", ["whole wheat flour"]],
    ["tapioca sago", ["tapioca"]],
    ["flour bred", ["bread flour"]],
    ["potatoe starch", ["potato starch"]],
  ])("goes by the words that few names have before the spelling of the whole: %s", (name, expected) => {
    const found = findMaterial(name);
    expect(found.ok ? found.material.name : found.nearest.slice(0, expected.length)).toEqual(expected);
  });

  it("always finds the name itself first", () => {
    always(100, [fc.constantFrom(...names)], (name) => {
      expect(nearestNames(name, names)[0]).toBe(name);
    });
  });

  it("takes hostile names calmly", () => {
    expect(nearestNames("x".repeat(1e5), names)).toEqual([]);
    expect(nearestNames("(.*)+$", names)).toEqual([]);
  });

  it("sees through case, spaces and punctuation", () => {
    expect(plainName(" Soft-Flour, grade 1 ")).toBe("softflourgrade1");
    expect(plainName("11.5 %")).toBe("11.5%");
  });
});

describe("the work of a look-up", () => {
  it("is bounded: of many names the first five hundred are looked at", () => {
    const many = Array.from({ length: 500 }, (_, index) => `mill ${index}`);
    expect(nearestNames("bred flour", [...many.slice(1), "bread flour"])).toEqual(["bread flour"]);
    expect(nearestNames("bred flour", [...many, "bread flour"])).toEqual([]);
  });
});
