import type { Allergen, Jurisdiction } from "@noodlewright/core/answers";
import { describe, expect, it } from "vitest";
import { allergenLists } from "#core/materials/allergen-lists.ts";
import { allergensFor } from "#core/materials/allergens.ts";
import { catalogued } from "./catalogued.ts";

/** The names, as the list of the place groups them, of what the materials contain. */
function contained(names: readonly string[], jurisdiction: Jurisdiction, duty: "must" | "recommended" = "must") {
  const { contains } = allergensFor(names.map(catalogued), jurisdiction);
  return contains.filter((finding) => finding.duty === duty).map(({ name }) => name);
}

/** What a food of one tag means in a place: the name, the kind, and whether it must be named. */
function meaning(tag: Allergen, place: Jurisdiction): string {
  const made = allergensFor([{ name: "it", allergens: [tag], allergensKnown: true }], place);
  const contained = made.contains.map(({ name, kinds, duty }) => [duty, [name, ...kinds].join(": ")].join(" "));
  const asked = made.askWhich.map(({ listed }) => `ask: ${listed.join(", ")}`);
  return [...contained, ...asked, ...made.exempt.map(({ where }) => `exempt, ${where}`)].join("; ") || "-";
}

/**
 * What has to be named where, item by item. EU: Regulation (EU) No 1169/2011, Annex II. US: 21 USC 321(qq). JP: Food
 * Labelling Standards, the nine since 1 April 2026. KR: nineteen names of the Enforcement Rule, Annex 2. CA: Food and Drug
 * Regulations as amended on 17 June 2026. All read in copies.
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
  ["bread flour", "wheat (cereal containing gluten)", "wheat", "wheat", "wheat", "wheat or triticale"],
  ["semolina", "wheat (cereal containing gluten)", "wheat", "wheat", "wheat", "wheat or triticale"],
  ["vital wheat gluten", "wheat (cereal containing gluten)", "wheat", "wheat", "wheat", "wheat or triticale"],
  ["wheat bran", "wheat (cereal containing gluten)", "wheat", "wheat", "wheat", "wheat or triticale"],
  ["spelt", "wheat (cereal containing gluten)", "wheat", "wheat", "wheat", "wheat or triticale"],
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
  ["soy flour", "soybeans", "soybeans", undefined, "soybeans", "soybeans"],
  ["soybean oil", undefined, undefined, undefined, "soybeans", undefined],
  ["whole egg", "eggs", "egg", "egg", "eggs of poultry", "eggs"],
  ["dried egg white", "eggs", "egg", "egg", "eggs of poultry", "eggs"],
  ["sesame oil", "sesame seeds", "sesame", undefined, undefined, "sesame seeds"],
  ["salt", undefined, undefined, undefined, undefined, undefined],
  ["sodium carbonate", undefined, undefined, undefined, undefined, undefined],
  ["tap water", undefined, undefined, undefined, undefined, undefined],
];

/**
 * Foods of noodle kitchens that lists treat unlike. Sources as above, with CXS 1-1985 as amended in 2024, GB 7718-2025
 * (to be named from 16 March 2027 on) and FDA's kinds of nut of January 2025.
 */
const nutsEU = "almond, hazelnut, walnut, cashew, pecan, Brazil nut, pistachio, macadamia";
const matrix: readonly (readonly [Allergen, Jurisdiction, string])[] = [
  ["fish", "JP", "ask: salmon roe, salmon, mackerel"],
  ["fish", "KR", "ask: mackerel"],
  ["fish", "US", "must fish"],
  ["fish", "CODEX", "must fish"],
  ["mackerel", "JP", "recommended mackerel"],
  ["mackerel", "KR", "must mackerel"],
  ["mackerel", "EU", "must fish: mackerel"],
  ["shrimp", "JP", "must shrimp"],
  ["shrimp", "US", "must crustacean shellfish: shrimp"],
  ["clam", "US", "-"],
  ["clam", "JP", "-"],
  ["clam", "KR", "must shellfish: clam"],
  ["clam", "CODEX", "-"],
  ["squid", "JP", "recommended squid"],
  ["squid", "EU", "must molluscs: squid"],
  ["almond", "JP", "recommended almond"],
  ["almond", "KR", "-"],
  ["almond", "US", "must tree nuts: almond"],
  ["almond", "CODEX", "must tree nuts: almond"],
  ["cashew", "JP", "must cashew nut"],
  ["pistachio", "JP", "recommended pistachio"],
  ["macadamia", "CODEX", "by country macadamia"],
  ["pine nut", "EU", "-"],
  ["pine nut", "US", "must tree nuts: pine nut"],
  ["pine nut", "KR", "must pine nut"],
  ["pine nut", "CODEX", "by country pine nut"],
  ["coconut", "US", "-"],
  ["tree nut", "EU", `ask: ${nutsEU}`],
  ["rye", "CN", "recommended cereals containing gluten: rye"],
  ["rye", "CODEX", "must rye"],
  ["buckwheat", "CN", "-"],
  ["buckwheat", "CODEX", "by country buckwheat"],
  ["soy", "CODEX", "by country soybeans"],
  ["soy", "JP", "recommended soybeans"],
  ["refined soybean oil", "US", "exempt, highly refined"],
  ["refined soybean oil", "EU", "exempt, fully refined"],
  ["refined soybean oil", "UK", "exempt, fully refined"],
  ["refined soybean oil", "KR", "must soybeans: refined soybean oil"],
  ["refined soybean oil", "JP", "recommended soybeans: refined soybean oil"],
  ["sesame", "KR", "-"],
  ["yam", "JP", "recommended yam"],
  ["lupin", "AU", "must lupin"],
  ["celery", "AU", "-"],
  ["mustard", "CA", "must mustard seeds"],
  ["sulphite", "US", "ingredient sulphites, from 10 mg/kg"],
  ["sulphite", "JP", "-"],
  ["sulphite", "EU", "must sulphur dioxide and sulphites, above 10 mg/kg"],
];

describe("what one food means in one place", () => {
  it.each(matrix)("%s in %s: %s", (tag, place, expected) => {
    expect(meaning(tag, place)).toBe(expected);
  });
});

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
    expect(contained(dough, "JP")).toEqual(["wheat", "buckwheat", "egg"]);
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
    // 14 groups of Annex II with the four cereals apart; the nine of the United States; 9 + 20 in Japan; 19 names in Korea
    ["EU", 17, 0],
    ["US", 9, 0],
    ["JP", 9, 20],
    ["KR", 19, 0],
    ["CN", 0, 8],
  ] as const)("%s has %i lines that must and %i that should be named", (place, must, should) => {
    const of = (wanted: string) => allergenLists[place].allergens.filter(({ duty }) => duty === wanted);
    expect([of("must").length, of("recommended").length]).toEqual([must, should]);
  });
});
