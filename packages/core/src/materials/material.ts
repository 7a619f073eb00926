import type { Composition } from "../chemistry/composition.ts";
import type { Note } from "../figure/problem.ts";
import type { Source } from "../figure/source.ts";
import type { DecimalText } from "../number/decimal.ts";
import type { Allergen } from "./allergen.ts";
import type { NutrientFigure } from "./nutrients.ts";

const ofGrain = ["flour", "starch", "gluten", "bran"] as const;
export const materialKinds = [...ofGrain, "egg", "salt", "alkali", "fat", "water", "other"] as const;

/** What a material is used as. */
export type MaterialKind = (typeof materialKinds)[number];

/**
 * An ingredient with its composition per 100 g as is. Percentages are percent of the material as it comes; its nutrients
 * are each in its unit, and carbohydrate is with the fibre in it.
 */
export interface Material extends Readonly<Partial<Record<NutrientFigure, DecimalText>>> {
  /** Stable and unique: `usda 20083`, `mext 01020`, `salt sodium-carbonate`. */
  readonly key: string;
  /** Short plain name, unique in the catalogue: `bread flour`. */
  readonly name: string;
  /** The name as the table prints it. */
  readonly published?: string;
  readonly aliases: readonly string[];
  readonly kind: MaterialKind;
  /** %, as is. */
  readonly moisture: DecimalText;
  /** %, as is, with the factor that turned nitrogen into protein, where the table gives one. */
  readonly protein?: Protein;
  /** %, as is. */
  readonly ash?: DecimalText;
  /** kcal per 100 g as printed. */
  readonly energy?: DecimalText;
  /** Its protein forms wheat gluten: wheat, durum, spelt and the gluten made of them. */
  readonly glutenForming: boolean;
  readonly wholegrain: boolean;
  /** What it contains by its nature. */
  readonly allergens: readonly Allergen[];
  /** What it may contain as it is usually sold, so that the supplier has to be asked. */
  readonly allergensPossible?: readonly Allergen[];
  /** Whether `allergens` was thought through; an empty list alone proves nothing. */
  readonly allergensKnown: boolean;
  /** Of salts and alkaline products. */
  readonly composition?: Composition;
  /** How far single samples and the mean can be off. */
  readonly spread?: Readonly<Partial<Record<SpreadOf, Spread>>>;
  /** What to take care of beside what its composition tells, as sentences. */
  readonly cautions?: readonly string[];
  /** Traps of the row, as sentences or as notes. */
  readonly notes: readonly (string | Note)[];
  readonly source: Source;
}

/** Protein in %, as is. */
export interface Protein {
  readonly value: DecimalText;
  readonly nitrogenFactor?: DecimalText;
}

/** Figures of a material whose spread a table tells. */
export type SpreadOf = "moisture" | "protein" | "ash";

/** What a table says about the samples behind a mean. */
export interface Spread {
  /** Samples analysed. */
  readonly n: number;
  readonly standardError?: DecimalText;
  readonly low?: DecimalText;
  readonly high?: DecimalText;
}
