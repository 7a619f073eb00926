import type { Source } from "../figure/source.ts";
import { type DecimalText, dec } from "../number/decimal.ts";
import { type Composition, isSesquicarbonate } from "./composition.ts";
import type { SpeciesName } from "./species.ts";

/** A limit that a food law or standard sets, with the text it comes from. Whether it binds where one works, the local code tells. */
export interface FoodLimit {
  readonly species: readonly SpeciesName[];
  /** What the limit is on: the additive as bought, or the food. */
  readonly on: "additive" | "food";
  /** It is on the double salt of sodium carbonate and bicarbonate, and not on the two by themselves. */
  readonly sesquicarbonate?: true;
  readonly item: string;
  readonly least?: DecimalText;
  readonly most?: DecimalText;
  readonly unit: string;
  readonly source: Source;
}

function monograph(substance: string, at: string): Source {
  return {
    cite: `Joint FAO/WHO Expert Committee on Food Additives, specification of ${substance}`,
    at,
    standing: "copy",
  };
}

const soda = monograph("sodium carbonate", "19th session 1975, revised 59th 2002");
const bicarbonate = monograph("sodium hydrogen carbonate", "19th session 1975, revised 59th 2002");
const trona = monograph("sodium sesquicarbonate", "28th session 1981");
const sodiumHydroxide = monograph("sodium hydroxide", "19th session 1975, revised 59th 2002");
const potassiumHydroxide = monograph("potassium hydroxide", "19th session 1975, revised 59th 2002");
const potash: Source = {
  cite: "Regulation (EU) No 231/2012 and JECFA specification of potassium carbonate",
  standing: "memory",
};
const pharmacopoeia: Source = { cite: "United States Pharmacopeia 32", standing: "copy" };
const instantNoodles: Source = { cite: "Codex GSFA, category 06.4.3, pre-cooked pastas and noodles", standing: "copy" };
const noodleCaps: Source = {
  cite: "India, Food Safety and Standards, Food Additives, Appendix A, pastas and noodles",
  standing: "copy",
};

function sesquicarbonateLimit(item: string, least: DecimalText, most: DecimalText): FoodLimit {
  return { species: ["Na2CO3"], on: "additive", sesquicarbonate: true, item, least, most, unit: "%", source: trona };
}

const phosphates = [
  "Na3PO4",
  "Na2HPO4",
  "NaH2PO4",
  "K3PO4",
  "K2HPO4",
  "KH2PO4",
  "Na4P2O7",
  "K4P2O7",
  "Na5P3O10",
] as const;

/** The limits that the sources at hand give. */
export const foodLimits: readonly FoodLimit[] = [
  {
    species: ["Na2CO3"],
    on: "additive",
    item: "sodium carbonate after drying",
    least: "99.0",
    unit: "%",
    source: soda,
  },
  { species: ["Na2CO3"], on: "additive", item: "loss on drying, anhydrous", most: "2", unit: "%", source: soda },
  { species: ["Na2CO3"], on: "additive", item: "loss on drying, monohydrate", most: "15", unit: "%", source: soda },
  {
    species: ["Na2CO3"],
    on: "additive",
    item: "loss on drying, decahydrate",
    least: "55",
    most: "65",
    unit: "%",
    source: soda,
  },
  { species: ["Na2CO3"], on: "additive", item: "lead", most: "2", unit: "mg/kg", source: soda },
  {
    species: ["NaHCO3"],
    on: "additive",
    item: "sodium hydrogen carbonate after drying",
    least: "99.0",
    unit: "%",
    source: bicarbonate,
  },
  { species: ["NaHCO3"], on: "additive", item: "loss on drying", most: "0.25", unit: "%", source: bicarbonate },
  sesquicarbonateLimit("sodium carbonate in sodium sesquicarbonate", "46.4", "50.0"),
  sesquicarbonateLimit("sodium hydrogen carbonate in sodium sesquicarbonate", "35.0", "38.6"),
  sesquicarbonateLimit("water in sodium sesquicarbonate", "13.8", "16.7"),
  {
    species: ["K2CO3"],
    on: "additive",
    item: "potassium carbonate after drying",
    least: "99.0",
    unit: "%",
    source: potash,
  },
  { species: ["K2CO3"], on: "additive", item: "loss on drying, hydrated", most: "18", unit: "%", source: potash },
  {
    species: ["KHCO3"],
    on: "additive",
    item: "potassium hydrogen carbonate after drying",
    least: "99.5",
    most: "101.5",
    unit: "%",
    source: pharmacopoeia,
  },
  {
    species: ["NaOH"],
    on: "additive",
    item: "total alkali as NaOH",
    least: "95.0",
    unit: "%",
    source: sodiumHydroxide,
  },
  { species: ["NaOH"], on: "additive", item: "carbonate as Na2CO3", most: "3", unit: "%", source: sodiumHydroxide },
  {
    species: ["KOH"],
    on: "additive",
    item: "total alkali as KOH",
    least: "85.0",
    unit: "%",
    source: potassiumHydroxide,
  },
  { species: ["KOH"], on: "additive", item: "carbonate as K2CO3", most: "3.5", unit: "%", source: potassiumHydroxide },
  {
    species: ["Na2CO3"],
    on: "food",
    item: "sodium carbonate in pastas and noodles",
    most: "10000",
    unit: "mg/kg",
    source: noodleCaps,
  },
  {
    species: ["K2CO3"],
    on: "food",
    item: "potassium carbonate in pastas and noodles",
    most: "11000",
    unit: "mg/kg",
    source: noodleCaps,
  },
  {
    species: phosphates,
    on: "food",
    item: "phosphates in pre-cooked noodles (as phosphorus: from memory)",
    most: "2500",
    unit: "mg/kg",
    source: instantNoodles,
  },
];

/** What the Japanese manufacturing standard lets alkaline noodle salts be made of. It names no hydroxide, no sesquicarbonate, and no strength. */
export const japaneseSalts: { readonly allowed: readonly SpeciesName[]; readonly source: Source } = {
  allowed: ["K2CO3", "Na2CO3", "NaHCO3", ...phosphates],
  source: {
    cite: "Japan, Specifications and Standards for Food Additives, manufacturing standard of kansui: carbonates, sodium hydrogen carbonate, and sodium and potassium salts of phosphoric acids, mixed, dissolved in water or diluted with wheat flour",
    standing: "copy",
  },
};

/** The local code goes before every one of these limits. */
export const localCode = "check the local code: limits differ between countries and change";

/** The limits on what is in a product. @example foodLimitsFor({ species: { KHCO3: "100" }, water: "0", inert: "0" }).length // => 1 */
export function foodLimitsFor(composition: Composition): readonly FoodLimit[] {
  const double = isSesquicarbonate(composition);
  return foodLimits
    .filter(({ on, sesquicarbonate = false }) => on === "food" || sesquicarbonate === double)
    .filter(({ species }) => species.some((name) => dec(composition.species[name] ?? 0).gt(0)));
}

/** The standards that do not let hydroxides into noodles, for a sentence. */
export const standardsWithoutHydroxides =
  "the Japanese manufacturing standard of kansui, which names no hydroxide (read in a copy), and the Japanese use standards, by which a hydroxide is neutralised or removed before the food is finished (from memory)";
