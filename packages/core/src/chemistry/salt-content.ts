import { type Figure, given, type Naming, worked } from "../figure/figure.ts";
import { definition, type Source } from "../figure/source.ts";
import { isChloride, speciesOf } from "./composition.ts";
import { atomicWeightSource } from "./elements.ts";
import { molarMassFigure } from "./named.ts";
import type { SpeciesName } from "./species.ts";

/** A salt of a product, and how much of the product it is, %. */
export type SaltShare = readonly [salt: SpeciesName, share: Figure];

/** What a mole of a salt counts for. */
type Counted = "equivalentsM" | "equivalentsP" | "sodium" | "potassium";

const counted: Readonly<Record<Counted, readonly [id: string, label: (salt: string) => string]>> = {
  equivalentsM: ["equivalents-m", (salt) => `equivalents of ${salt} to the end of bicarbonate`],
  equivalentsP: ["equivalents-p", (salt) => `equivalents of ${salt} to the end of carbonate`],
  sodium: ["sodium-count", (salt) => `sodium in a mole of ${salt}`],
  potassium: ["potassium-count", (salt) => `potassium in a mole of ${salt}`],
};

/** What 1 g of a product counts for by its salts, in mmol or meq; of sodium and potassium that of the alkaline salts. */
export function perGram(
  naming: Naming,
  what: Counted,
  shares: readonly SaltShare[],
  ...sources: readonly Source[]
): Figure {
  const isAlkalinity = what === "equivalentsM" || what === "equivalentsP";
  const salts = shares.filter(([salt]) => isAlkalinity || !isChloride(salt));
  if (salts.length === 0) return worked(naming, "0", {}, ...sources, atomicWeightSource);
  const [id, label] = counted[what];
  const count = ([salt]: SaltShare): Figure =>
    given(
      { id: `salt.${salt}.${id}`, label: label(salt), unit: "", places: 0 },
      speciesOf(salt)[what],
      "definition",
      definition,
    );
  const from = {
    content: salts.map(([, share]) => share),
    equivalents: salts.map(count),
    mass: salts.map(([salt]) => molarMassFigure(salt)),
  };
  return worked(naming, "10 * sum(content * equivalents / mass)", from, ...sources, atomicWeightSource);
}
