import { bakedAsAssumed, ovenCautions } from "../../chemistry/baking.ts";
import { type Composition, fromMasses, potassiumShare, sodiumShare } from "../../chemistry/composition.ts";
import { type CatalogueComposition, catalogueComposition } from "../../chemistry/compositions.ts";
import { atomicWeightSource, molarMass } from "../../chemistry/species.ts";
import { at } from "../../figure/source.ts";
import { dec, decimalText, HUNDRED } from "../../number/decimal.ts";
import type { Material } from "../material.ts";
import type { Entry } from "./entry.ts";
import { natures } from "./nature.ts";
import { usdaSource } from "./usda-sr28.ts";

type SaltRow = readonly [key: string, name: string, composition: CatalogueComposition, ...aliases: string[]];

/** Pure alkaline salts: key, name, composition, other names. */
const rows: readonly SaltRow[] = [
  ["sodium-carbonate", "sodium carbonate", "sodium carbonate, anhydrous", "Na2CO3"],
  ["sodium-carbonate-monohydrate", "sodium carbonate monohydrate", "sodium carbonate monohydrate", "Na2CO3.H2O"],
  ["sodium-carbonate-decahydrate", "sodium carbonate decahydrate", "sodium carbonate decahydrate", "Na2CO3.10H2O"],
  ["potassium-carbonate", "potassium carbonate", "potassium carbonate, anhydrous", "K2CO3"],
  [
    "potassium-carbonate-sesquihydrate",
    "potassium carbonate sesquihydrate",
    "potassium carbonate sesquihydrate",
    "K2CO3.1.5H2O",
  ],
  ["sodium-bicarbonate", "sodium bicarbonate", "sodium bicarbonate", "baking soda", "bicarbonate of soda", "NaHCO3"],
  ["potassium-bicarbonate", "potassium bicarbonate", "potassium bicarbonate", "KHCO3"],
  ["sodium-sesquicarbonate", "sodium sesquicarbonate", "sodium sesquicarbonate", "Na2CO3.NaHCO3.2H2O"],
  ["sodium-hydroxide", "sodium hydroxide", "sodium hydroxide", "NaOH"],
  ["potassium-hydroxide", "potassium hydroxide", "potassium hydroxide", "KOH"],
  ["baked-soda", "baked baking soda", "sodium bicarbonate, baked to carbonate", "baked soda"],
];

const notes: Readonly<Record<string, readonly string[]>> = {
  "sodium-bicarbonate": ["weak alkali: for noodles it is baked to carbonate first, or gives a milder dough"],
  "baked-soda": bakedAsAssumed,
};

const saltNames = ["table salt", "sodium chloride", "NaCl"] as const;

/** Table salt and the alkaline salts. */
export const saltEntries: readonly Entry[] = [
  { key: "usda 02047", name: "salt", aliases: saltNames, build: tableSalt },
  ...rows.map((row) => {
    const [key, name, , ...aliases] = row;
    return { key: `salt ${key}`, name, aliases, build: () => alkali(row) };
  }),
];

function alkali([key, name, composition, ...aliases]: SaltRow): Material {
  return {
    key: `salt ${key}`,
    name,
    aliases,
    ...natures.alkali,
    ...elements(catalogueComposition(composition)),
    allergensKnown: true,
    notes: notes[key] ?? [],
    ...(composition === "sodium bicarbonate, baked to carbonate" && { cautions: ovenCautions }),
    source: atomicWeightSource,
  };
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
