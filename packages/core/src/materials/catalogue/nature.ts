import type { Allergen } from "../allergen.ts";
import type { MaterialKind } from "../material.ts";

/** What a row of a table is by its nature, which the tables themselves do not print. */
interface Nature {
  readonly kind: MaterialKind;
  readonly glutenForming: boolean;
  readonly wholegrain: boolean;
  readonly allergens: readonly Allergen[];
  readonly allergensPossible: readonly Allergen[];
}

type Extra = Partial<Omit<Nature, "kind" | "allergens">>;

function nature(kind: MaterialKind, allergens: readonly Allergen[], extra: Extra = {}): Nature {
  return { kind, allergens, glutenForming: false, wholegrain: false, allergensPossible: [], ...extra };
}

/**
 * Gluten-forming: wheat, durum and spelt with all their protein, bran and germ with none of it. Triticale is left out:
 * its gluten is weak, and a floor of gluten-forming protein must not be met by it (common practice, no source).
 * Wholegrain: what the table calls so, and whole grains before milling.
 * Possible allergens: US flours may carry up to 0.75 % malted barley flour (21 CFR 137.105, read in a copy; for
 * whole wheat flour 21 CFR 137.200, from memory); rye, barley, oats and buckwheat usually meet wheat on the way
 * (common practice, no source). Soybean oil for salads and cooking is sold refined (common practice, no source).
 */
export const natures = {
  "wheat flour": nature("flour", ["wheat"], { glutenForming: true }),
  "wheat flour, US": nature("flour", ["wheat"], { glutenForming: true, allergensPossible: ["barley"] }),
  "whole wheat": nature("flour", ["wheat"], { glutenForming: true, wholegrain: true }),
  "whole wheat flour, US": nature("flour", ["wheat"], {
    glutenForming: true,
    wholegrain: true,
    allergensPossible: ["barley"],
  }),
  gluten: nature("gluten", ["wheat"], { glutenForming: true }),
  "wheat bran": nature("bran", ["wheat"]),
  "wheat germ": nature("other", ["wheat"]),
  "wheat starch": nature("starch", ["wheat"]),
  "wheat noodle": nature("other", ["wheat"], { glutenForming: true }),
  "buckwheat noodle": nature("other", ["buckwheat", "wheat"]),
  triticale: nature("flour", ["wheat", "rye"], { wholegrain: true }),
  rye: nature("flour", ["rye"], { allergensPossible: ["wheat"] }),
  "whole rye": nature("flour", ["rye"], { wholegrain: true, allergensPossible: ["wheat"] }),
  barley: nature("flour", ["barley"], { allergensPossible: ["wheat"] }),
  "whole barley": nature("flour", ["barley"], { wholegrain: true, allergensPossible: ["wheat"] }),
  oat: nature("flour", ["oats"], { allergensPossible: ["wheat", "barley", "rye"] }),
  "whole oat": nature("flour", ["oats"], { wholegrain: true, allergensPossible: ["wheat", "barley", "rye"] }),
  "oat bran": nature("bran", ["oats"], { allergensPossible: ["wheat", "barley", "rye"] }),
  buckwheat: nature("flour", ["buckwheat"], { allergensPossible: ["wheat"] }),
  "whole buckwheat": nature("flour", ["buckwheat"], { wholegrain: true, allergensPossible: ["wheat"] }),
  soy: nature("flour", ["soy"]),
  "other flour": nature("flour", []),
  "other whole flour": nature("flour", [], { wholegrain: true }),
  starch: nature("starch", []),
  egg: nature("egg", ["egg"]),
  "soy oil": nature("fat", ["refined soybean oil"]),
  "sesame oil": nature("fat", ["sesame"]),
  oil: nature("fat", []),
  salt: nature("salt", []),
  alkali: nature("alkali", []),
  water: nature("water", []),
  other: nature("other", []),
} as const satisfies Readonly<Record<string, Nature>>;

export type NatureName = keyof typeof natures;
