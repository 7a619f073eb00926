import type { Source } from "../figure/source.ts";
import { annexXiv, euEnergyFactors, saltFactors } from "../materials/energy.ts";
import type { Nutrient, RuleBookName } from "../materials/rounding-rules.ts";
import type { DecimalText } from "../number/decimal.ts";
import type { ContentName } from "./composition.ts";

/** What is told of a noodle. Energy in kcal and kJ, sodium and potassium in mg, all else in g. */
export type AmountName = Nutrient | "kilojoule";

/** kcal or kJ per g of protein, fat, carbohydrate, and of fibre where it counts apart. */
export interface EnergyPerGram {
  readonly protein: DecimalText;
  readonly fat: DecimalText;
  readonly carbohydrate: DecimalText;
  readonly fibre?: DecimalText;
}

/** What a jurisdiction counts as protein, as carbohydrate, as energy and as salt. */
export interface NutritionRules {
  readonly book: RuleBookName;
  /** Which contents stand for protein and carbohydrate. */
  readonly protein: Extract<ContentName, "protein" | "labelProtein">;
  readonly carbohydrate: Extract<ContentName, "carbohydrate" | "availableCarbohydrate">;
  readonly words: { readonly protein: string; readonly carbohydrate: string };
  readonly energy: { readonly kcal: EnergyPerGram; readonly kilojoule?: EnergyPerGram };
  /** What sodium in g is multiplied with to be told as salt. */
  readonly salt?: { readonly factor: DecimalText; readonly source: Source };
  /** In the order of the label. */
  readonly declared: readonly AmountName[];
  readonly sources: { readonly protein: Source; readonly carbohydrate: Source; readonly energy: Source };
}

const memory = (cite: string, at: string): Source => ({ cite, at, standing: "memory" });
const annexI = (at: string): Source => ({ cite: "Regulation (EU) No 1169/2011", at, standing: "copy" });
const standards = "Japan, Food Labelling Standards (2015) and the notice on analytical methods";

const { protein, fat, carbohydrate, fibre } = euEnergyFactors;

/** Saturates and sugars, which labels want as well, cannot be told from flour tables: they need an analysis. */
export const nutritionRules: Readonly<Record<RuleBookName, NutritionRules>> = {
  EU: {
    book: "EU",
    protein: "labelProtein",
    carbohydrate: "availableCarbohydrate",
    words: { protein: "protein (N × 6.25)", carbohydrate: "carbohydrate (without fibre)" },
    energy: {
      kcal: { protein: protein.kcal, fat: fat.kcal, carbohydrate: carbohydrate.kcal, fibre: fibre.kcal },
      kilojoule: {
        protein: protein.kilojoule,
        fat: fat.kilojoule,
        carbohydrate: carbohydrate.kilojoule,
        fibre: fibre.kilojoule,
      },
    },
    salt: saltFactors.EU,
    declared: ["kilojoule", "energy", "fat", "carbohydrate", "fibre", "protein", "salt"],
    sources: {
      protein: annexI("Annex I point 10"),
      carbohydrate: memory("Regulation (EU) No 1169/2011", "Annex I point 7"),
      energy: annexXiv,
    },
  },
  US: {
    book: "US",
    protein: "protein",
    carbohydrate: "carbohydrate",
    words: { protein: "protein (N × 5.7 for wheat)", carbohydrate: "carbohydrate (with fibre)" },
    energy: { kcal: { protein: "4", fat: "9", carbohydrate: "4" } },
    declared: ["energy", "fat", "sodium", "carbohydrate", "fibre", "protein", "potassium"],
    sources: {
      protein: memory("21 CFR 101.9", "(c)(7): 6.25 unless the official method for the food says otherwise"),
      carbohydrate: memory("21 CFR 101.9", "(c)(6), by difference"),
      energy: memory("21 CFR 101.9", "(c)(1)(i)(B), 4, 4 and 9 kcal/g"),
    },
  },
  JP: {
    book: "JP",
    protein: "protein",
    carbohydrate: "carbohydrate",
    words: { protein: "protein (N × 5.7 for wheat)", carbohydrate: "carbohydrate (with fibre)" },
    energy: { kcal: { protein: "4", fat: "9", carbohydrate: "4" } },
    salt: saltFactors.JP,
    declared: ["energy", "protein", "fat", "carbohydrate", "salt"],
    sources: {
      protein: memory(standards, "nitrogen factors by food"),
      carbohydrate: { cite: "Japan, Food Labelling Standards (2015)", at: "Appended Table 9", standing: "read" },
      energy: memory(standards, "4, 9 and 4 kcal/g"),
    },
  },
};
