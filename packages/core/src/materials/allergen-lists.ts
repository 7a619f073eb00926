import type { Source, Standing } from "../figure/source.ts";
import type { Allergen } from "./allergen.ts";

export type Jurisdiction = "US" | "EU" | "JP" | "KR" | "CA";

/** Something a law wants named when it is in a food. */
export interface ListedAllergen {
  /** In plain words, as the list groups it. */
  readonly name: string;
  /** What counts as it. */
  readonly tags: readonly Allergen[];
  /** The law demands it, or recommends it. */
  readonly duty: "must" | "recommended";
  /** Where this line is known less well than the list. */
  readonly standing?: Standing;
}

/** The allergens that a jurisdiction wants named. Lists change: each says what it stands for. */
export interface AllergenList {
  readonly jurisdiction: Jurisdiction;
  readonly title: string;
  /** The state of the law that the list shows. */
  readonly asOf: string;
  readonly allergens: readonly ListedAllergen[];
  readonly source: Source;
}

function must(name: string, tags: readonly Allergen[], standing?: Standing): ListedAllergen {
  return { name, tags, duty: "must", ...(standing && { standing }) };
}

function recommended(name: string, tags: readonly Allergen[]): ListedAllergen {
  return { name, tags, duty: "recommended" };
}

const us: AllergenList = {
  jurisdiction: "US",
  title: "major food allergens",
  asOf: "1 January 2023, when sesame was added",
  allergens: [
    must("milk", ["milk"]),
    must("egg", ["egg"]),
    must("fish", ["fish"]),
    must("crustacean shellfish", ["crustacean"]),
    must("tree nuts", ["tree nut", "walnut"]),
    must("peanuts", ["peanut"]),
    must("wheat", ["wheat"]),
    must("soybeans", ["soy"]),
    must("sesame", ["sesame"]),
    must("sulphites, from 10 mg/kg", ["sulphite"], "memory"),
  ],
  source: {
    cite: "Food Allergen Labeling and Consumer Protection Act of 2004; FASTER Act of 2021 (sesame)",
    standing: "copy",
  },
};

const eu: AllergenList = {
  jurisdiction: "EU",
  title: "substances or products causing allergies or intolerances",
  asOf: "Regulation (EU) No 1169/2011 of 25 October 2011",
  allergens: [
    must("wheat (cereal containing gluten)", ["wheat"]),
    must("rye (cereal containing gluten)", ["rye"]),
    must("barley (cereal containing gluten)", ["barley"]),
    must("oats (cereal containing gluten)", ["oats"]),
    must("crustaceans", ["crustacean"]),
    must("eggs", ["egg"]),
    must("fish", ["fish"]),
    must("peanuts", ["peanut"]),
    must("soybeans", ["soy"]),
    must("milk", ["milk"]),
    must("nuts", ["tree nut", "walnut"]),
    must("celery", ["celery"]),
    must("mustard", ["mustard"]),
    must("sesame seeds", ["sesame"]),
    must("sulphur dioxide and sulphites, above 10 mg/kg", ["sulphite"]),
    must("lupin", ["lupin"]),
    must("molluscs", ["mollusc"]),
  ],
  source: { cite: "Regulation (EU) No 1169/2011", at: "Annex II", standing: "copy" },
};

const jp: AllergenList = {
  jurisdiction: "JP",
  title: "eight that must and twenty that should be named",
  asOf: "9 March 2023, when walnut was added",
  allergens: [
    must("egg", ["egg"]),
    must("milk", ["milk"]),
    must("wheat", ["wheat"]),
    must("buckwheat", ["buckwheat"]),
    must("peanut", ["peanut"]),
    must("shrimp, crab", ["crustacean"]),
    must("walnut", ["walnut"]),
    must("nuts: walnut must, almond, cashew and macadamia should be named", ["tree nut"], "memory"),
    recommended("soybeans", ["soy"]),
    recommended("sesame", ["sesame"]),
    { ...recommended("salmon, mackerel", ["fish"]), standing: "memory" },
    { ...recommended("abalone, squid", ["mollusc"]), standing: "memory" },
  ],
  source: { cite: "Japan, Food Labelling Standards (2015), as restated by label advisers", standing: "copy" },
};

const kr: AllergenList = {
  jurisdiction: "KR",
  title: "allergens to be named",
  asOf: "January 2024",
  allergens: [
    must("eggs", ["egg"]),
    must("milk", ["milk"]),
    must("buckwheat", ["buckwheat"]),
    must("peanuts", ["peanut"]),
    must("soybeans", ["soy"]),
    must("wheat", ["wheat"]),
    must("walnut", ["walnut"]),
    must("sulphites, from 10 mg/kg", ["sulphite"]),
    must("mackerel", ["fish"], "memory"),
    must("crab, shrimp", ["crustacean"], "memory"),
    must("squid, shellfish", ["mollusc"], "memory"),
    must("pine nut, walnut", ["tree nut"], "memory"),
  ],
  source: { cite: "Korea, standards for labelling of foods", standing: "copy" },
};

const ca: AllergenList = {
  jurisdiction: "CA",
  title: "priority allergens and gluten sources",
  asOf: "no stated date: from memory",
  allergens: [
    must("eggs", ["egg"]),
    must("milk", ["milk"]),
    must("mustard", ["mustard"]),
    must("peanuts", ["peanut"]),
    must("crustaceans", ["crustacean"]),
    must("molluscs", ["mollusc"]),
    must("fish", ["fish"]),
    must("sesame seeds", ["sesame"]),
    must("soy", ["soy"]),
    must("sulphites, from 10 mg/kg", ["sulphite"]),
    must("tree nuts", ["tree nut", "walnut"]),
    must("wheat, triticale", ["wheat"]),
    must("rye (gluten source)", ["rye"]),
    must("barley (gluten source)", ["barley"]),
    must("oats (gluten source)", ["oats"]),
  ],
  source: { cite: "Canada, Food and Drug Regulations", at: "B.01.010.1", standing: "memory" },
};

/** Allergen lists by jurisdiction. */
export const allergenLists: Readonly<Record<Jurisdiction, AllergenList>> = { US: us, EU: eu, JP: jp, KR: kr, CA: ca };

/** Whether a text names a jurisdiction whose list is known. @example isJurisdiction("EU") // => true */
export function isJurisdiction(text: string | undefined): text is Jurisdiction {
  return text !== undefined && Object.hasOwn(allergenLists, text);
}
