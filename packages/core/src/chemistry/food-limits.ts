import type { Source } from "../figure/source.ts";
import { type Composition, isSesquicarbonate, sharesOf, speciesOf } from "./composition.ts";
import { type FoodLimit, type Known, known } from "./salts/record.ts";
import { monograph } from "./salts/sources.ts";
import type { SpeciesName } from "./species.ts";

const trona = monograph("sodium sesquicarbonate", "28th session 1981");

/** On the double salt of sodium carbonate and bicarbonate, and not on the two by themselves. */
const onSesquicarbonate: readonly FoodLimit[] = [
  { item: "sodium carbonate in sodium sesquicarbonate", least: "46.4", most: "50.0", unit: "%", source: trona },
  {
    item: "sodium hydrogen carbonate in sodium sesquicarbonate",
    least: "35.0",
    most: "38.6",
    unit: "%",
    source: trona,
  },
  { item: "water in sodium sesquicarbonate", least: "13.8", most: "16.7", unit: "%", source: trona },
];

/** The Japanese manufacturing standard of alkaline noodle salts. It names no hydroxide, no sesquicarbonate, and no strength. */
export const kansuiStandard: Source = {
  cite: "Japan, Specifications and Standards for Food Additives, manufacturing standard of kansui: carbonates, sodium hydrogen carbonate, and sodium and potassium salts of phosphoric acids, mixed, dissolved in water or diluted with wheat flour",
  standing: "copy",
};

/** The local code goes before every one of these limits. */
export const localCode = "check the local code: limits differ between countries and change";

/** Limits on the salts of a product, and the salts of which no limit is known here. */
export interface FoodLimits {
  readonly limits: readonly FoodLimit[];
  readonly notKnown: readonly SpeciesName[];
}

/** The limits on the salts of a product as additives. @example additiveLimits({ species: { KHCO3: "100" }, water: "0", inert: "0" }).limits.length // => 1 */
export function additiveLimits(composition: Composition): FoodLimits {
  if (isSesquicarbonate(composition)) return { limits: onSesquicarbonate, notKnown: [] };
  return limitsOf(composition, (name) => speciesOf(name).additiveLimits);
}

/** The limits on foods that name the salts of a product. @example foodLimits({ species: { KHCO3: "100" }, water: "0", inert: "0" }).notKnown // => ["KHCO3"] */
export function foodLimits(composition: Composition): FoodLimits {
  return limitsOf(composition, (name) => speciesOf(name).foodLimits);
}

function limitsOf(composition: Composition, of: (name: SpeciesName) => Known<readonly FoodLimit[]>): FoodLimits {
  const names = sharesOf(composition).map(([name]) => name);
  return {
    limits: [...new Set(names.flatMap((name) => known(of(name)) ?? []))],
    notKnown: names.filter((name) => of(name) === "not known"),
  };
}

/** The standards that do not let hydroxides into noodles, for a sentence. */
export const standardsWithoutHydroxides =
  "the Japanese manufacturing standard of kansui, which names no hydroxide (read in a copy), and the Japanese use standards, by which a hydroxide is neutralised or removed before the food is finished (from memory)";
