import { bakedAsAssumed, ovenCautions } from "../../chemistry/baking.ts";
import {
  type Composition,
  fromMasses,
  isChloride,
  ofFormula,
  potassiumShare,
  sodiumShare,
  speciesOf,
} from "../../chemistry/composition.ts";
import { atomicWeightSource, molarMass } from "../../chemistry/elements.ts";
import { type Formula, hydrateNames, hydrates, isHydrate, nameOf, saltProducts } from "../../chemistry/species.ts";
import { at } from "../../figure/source.ts";
import { dec, decimalText, HUNDRED } from "../../number/decimal.ts";
import type { Material } from "../material.ts";
import type { Entry } from "./entry.ts";
import { natures } from "./nature.ts";
import { usdaSource } from "./usda-sr28.ts";

const weakAlkali = ["weak alkali: for noodles it is baked to carbonate first, or gives a milder dough"];

const saltNames = ["table salt", "sodium chloride", "NaCl"] as const;

/** Table salt and the alkaline salts. */
export const saltEntries: readonly Entry[] = [
  { key: "usda 02047", name: "salt", aliases: saltNames, build: tableSalt },
  // Sodium chloride is the table salt.
  ...saltProducts
    .filter(({ of }) => of !== "NaCl")
    .map(({ key, of, name, baked = false, aliases: others }) => {
      const naming = { key: `salt ${key}`, name, aliases: baked ? others : [...others, of] };
      return { ...naming, build: () => ({ ...naming, ...pureSalt(of, baked) }) };
    }),
];

function pureSalt(formula: Formula, baked: boolean): Omit<Material, "key" | "name" | "aliases"> {
  return {
    ...natures[!isHydrate(formula) && isChloride(formula) ? "salt" : "alkali"],
    ...elements(ofFormula(formula)),
    allergensKnown: true,
    notes: baked
      ? bakedAsAssumed
      : formula === "NaHCO3"
        ? weakAlkali
        : isOftenHydrated(formula)
          ? [waterNotSaid(nameOf(formula))]
          : [],
    ...(baked && { cautions: ovenCautions }),
    source: atomicWeightSource,
  };
}

/** A phosphate without water that is sold with it as well, under the same short names. */
function isOftenHydrated(formula: Formula): boolean {
  const others = hydrateNames.some((one) => Object.hasOwn(hydrates[one].species, formula));
  return !isHydrate(formula) && speciesOf(formula).kind === "phosphate" && others;
}

/** Said where a name that does not tell of water is read as that of the salt without. */
export function waterNotSaid(name: string): string {
  return `taken for ${name} without crystal water; where the label tells of water, name the hydrate`;
}

function elements(composition: Composition): Pick<Material, "composition" | "moisture" | "sodium" | "potassium"> {
  return {
    composition,
    moisture: composition.water,
    sodium: decimalText(sodiumShare(composition).times(1000)),
    potassium: decimalText(potassiumShare(composition).times(1000)),
  };
}

/** SR28 prints sodium, water and ash of table salt; its sodium chloride is what the sodium makes. */
function tableSalt(): Material {
  const sodium = "38758";
  const moisture = "0.20";
  const chloride = dec(sodium).div(1000).times(molarMass("NaCl")).div(molarMass("Na"));
  const inert = HUNDRED.minus(moisture).minus(chloride);
  return {
    key: "usda 02047",
    name: "salt",
    published: "Salt, table",
    aliases: saltNames,
    ...natures.salt,
    moisture,
    protein: { value: "0.00" },
    fat: "0.00",
    carbohydrate: "0.00",
    fibre: "0.0",
    ash: "99.80",
    sodium,
    potassium: "8",
    energy: "0",
    composition: fromMasses({ species: { NaCl: chloride }, water: moisture, inert }),
    allergensKnown: true,
    notes: ["sodium chloride is worked out from the printed sodium; the rest of the ash counts as inert"],
    source: at(usdaSource, "NDB 02047"),
  };
}
