import type { Allergen } from "@noodlewright/core/answers";
import { jurisdictions } from "@noodlewright/core/spec";
import { describe, expect, it } from "vitest";
import { allergenTags, classOf, kindsOf } from "#core/materials/allergen.ts";
import { allergenLists } from "#core/materials/allergen-lists.ts";
import { type AllergenMaterial, allergensFor } from "#core/materials/allergens.ts";

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
    expect(allergensFor([rye], "US").dependsOnSupplier).toEqual([
      { name: "wheat", duty: "must", kinds: [], materials: ["rye"] },
    ]);
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
      { tag: "rye", class: "rye", listed: [], materials: ["rye"] },
      { tag: "oats", class: "oats", listed: [], materials: ["oats"] },
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

  const of = (tag: Allergen): AllergenMaterial => ({ name: `${tag} powder`, allergens: [tag], allergensKnown: true });

  it("puts walnut with the nuts where the law does, and says that it is walnut", () => {
    const found = (["US", "EU", "JP", "KR", "CN"] as const).map((place) => {
      const [first] = allergensFor([of("walnut")], place).contains;
      return [first?.name, first?.kinds];
    });
    expect(found).toEqual([
      ["tree nuts", ["walnut"]],
      ["nuts", ["walnut"]],
      ["walnut", []],
      ["walnut", []],
      ["nuts and kernels", ["walnut"]],
    ]);
  });

  it("asks for the kind of what is known by its class alone, where the list names some kinds", () => {
    const report = allergensFor([of("fish"), of("mollusc")], "JP");
    expect(report.contains).toEqual([]);
    expect(report.notListed).toEqual([]);
    expect(report.askWhich).toEqual([
      { tag: "fish", class: "fish", listed: ["salmon roe", "salmon", "mackerel"], materials: ["fish powder"] },
      { tag: "mollusc", class: "mollusc", listed: ["abalone", "squid"], materials: ["mollusc powder"] },
    ]);
    expect(allergensFor([of("fish")], "EU").contains.map(({ name, kinds }) => [name, kinds])).toEqual([["fish", []]]);
  });

  it("names a kind that the list leaves out, with those that it has", () => {
    expect(allergensFor([of("oyster")], "JP").notListed).toEqual([
      { tag: "oyster", class: "mollusc", listed: ["abalone", "squid"], materials: ["oyster powder"] },
    ]);
  });

  it("loses no allergen: each is named, asked for, exempt or said not to be listed, once", () => {
    for (const place of jurisdictions) {
      for (const tag of allergenTags) {
        const { contains, askWhich, exempt, notListed } = allergensFor([of(tag)], place);
        expect(contains.length + askWhich.length + exempt.length + notListed.length, `${place} ${tag}`).toBe(1);
      }
    }
  });

  it("lists every food once, and tells its edition and how well it is known", () => {
    for (const place of jurisdictions) {
      const list = allergenLists[place];
      const tags = list.allergens.flatMap((line) => line.tags);
      expect(new Set(tags).size, place).toBe(tags.length);
      const [note] = allergensFor([flour], place).notes.filter(({ code }) => code === "allergens.list-date");
      expect(note?.facts).toMatchObject({ asOf: list.asOf, source: expect.stringContaining("[read in a copy]") });
    }
    expect(allergenTags.flatMap((tag) => kindsOf(tag)).every((kind) => kindsOf(classOf(kind)).includes(kind))).toBe(
      true,
    );
  });
});
