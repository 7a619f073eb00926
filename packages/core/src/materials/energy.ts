import { type Figure, given, worked } from "../figure/figure.ts";
import { answer, type Outcome, problem, refuse } from "../figure/problem.ts";
import type { Source } from "../figure/source.ts";
import { type DecimalInput, type DecimalText, dec, ZERO } from "../number/decimal.ts";
import type { EnergyFactors, Material } from "./material.ts";

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

/** Contents in g of 100 g or of any one amount. */
export interface EnergyParts {
  /** N × 6.25 */
  readonly protein: DecimalInput;
  /** Available carbohydrate, without fibre. */
  readonly carbohydrate: DecimalInput;
  readonly fat: DecimalInput;
  readonly fibre: DecimalInput;
}

/** Energy in both units. */
export interface Energy {
  readonly kcal: Figure;
  readonly kilojoule: Figure;
}

/**
 * Energy by the factors of the European Union.
 *
 * @param parts - g of each, zero or more; carbohydrate without fibre, protein as N × 6.25
 * Source: Regulation (EU) No 1169/2011, Annex XIV.
 * @example energyEU({ protein: "11.98", carbohydrate: "70.13", fat: "1.66", fibre: "2.4" }).kcal.value // => "348.18"
 */
export function energyEU(parts: EnergyParts): Energy {
  const { protein, carbohydrate, fat, fibre } = euEnergyFactors;
  const amounts = [parts.protein, parts.carbohydrate, parts.fat, parts.fibre].map((value, index) =>
    amount([protein, carbohydrate, fat, fibre][index]?.nutrient ?? "", value),
  );
  const total = (unit: "kcal" | "kJ", factorOf: (factor: EnergyFactor) => DecimalText): Figure =>
    worked({
      id: unit === "kcal" ? "energy.kcal" : "energy.kilojoule",
      label: "energy",
      unit,
      places: 0,
      formula: "sum(amounts * factors)",
      from: {
        amounts,
        factors: [protein, carbohydrate, fat, fibre].map((factor) =>
          given({
            id: "energy.factor",
            label: `energy of ${factor.nutrient}`,
            unit: `${unit}/g`,
            places: 1,
            value: factorOf(factor),
            by: "the regulation",
            sources: [annexXiv],
          }),
        ),
      },
      sources: [annexXiv],
    });
  return { kcal: total("kcal", ({ kcal }) => kcal), kilojoule: total("kJ", ({ kilojoule }) => kilojoule) };
}

function amount(label: string, value: DecimalInput): Figure {
  return given({ id: "energy.amount", label, unit: "g", places: 2, value, by: "as stated", sources: [] });
}

export const usdaEnergySource: Source = {
  cite: "USDA Standard Reference 28, file FOOD_DES: kcal per g of protein, fat and carbohydrate by difference",
  standing: "copy",
};

/**
 * Energy of 100 g by the factors that the table gives for this very food; undefined where it gives none.
 *
 * Carbohydrate is by difference, with its fibre. A factor left blank counts as zero.
 *
 * @example energyByTable({ energyFactors: { fat: "8.84" }, fat: "100.00" })?.value // => "884"
 */
export function energyByTable(
  material: Pick<Material, "protein" | "fat" | "carbohydrate" | "energyFactors">,
): Figure | undefined {
  const factors: EnergyFactors | undefined = material.energyFactors;
  if (factors === undefined) return undefined;
  return worked({
    id: "energy.table",
    label: "energy by the table's own factors",
    unit: "kcal/100 g",
    places: 0,
    formula: "protein * of_protein + fat * of_fat + carbohydrate * of_carbohydrate",
    from: {
      protein: amount("protein", material.protein?.value ?? 0),
      of_protein: factors.protein ?? 0,
      fat: amount("fat", material.fat ?? 0),
      of_fat: factors.fat ?? 0,
      carbohydrate: amount("carbohydrate by difference", material.carbohydrate ?? 0),
      of_carbohydrate: factors.carbohydrate ?? 0,
    },
    sources: [usdaEnergySource],
  });
}

/**
 * Carbohydrate without its fibre, from carbohydrate by difference.
 *
 * Problems: `energy.fibre` when there is more fibre than carbohydrate.
 * @example availableCarbohydrate("72.53", "2.4").value.value // => "70.13"
 */
export function availableCarbohydrate(byDifference: DecimalInput, fibre: DecimalInput): Outcome<Figure> {
  if (dec(byDifference).minus(fibre).lt(ZERO)) {
    return refuse(
      problem("energy.fibre", [], { fibre: dec(fibre).toString(), byDifference: dec(byDifference).toString() }),
    );
  }
  return answer(
    worked({
      id: "energy.available-carbohydrate",
      label: "available carbohydrate",
      unit: "g",
      places: 1,
      formula: "carbohydrate - fibre",
      from: { carbohydrate: amount("carbohydrate by difference", byDifference), fibre: amount("fibre", fibre) },
      sources: [{ cite: "carbohydrate by difference holds the fibre", standing: "definition" }],
    }),
  );
}

/** What sodium is multiplied with to be declared as salt. */
export const saltFactors = {
  EU: { factor: "2.5", source: { cite: "Regulation (EU) No 1169/2011", at: "Annex I point 11", standing: "copy" } },
  JP: {
    factor: "2.54",
    source: { cite: "Japan, Food Labelling Standards (2015), labelling guides", standing: "copy" },
  },
} as const satisfies Readonly<Record<string, { readonly factor: DecimalText; readonly source: Source }>>;

/**
 * Salt as it is declared: all sodium counts, that of alkaline salts too.
 *
 * @param sodium - mg, zero or more
 * @example saltFromSodium("410", "JP").value // => "1.0414"
 */
export function saltFromSodium(sodium: DecimalInput, jurisdiction: keyof typeof saltFactors): Figure {
  const { factor, source } = saltFactors[jurisdiction];
  return worked({
    id: "energy.salt",
    label: jurisdiction === "EU" ? "salt" : "salt equivalent",
    unit: "g",
    places: 2,
    formula: "sodium * factor / 1000",
    from: {
      sodium: given({
        id: "energy.sodium",
        label: "sodium",
        unit: "mg",
        places: 0,
        value: sodium,
        by: "as stated",
        sources: [],
      }),
      factor,
    },
    sources: [source],
  });
}
