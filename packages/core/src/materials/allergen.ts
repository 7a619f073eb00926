const nuts = [
  "almond",
  "Brazil nut",
  "cashew",
  "coconut",
  "hazelnut",
  "macadamia",
  "pecan",
  "pine nut",
  "pistachio",
  "walnut",
] as const;
const fishes = ["mackerel", "salmon", "salmon roe"] as const;
const crustaceans = ["crab", "shrimp"] as const;
const molluscs = ["abalone", "clam", "mussel", "oyster", "squid"] as const;

/**
 * What a material is, as far as allergen law asks. The tags name the food, not the legal group: which law lists
 * which food is said in allergen-lists.ts. Where the kind is not known, the tag of the class is used: `fish`, `tree nut`.
 */
export const allergenTags = [
  "wheat",
  "rye",
  "barley",
  "oats",
  "buckwheat",
  "egg",
  "milk",
  "soy",
  "refined soybean oil",
  "sesame",
  "peanut",
  "tree nut",
  ...nuts,
  "fish",
  ...fishes,
  "crustacean",
  ...crustaceans,
  "mollusc",
  ...molluscs,
  "celery",
  "mustard",
  "lupin",
  "sulphite",
  "apple",
  "banana",
  "beef",
  "chicken",
  "gelatin",
  "kiwifruit",
  "orange",
  "peach",
  "pork",
  "tomato",
  "yam",
] as const;

/** An allergen, or a kind of one. */
export type Allergen = (typeof allergenTags)[number];

/** The kinds of a class that some place lists, or leaves out, by name. */
const kinds: Partial<Record<Allergen, readonly Allergen[]>> = {
  "tree nut": nuts,
  fish: fishes,
  crustacean: crustaceans,
  mollusc: molluscs,
  soy: ["refined soybean oil"],
};

/** The kinds of a class; none where the food is no class. @example kindsOf("crustacean") // => ["crab", "shrimp"] */
export function kindsOf(tag: Allergen): readonly Allergen[] {
  return kinds[tag] ?? [];
}

/** The class a kind belongs to; the food itself where it belongs to none. @example classOf("squid") // => "mollusc" */
export function classOf(tag: Allergen): Allergen {
  return allergenTags.find((one) => kindsOf(one).includes(tag)) ?? tag;
}
