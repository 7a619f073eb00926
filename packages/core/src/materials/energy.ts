import type { Source } from "../figure/source.ts";
import type { DecimalText } from "../number/decimal.ts";

/** Energy that one gram of a nutrient counts for. */
export interface EnergyFactor {
  readonly nutrient: string;
  readonly kcal: DecimalText;
  readonly kilojoule: DecimalText;
}

export const annexXiv: Source = { cite: "Regulation (EU) No 1169/2011", at: "Annex XIV", standing: "copy" };

/** Conversion factors of the European Union. */
export const euEnergyFactors = {
  carbohydrate: { nutrient: "carbohydrate (except polyols)", kcal: "4", kilojoule: "17" },
  polyols: { nutrient: "polyols", kcal: "2.4", kilojoule: "10" },
  protein: { nutrient: "protein", kcal: "4", kilojoule: "17" },
  fat: { nutrient: "fat", kcal: "9", kilojoule: "37" },
  salatrim: { nutrient: "salatrims", kcal: "6", kilojoule: "25" },
  alcohol: { nutrient: "alcohol (ethanol)", kcal: "7", kilojoule: "29" },
  organicAcid: { nutrient: "organic acid", kcal: "3", kilojoule: "13" },
  fibre: { nutrient: "fibre", kcal: "2", kilojoule: "8" },
  erythritol: { nutrient: "erythritol", kcal: "0", kilojoule: "0" },
} as const satisfies Readonly<Record<string, EnergyFactor>>;

/** What sodium is multiplied with to be declared as salt. */
export const saltFactors = {
  EU: { factor: "2.5", source: { cite: "Regulation (EU) No 1169/2011", at: "Annex I point 11", standing: "copy" } },
  JP: {
    factor: "2.54",
    source: { cite: "Japan, Food Labelling Standards (2015), labelling guides", standing: "copy" },
  },
} as const satisfies Readonly<Record<string, { readonly factor: DecimalText; readonly source: Source }>>;
