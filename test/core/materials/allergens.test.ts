import { describe, expect, it } from "vitest";
import { allergenLists } from "../../../packages/core/src/materials/allergen-lists.ts";
import { type AllergenMaterial, allergensFor } from "../../../packages/core/src/materials/allergens.ts";
import { allergenTags } from "../../../packages/core/src/materials/schema.ts";

const flour: AllergenMaterial = {
  name: "flour",
  allergens: ["wheat"],
  allergensPossible: ["barley"],
  allergensKnown: true,
};
const rye: AllergenMaterial = { name: "rye", allergens: ["rye"], allergensPossible: ["wheat"], allergensKnown: true };
const oats: AllergenMaterial = {
  name: "oats",
  allergens: ["oats"],
  allergensPossible: ["barley"],
  allergensKnown: true,
};
const mystery: AllergenMaterial = { name: "seasoning", allergens: [], allergensKnown: false };

describe("allergens", () => {
  it("tells what is in from what depends on the supplier", () => {
    const report = allergensFor([flour, rye], "EU");
    expect(report.contains.map(({ name, materials }) => [name, materials])).toEqual([
      ["wheat (cereal containing gluten)", ["flour"]],
      ["rye (cereal containing gluten)", ["rye"]],
    ]);
    expect(report.dependsOnSupplier.map(({ name, materials }) => [name, materials])).toEqual([
      ["barley (cereal containing gluten)", ["flour"]],
    ]);
    expect(allergensFor([rye], "US").dependsOnSupplier).toEqual([{ name: "wheat", duty: "must", materials: ["rye"] }]);
  });

  it("never takes an unknown material to be clean", () => {
    const report = allergensFor([flour, mystery, mystery], "US");
    expect(report.unknown).toEqual(["seasoning"]);
    expect(report.notes.map(({ code }) => code)).toContain("allergens.unknown");
    expect(allergensFor([flour], "US").notes.map(({ code }) => code)).not.toContain("allergens.unknown");
  });

  it("keeps gluten apart from what the law lists", () => {
    const report = allergensFor([rye, oats], "US");
    expect(report.contains).toEqual([]);
    expect(report.notListed).toEqual([
      { tag: "rye", materials: ["rye"] },
      { tag: "oats", materials: ["oats"] },
    ]);
    expect(report.gluten).toEqual({
      contains: [{ grain: "rye", materials: ["rye"] }],
      dependsOnSupplier: [
        { grain: "oats", materials: ["oats"] },
        { grain: "wheat", materials: ["rye"] },
        { grain: "barley", materials: ["oats"] },
      ],
    });
  });

  it("puts walnut with the nuts where the law does", () => {
    const walnut: AllergenMaterial = { name: "walnut", allergens: ["walnut"], allergensKnown: true };
    const names = (["US", "EU", "JP", "KR"] as const).map((place) => allergensFor([walnut], place).contains[0]?.name);
    expect(names).toEqual(["tree nuts", "nuts", "walnut", "walnut"]);
  });

  it("lists only tags that a material can carry", () => {
    const known = new Set<string>(allergenTags);
    const used = Object.values(allergenLists).flatMap(({ allergens }) => allergens.flatMap(({ tags }) => tags));
    expect(used.filter((tag) => !known.has(tag))).toEqual([]);
    expect(
      [...known].filter((tag) => !allergenLists.EU.allergens.some(({ tags }) => tags.some((one) => one === tag))),
    ).toEqual(["buckwheat"]);
  });
});
