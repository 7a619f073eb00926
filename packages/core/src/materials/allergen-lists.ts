import { frozen } from "../figure/frozen.ts";
import type { Source, Standing } from "../figure/source.ts";
import type { Allergen } from "./allergen.ts";

/** Places whose lists are known; `CODEX` is the international standard, which binds nobody by itself. */
export const jurisdictions = frozen(["US", "EU", "UK", "CA", "AU", "JP", "KR", "CN", "CODEX"] as const);

/** A place whose law lists allergens. */
export type Jurisdiction = (typeof jurisdictions)[number];

/** Whether the law demands it, recommends it, leaves it to the country, or demands it as an ingredient and not as an allergen. */
export type Duty = "must" | "recommended" | "by country" | "ingredient";

/** Something a law wants named when it is in a food. */
export interface ListedAllergen {
  /** In plain words, as the list groups it. */
  readonly name: string;
  /** What counts as it, with every kind of it. */
  readonly tags: readonly Allergen[];
  readonly duty: Duty;
  /** What has to be known about the line. */
  readonly remark?: string;
  /** What the law lets off. */
  readonly exempt?: { readonly tags: readonly Allergen[]; readonly where: string; readonly standing?: Standing };
  /** Where this line is known less well than the list. */
  readonly standing?: Standing;
}

/** The allergens that a jurisdiction wants named. Lists change: each says what it stands for. */
export interface AllergenList {
  readonly jurisdiction: Jurisdiction;
  readonly title: string;
  /** The edition that the list shows. */
  readonly asOf: string;
  readonly allergens: readonly ListedAllergen[];
  readonly source: Source;
}

type More = Omit<ListedAllergen, "name" | "tags" | "duty">;

function listed(duty: Duty) {
  return (name: string, tags: readonly Allergen[], more: More = {}): ListedAllergen => ({ name, tags, duty, ...more });
}

const must = listed("must");
const recommended = listed("recommended");
const byCountry = listed("by country");

/** Foods that a list calls as they are called here, a line for each. */
function each(line: typeof must, ...foods: readonly Allergen[]): readonly ListedAllergen[] {
  return foods.map((food) => line(food, [food]));
}

function refinedOil(where: string, standing?: Standing): More {
  return { exempt: { tags: ["refined soybean oil"], where, ...(standing && { standing }) } };
}

/** The nuts that the European Union names. */
const eightNuts: readonly Allergen[] = [
  "almond",
  "hazelnut",
  "walnut",
  "cashew",
  "pecan",
  "Brazil nut",
  "pistachio",
  "macadamia",
];
const nineNuts: readonly Allergen[] = [...eightNuts, "pine nut"];

const us: AllergenList = {
  jurisdiction: "US",
  title: "nine major food allergens",
  asOf: "21 USC 321(qq) with sesame since 1 January 2023; kinds of nut by the guidance of January 2025, Edition 5",
  allergens: [
    ...each(must, "milk", "egg"),
    must("fish", ["fish"], { remark: "the species has to be named" }),
    must("crustacean shellfish", ["crustacean"], { remark: "the species has to be named" }),
    must("tree nuts", nineNuts, { remark: "the nut has to be named" }),
    must("peanuts", ["peanut"]),
    must("wheat", ["wheat"]),
    must("soybeans", ["soy"], refinedOil("highly refined")),
    must("sesame", ["sesame"]),
    listed("ingredient")("sulphites, from 10 mg/kg", ["sulphite"], { standing: "memory" }),
  ],
  source: {
    cite: "21 USC 321(qq), by the acts of 2004 and 2021; FDA, Questions and Answers Regarding Food Allergens, Edition 5, January 2025",
    at: "321(qq)(1) and (2); table 1",
    standing: "copy",
  },
};

const eu: AllergenList = {
  jurisdiction: "EU",
  title: "fourteen substances or products causing allergies or intolerances",
  asOf: "Regulation (EU) No 1169/2011, Annex II, in the text of 1 April 2025",
  allergens: [
    must("wheat (cereal containing gluten)", ["wheat"]),
    must("rye (cereal containing gluten)", ["rye"]),
    must("barley (cereal containing gluten)", ["barley"]),
    must("oats (cereal containing gluten)", ["oats"]),
    must("crustaceans", ["crustacean"]),
    must("eggs", ["egg"]),
    must("fish", ["fish"]),
    must("peanuts", ["peanut"]),
    must("soybeans", ["soy"], refinedOil("fully refined")),
    must("milk", ["milk"]),
    must("nuts", eightNuts, { remark: "the nut has to be named" }),
    ...each(must, "celery", "mustard"),
    must("sesame seeds", ["sesame"]),
    must("sulphur dioxide and sulphites, above 10 mg/kg", ["sulphite"]),
    must("lupin", ["lupin"]),
    must("molluscs", ["mollusc"]),
  ],
  source: { cite: "Regulation (EU) No 1169/2011", at: "Annex II", standing: "copy" },
};

const uk: AllergenList = {
  ...eu,
  jurisdiction: "UK",
  title: "fourteen allergens",
  asOf: "the Food Standards Agency's page of 7 August 2026, for England, Wales and Northern Ireland",
  source: { cite: "Regulation (EU) No 1169/2011 as assimilated law", at: "Annex II", standing: "copy" },
};

const ca: AllergenList = {
  jurisdiction: "CA",
  title: "food allergens, gluten sources and added sulphites",
  asOf: "Food and Drug Regulations as last amended on 17 June 2026",
  allergens: [
    must("eggs", ["egg"]),
    must("milk", ["milk"]),
    must("mustard seeds", ["mustard"]),
    must("peanuts", ["peanut"]),
    must("crustaceans", ["crustacean"]),
    must("molluscs", ["mollusc"]),
    must("fish", ["fish"]),
    must("sesame seeds", ["sesame"]),
    must("soybeans", ["soy"], refinedOil("without protein")),
    must("tree nuts", nineNuts, { remark: "the nut has to be named" }),
    must("wheat or triticale", ["wheat"]),
    must("rye (gluten source)", ["rye"]),
    must("barley (gluten source)", ["barley"]),
    must("oats (gluten source)", ["oats"]),
    must("sulphites, from 10 mg/kg added", ["sulphite"]),
  ],
  source: { cite: "Canada, Food and Drug Regulations", at: "B.01.010.1", standing: "copy" },
};

const au: AllergenList = {
  jurisdiction: "AU",
  title: "allergens by their plain names",
  asOf: "Standard 1.2.3 and Schedule 9, plain names since 25 February 2024",
  allergens: [
    must("wheat", ["wheat"]),
    must("rye", ["rye"], { remark: "gluten in the summary as well" }),
    must("barley", ["barley"], { remark: "gluten in the summary as well" }),
    must("oats", ["oats"], { remark: "gluten in the summary as well" }),
    ...each(must, ...nineNuts),
    ...each(must, "crustacean", "mollusc", "egg", "fish", "lupin", "milk", "peanut", "sesame"),
    must("soy", ["soy"], refinedOil("fully refined", "memory")),
    must("sulphites, from 10 mg/kg", ["sulphite"]),
  ],
  source: {
    cite: "Food Standards Australia New Zealand, Standard 1.2.3 and Schedule 9, by its guidance",
    standing: "copy",
  },
};

const april2026 = "since 1 April 2026; labels as before may stand until 31 March 2028";

const jp: AllergenList = {
  jurisdiction: "JP",
  title: "nine that must and twenty that should be named",
  asOf: "1 April 2026, when cashew and pistachio were added",
  allergens: [
    ...each(must, "shrimp", "crab"),
    must("cashew nut", ["cashew"], { remark: april2026 }),
    ...each(must, "walnut", "wheat", "buckwheat", "egg", "milk", "peanut"),
    ...each(recommended, "almond", "abalone", "squid", "salmon roe", "orange", "kiwifruit", "beef", "sesame"),
    ...each(recommended, "salmon", "mackerel"),
    recommended("soybeans", ["soy"]),
    ...each(recommended, "chicken", "banana"),
    recommended("pistachio", ["pistachio"], { remark: "since 1 April 2026" }),
    ...each(recommended, "pork", "macadamia", "peach", "yam", "apple", "gelatin"),
  ],
  source: {
    cite: "Japan, Food Labelling Standards (2015) and the notice on recommended items, as public copies and a news page of 16 December 2025 restate them; the ordinance itself was not read",
    standing: "copy",
  },
};

const kr: AllergenList = {
  jurisdiction: "KR",
  title: "nineteen names",
  asOf: "public copies of 2025 and 2026; a later change was looked for and not found",
  allergens: [
    must("eggs of poultry", ["egg"]),
    ...each(must, "milk", "buckwheat"),
    must("peanuts", ["peanut"]),
    must("soybeans", ["soy"]),
    ...each(must, "wheat", "mackerel", "crab", "shrimp", "pork", "peach", "tomato"),
    must("sulphites, from 10 mg/kg", ["sulphite"]),
    ...each(must, "walnut", "chicken", "beef", "squid"),
    must("shellfish", ["abalone", "clam", "mussel", "oyster"]),
    must("pine nut", ["pine nut"]),
  ],
  source: {
    cite: "Korea, Act on Labelling and Advertising of Foods, Enforcement Rule",
    at: "Annex 2",
    standing: "copy",
  },
};

const cn: AllergenList = {
  jurisdiction: "CN",
  title: "eight classes",
  asOf: "GB 7718-2025: recommended, as in GB 7718-2011, and to be named from 16 March 2027 on",
  allergens: [
    recommended("cereals containing gluten", ["wheat", "rye", "barley", "oats"]),
    recommended("crustaceans", ["crustacean"]),
    recommended("fish", ["fish"]),
    recommended("eggs", ["egg"]),
    recommended("peanuts", ["peanut"]),
    recommended("soybeans", ["soy"]),
    recommended("milk", ["milk"]),
    recommended("nuts and kernels", ["tree nut"]),
  ],
  source: { cite: "China, GB 7718-2025, by the ministry's questions and answers", at: "no. 38", standing: "copy" },
};

const codex: AllergenList = {
  jurisdiction: "CODEX",
  title: "foods that are always named, and foods that a country may add",
  asOf: "CXS 1-1985 as amended in December 2024",
  allergens: [
    ...each(must, "wheat", "rye", "barley"),
    must("crustacea", ["crustacean"]),
    must("eggs", ["egg"]),
    must("fish", ["fish"]),
    must("peanuts", ["peanut"]),
    ...each(must, "milk", "sesame"),
    must("tree nuts", ["almond", "cashew", "hazelnut", "pecan", "pistachio", "walnut"], {
      remark: "the nut has to be named",
    }),
    must("sulphites, from 10 mg/kg", ["sulphite"]),
    ...each(byCountry, "buckwheat", "celery", "oats", "lupin", "mustard"),
    byCountry("soybeans", ["soy"]),
    ...each(byCountry, "Brazil nut", "macadamia", "pine nut"),
  ],
  source: {
    cite: "Codex Alimentarius, CXS 1-1985, General Standard for the Labelling of Prepackaged Foods, by one reading",
    at: "4.2.1.4, 4.2.1.5 and 4.2.1.7",
    standing: "copy",
  },
};

/** Allergen lists by jurisdiction. */
export const allergenLists: Readonly<Record<Jurisdiction, AllergenList>> = {
  US: us,
  EU: eu,
  UK: uk,
  CA: ca,
  AU: au,
  JP: jp,
  KR: kr,
  CN: cn,
  CODEX: codex,
};
