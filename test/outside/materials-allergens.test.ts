import { describe, expect, it } from "vitest";
import { allergenLists, type Jurisdiction } from "../../packages/core/src/materials/allergen-lists.ts";
import { allergensFor } from "../../packages/core/src/materials/allergens.ts";
import { findMaterial } from "../../packages/core/src/materials/catalogue.ts";
import type { Material } from "../../packages/core/src/materials/material.ts";

function material(name: string): Material {
  const found = findMaterial(name);
  if (!found.ok) throw new Error(name);
  return found.material;
}

/** The names, as the list of the place groups them, of what the materials contain. */
function contained(names: readonly string[], jurisdiction: Jurisdiction, duty: "must" | "recommended" = "must") {
  const { contains } = allergensFor(names.map(material), jurisdiction);
  return contains.filter((finding) => finding.duty === duty).map(({ name }) => name);
}

/**
 * What has to be named where, item by item. EU: Regulation (EU) No 1169/2011, Annex II. US: the eight of the Food
 * Allergen Labeling and Consumer Protection Act of 2004, and sesame by the FASTER Act of 2021. JP: Food Labelling
 * Standards, the eight since 9 March 2023. KR: rule as of January 2024. All read in copies; CA from memory.
 */
type Row = readonly [
  material: string,
  eu: string | undefined,
  us: string | undefined,
  jp: string | undefined,
  kr: string | undefined,
  ca: string | undefined,
];

const rows: readonly Row[] = [
  ["bread flour", "wheat (cereal containing gluten)", "wheat", "wheat", "wheat", "wheat, triticale"],
  ["semolina", "wheat (cereal containing gluten)", "wheat", "wheat", "wheat", "wheat, triticale"],
  ["vital wheat gluten", "wheat (cereal containing gluten)", "wheat", "wheat", "wheat", "wheat, triticale"],
  ["wheat bran", "wheat (cereal containing gluten)", "wheat", "wheat", "wheat", "wheat, triticale"],
  ["spelt", "wheat (cereal containing gluten)", "wheat", "wheat", "wheat", "wheat, triticale"],
  ["rye flour", "rye (cereal containing gluten)", undefined, undefined, undefined, "rye (gluten source)"],
  ["barley flour", "barley (cereal containing gluten)", undefined, undefined, undefined, "barley (gluten source)"],
  ["malt flour", "barley (cereal containing gluten)", undefined, undefined, undefined, "barley (gluten source)"],
  ["oat flour", "oats (cereal containing gluten)", undefined, undefined, undefined, "oats (gluten source)"],
  ["buckwheat flour", undefined, undefined, "buckwheat", "buckwheat", undefined],
  ["rice flour", undefined, undefined, undefined, undefined, undefined],
  ["cornstarch", undefined, undefined, undefined, undefined, undefined],
  ["potato starch", undefined, undefined, undefined, undefined, undefined],
  ["arrowroot", undefined, undefined, undefined, undefined, undefined],
  ["chickpea flour", undefined, undefined, undefined, undefined, undefined],
  ["soy flour", "soybeans", "soybeans", undefined, "soybeans", "soy"],
  ["whole egg", "eggs", "egg", "egg", "eggs", "eggs"],
  ["dried egg white", "eggs", "egg", "egg", "eggs", "eggs"],
  ["sesame oil", "sesame seeds", "sesame", undefined, undefined, "sesame seeds"],
  ["salt", undefined, undefined, undefined, undefined, undefined],
  ["sodium carbonate", undefined, undefined, undefined, undefined, undefined],
  ["tap water", undefined, undefined, undefined, undefined, undefined],
];

describe("allergens by law", () => {
  it.each(rows)("%s: EU %s, US %s, JP %s, KR %s, CA %s", (name, eu, us, jp, kr, ca) => {
    const expected = { EU: eu, US: us, JP: jp, KR: kr, CA: ca } as const;
    for (const place of ["EU", "US", "JP", "KR", "CA"] as const) {
      const one = expected[place];
      expect(contained([name], place), place).toEqual(one === undefined ? [] : [one]);
    }
  });

  it.each(["soy flour", "sesame oil"])("%s should be named in Japan, and need not be", (name) => {
    expect(contained([name], "JP", "recommended")).toHaveLength(1);
  });

  it("of wheat, buckwheat and egg together", () => {
    const dough = ["bread flour", "buckwheat flour", "whole egg"];
    expect(contained(dough, "US")).toEqual(["egg", "wheat"]);
    expect(contained(dough, "EU")).toEqual(["wheat (cereal containing gluten)", "eggs"]);
    expect(contained(dough, "JP")).toEqual(["egg", "wheat", "buckwheat"]);
  });

  it("triticale counts as wheat and as rye", () => {
    // Annex II names hybrids of the cereals.
    expect(contained(["triticale flour"], "EU")).toEqual([
      "wheat (cereal containing gluten)",
      "rye (cereal containing gluten)",
    ]);
    expect(contained(["triticale flour"], "US")).toEqual(["wheat"]);
  });

  it.each([
    // how many must be named: 14 groups of Annex II with the four cereals apart, 9 and sulphites, 8 and other nuts
    ["EU", 17],
    ["US", 10],
    ["JP", 8],
  ] as const)("%s has %i lines that must be named", (place, count) => {
    expect(allergenLists[place].allergens.filter(({ duty }) => duty === "must")).toHaveLength(count);
  });
});
