import type { Product } from "../chemistry/carried.ts";
import { alkalinityM, ofFormula } from "../chemistry/composition.ts";
import { type Formula, hydrateNames, nameOf, saltProducts, speciesNames } from "../chemistry/species.ts";
import { plainName } from "./nearest.ts";

/** A salt or hydrate as a pure product. */
export interface KnownProduct extends Product {
  readonly formula: string;
  /** Whether it has alkalinity M. */
  readonly alkaline: boolean;
}

/** Every salt and hydrate known here whose name or formula has all the words, or that an everyday name stands for. @example knownProducts("hydroxide").length // => 2 */
export function knownProducts(words: string): readonly KnownProduct[] {
  const sought = words.toLowerCase().split(/\s+/u);
  const all = [...speciesNames, ...hydrateNames];
  const found = all.filter((formula) =>
    sought.every((word) => `${nameOf(formula)} ${formula}`.toLowerCase().includes(word)),
  );
  const meant = found.length > 0 ? found : all.filter((formula) => isNamed(formula, plainName(words)));
  return meant.map((formula) => {
    const composition = ofFormula(formula);
    return { formula, name: nameOf(formula), composition, alkaline: alkalinityM(composition).gt(0) };
  });
}

/** Whether one of the products of a salt or hydrate has a name. */
function isNamed(formula: Formula, name: string): boolean {
  return saltProducts.some(
    ({ of, name: own, aliases, names }) =>
      of === formula && [own, ...aliases, ...names.flatMap((row) => row.names)].some((one) => plainName(one) === name),
  );
}
