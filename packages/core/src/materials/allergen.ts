/**
 * What a material is, as far as allergen law asks. The tags name the food, not the legal group: which law lists
 * which food is said in allergen-lists.ts.
 */
export type Allergen =
  | "wheat"
  | "rye"
  | "barley"
  | "oats"
  | "buckwheat"
  | "egg"
  | "milk"
  | "soy"
  | "sesame"
  | "peanut"
  | "tree nut"
  | "walnut"
  | "fish"
  | "crustacean"
  | "mollusc"
  | "celery"
  | "mustard"
  | "lupin"
  | "sulphite";
