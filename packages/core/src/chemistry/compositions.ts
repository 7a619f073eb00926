import { type Composition, hydrate, pure } from "./composition.ts";

const recipes = {
  "sodium carbonate, anhydrous": () => pure("Na2CO3"),
  "sodium carbonate monohydrate": () => hydrate("Na2CO3.H2O"),
  "sodium carbonate decahydrate": () => hydrate("Na2CO3.10H2O"),
  "potassium carbonate, anhydrous": () => pure("K2CO3"),
  "potassium carbonate sesquihydrate": () => hydrate("K2CO3.1.5H2O"),
  "sodium bicarbonate": () => pure("NaHCO3"),
  "potassium bicarbonate": () => pure("KHCO3"),
  "sodium sesquicarbonate": () => hydrate("Na2CO3.NaHCO3.2H2O"),
  "sodium hydroxide": () => pure("NaOH"),
  "potassium hydroxide": () => pure("KOH"),
  "sodium bicarbonate, baked to carbonate": () => pure("Na2CO3"),
} as const satisfies Readonly<Record<string, () => Composition>>;

export type CatalogueComposition = keyof typeof recipes;

/** The pure products that trade names stand for. */
export const catalogueCompositions = Object.keys(recipes) as readonly CatalogueComposition[];

/** What a pure product is made of, worked out when it is asked for. @example catalogueComposition("sodium bicarbonate").species.NaHCO3 // => "100" */
export function catalogueComposition(name: CatalogueComposition): Composition {
  return recipes[name]();
}
