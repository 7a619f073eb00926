import { type Composition, potassiumShare, sodiumShare } from "../chemistry/composition.ts";
import type { Known } from "../chemistry/salts/record.ts";
import type { Source } from "../figure/source.ts";
import type { Decimal, DecimalText } from "../number/decimal.ts";
import {
  calories,
  cfr,
  gram,
  guidance,
  halfGram,
  hundredthOfSalt,
  japan,
  japanSalt,
  japanTolerances,
  milligram,
  milligramOfPotassium,
  place,
  type RoundingBand,
  type RuleBookName,
  type Tolerance,
  tenth,
  tenthOfSaturates,
  whole,
  wholeOne,
} from "./rounding-rules.ts";

/**
 * All that is known here of one nutrient. Every field has to be stated, if only as not known, so that a nutrient that was
 * added with something forgotten does not compile. What is told of a noodle is told in the order of the records.
 */
export interface Nutrient {
  readonly unit: "kcal" | "kJ" | "g" | "mg";
  /** Decimal places in a table. */
  readonly places: number;
  /**
   * How a material states it per 100 g: as a figure of its own that the kitchen may give too, described for the spec;
   * with a moisture basis and a nitrogen factor; as a table prints it; or not at all.
   */
  readonly stated: StatedFigure | "on a basis" | "printed" | "not known";
  /** What salts, alkaline products and water hold of it: none by nature, or % by mass of what they are made of. */
  readonly inSalts: "none" | ((composition: Composition) => Decimal);
  /** The part of a food that it lies within, which tells how much there may be where nobody states it. */
  readonly within: "food" | "carbohydrate" | "ash";
  /** How the rules of a book count it. */
  readonly counted: Readonly<Record<RuleBookName, Counted | "not told">>;
  /** What boiling does with it: taken to be kept, or left in part like the sodium or the potassium of noodles in a table. */
  readonly boiling: Known<"kept" | "as sodium" | "as potassium">;
  /** Its line on a label by the rules of a book. */
  readonly label: Readonly<Record<RuleBookName, LabelLine | "no rule">>;
  /** How far in Japan an analysed content may lie from the declared one. */
  readonly tolerance: Known<readonly Tolerance[]>;
}

/** What the kitchen writes: % as is of what is told in g, a mass in 100 g of what is told in mg. */
export interface StatedFigure {
  readonly description: string;
  readonly example: string;
}

/** As the sum over the ingredients, from the energy of its parts, or from sodium; with the name that it then goes by. */
export type Counted =
  | { readonly label: string; readonly of: Content; readonly sources: readonly Source[] }
  | { readonly label: string; readonly perGram: EnergyPerGram; readonly source: Source }
  | { readonly label: string; readonly saltFactor: DecimalText; readonly source: Source };

/** kcal or kJ per g of protein, fat, carbohydrate, and of fibre where it counts apart. */
export interface EnergyPerGram {
  readonly protein: DecimalText;
  readonly fat: DecimalText;
  readonly carbohydrate: DecimalText;
  readonly fibre?: DecimalText;
}

/** A line of a label: its place among the lines, and how its value is rounded. */
export interface LabelLine {
  readonly line: number | "not declared";
  readonly bands: readonly RoundingBand[];
  readonly source: Source;
}

const memory = (cite: string, at: string): Source => ({ cite, at, standing: "memory" });
const regulation = (at: string, standing: Source["standing"] = "copy"): Source => ({
  cite: "Regulation (EU) No 1169/2011",
  at,
  standing,
});
const standards = "Japan, Food Labelling Standards (2015) and the notice on analytical methods";
const everywhere = <T>(one: T): Readonly<Record<RuleBookName, T>> => ({ US: one, EU: one, JP: one });
const asStated = (of: Content): Nutrient["counted"] => everywhere({ label: of, of, sources: [] });
const line = (line: LabelLine["line"], bands: readonly RoundingBand[], source: Source): LabelLine => ({
  line,
  bands,
  source,
});
const notTold = everywhere("not told" as const);
const withFibre = "carbohydrate (with fibre)";
const byWheat = "protein (N × 5.7 for wheat)";
const allSodium = "salt (all sodium counted)";
const broad: EnergyPerGram = { protein: "4", fat: "9", carbohydrate: "4" };

/** Saturates and sugars, which labels want as well, cannot be told from flour tables: they need an analysis. */
const records = {
  kilojoule: {
    unit: "kJ",
    places: 0,
    stated: "not known",
    inSalts: "none",
    within: "food",
    counted: {
      ...notTold,
      EU: {
        label: "energy",
        perGram: { protein: "17", fat: "37", carbohydrate: "17", fibre: "8" },
        source: regulation("Annex XIV"),
      },
    },
    boiling: "kept",
    label: { US: "no rule", EU: line(1, wholeOne, guidance()), JP: "no rule" },
    tolerance: "not known",
  },
  energy: {
    unit: "kcal",
    places: 0,
    stated: "printed",
    inSalts: "none",
    within: "food",
    counted: {
      US: { label: "energy", perGram: broad, source: memory("21 CFR 101.9", "(c)(1)(i)(B), 4, 4 and 9 kcal/g") },
      EU: { label: "energy", perGram: { ...broad, fibre: "2" }, source: regulation("Annex XIV") },
      JP: { label: "energy", perGram: broad, source: memory(standards, "4, 9 and 4 kcal/g") },
    },
    boiling: "kept",
    label: {
      US: line(1, calories, cfr("(c)(1)")),
      EU: line(2, wholeOne, guidance()),
      JP: line(1, whole, japan("memory")),
    },
    tolerance: "not known",
  },
  fat: {
    unit: "g",
    places: 1,
    stated: { description: "Fat, % as is", example: "1.2 %" },
    inSalts: "none",
    within: "food",
    counted: asStated("fat"),
    boiling: "kept",
    label: {
      US: line(2, halfGram, cfr("(c)(2)")),
      EU: line(3, tenth, guidance()),
      JP: line(3, place, japan("memory")),
    },
    tolerance: japanTolerances,
  },
  saturates: {
    unit: "g",
    places: 1,
    stated: "not known",
    inSalts: "none",
    within: "food",
    counted: notTold,
    boiling: "not known",
    label: {
      US: line(3, halfGram, { ...cfr("(c)(2)(i)"), standing: "memory" }),
      EU: line(4, tenthOfSaturates, guidance("memory")),
      JP: "no rule",
    },
    tolerance: "not known",
  },
  carbohydrate: {
    unit: "g",
    places: 1,
    stated: { description: "Carbohydrate with fibre, % as is", example: "72 %" },
    inSalts: "none",
    within: "food",
    counted: {
      US: { label: withFibre, of: "carbohydrate", sources: [memory("21 CFR 101.9", "(c)(6), by difference")] },
      EU: {
        label: "carbohydrate (without fibre)",
        of: "availableCarbohydrate",
        sources: [regulation("Annex I point 7", "memory")],
      },
      JP: {
        label: withFibre,
        of: "carbohydrate",
        sources: [{ cite: "Japan, Food Labelling Standards (2015)", at: "Appended Table 9", standing: "read" }],
      },
    },
    boiling: "kept",
    label: { US: line(5, gram, cfr("(c)(6)")), EU: line(5, tenth, guidance()), JP: line(4, place, japan("memory")) },
    tolerance: "not known",
  },
  sugars: {
    unit: "g",
    places: 1,
    stated: "not known",
    inSalts: "none",
    within: "carbohydrate",
    counted: notTold,
    boiling: "not known",
    label: { US: line(7, gram, cfr("(c)(6)(ii)")), EU: line(6, tenth, guidance()), JP: "no rule" },
    tolerance: "not known",
  },
  fibre: {
    unit: "g",
    places: 1,
    stated: { description: "Dietary fibre, % as is", example: "2.4 %" },
    inSalts: "none",
    within: "carbohydrate",
    counted: asStated("fibre"),
    boiling: "kept",
    label: { US: line(6, gram, cfr("(c)(6)(i)")), EU: line(7, tenth, guidance()), JP: "no rule" },
    tolerance: "not known",
  },
  protein: {
    unit: "g",
    places: 1,
    stated: "on a basis",
    inSalts: "none",
    within: "food",
    counted: {
      US: {
        label: byWheat,
        of: "protein",
        sources: [memory("21 CFR 101.9", "(c)(7): 6.25 unless the official method for the food says otherwise")],
      },
      EU: { label: "protein (N × 6.25)", of: "labelProtein", sources: [regulation("Annex I point 10")] },
      JP: { label: byWheat, of: "protein", sources: [memory(standards, "nitrogen factors by food")] },
    },
    boiling: "kept",
    label: { US: line(8, gram, cfr("(c)(7)")), EU: line(8, tenth, guidance()), JP: line(2, place, japan("memory")) },
    tolerance: japanTolerances,
  },
  sodium: {
    unit: "mg",
    places: 0,
    stated: { description: "Sodium in 100 g as is", example: "2 mg" },
    inSalts: sodiumShare,
    within: "ash",
    counted: asStated("sodium"),
    boiling: "as sodium",
    label: { US: line(4, milligram, cfr("(c)(4)")), EU: "no rule", JP: line("not declared", whole, japan("memory")) },
    tolerance: "not known",
  },
  salt: {
    unit: "g",
    places: 2,
    stated: "not known",
    inSalts: "none",
    within: "ash",
    counted: {
      US: "not told",
      EU: { label: allSodium, saltFactor: "2.5", source: regulation("Annex I point 11") },
      JP: {
        label: allSodium,
        saltFactor: "2.54",
        source: { cite: "Japan, Food Labelling Standards (2015), labelling guides", standing: "copy" },
      },
    },
    boiling: "as sodium",
    label: { US: "no rule", EU: line(9, hundredthOfSalt, guidance()), JP: line(5, japanSalt, japan("copy")) },
    tolerance: "not known",
  },
  potassium: {
    unit: "mg",
    places: 0,
    stated: { description: "Potassium in 100 g as is", example: "110 mg" },
    inSalts: potassiumShare,
    within: "ash",
    counted: asStated("potassium"),
    boiling: "as potassium",
    label: { US: line(9, milligramOfPotassium, cfr("(c)(8)(ii) to (iv)")), EU: "no rule", JP: "no rule" },
    tolerance: "not known",
  },
} as const satisfies Readonly<Record<string, Nutrient>>;

/** What is told of a noodle or declared on a label. */
export type NutrientName = keyof typeof records;

/** What is stated of a food beside its water, protein and ash. */
export type NutrientFigure = {
  [K in NutrientName]: (typeof records)[K]["stated"] extends string ? never : K;
}[NutrientName];

/**
 * What 100 g of an ingredient hold: protein on the nitrogen factor that belongs to it, or the same nitrogen times 6.25;
 * carbohydrate by difference with the fibre in it, or available, without fibre and beside protein as nitrogen times 6.25.
 */
export type Content =
  | "protein"
  | "labelProtein"
  | "fat"
  | "carbohydrate"
  | "availableCarbohydrate"
  | "fibre"
  | "sodium"
  | "potassium";

/** The nutrients, in the order in which they are told. */
export const nutrients: Readonly<Record<NutrientName, Nutrient>> & Pick<typeof records, "protein"> = records;

export const nutrientNames = Object.keys(records) as readonly NutrientName[];

/** Makes one of something for each nutrient that a food states by a figure of its own. */
export function eachStated<T>(
  make: (name: NutrientFigure, stated: StatedFigure) => T,
): Readonly<Record<NutrientFigure, T>> {
  const made = nutrientNames.flatMap((name) => {
    const { stated } = nutrients[name];
    return typeof stated === "string" ? [] : [[name, make(name as NutrientFigure, stated)] as const];
  });
  return Object.fromEntries(made) as Readonly<Record<NutrientFigure, T>>;
}

/** Makes something of each of such values that is there. */
export function ofStated<V, T>(
  values: Readonly<Partial<Record<NutrientFigure, V | undefined>>>,
  make: (value: V, name: NutrientFigure) => T,
): Partial<Record<NutrientFigure, T>> {
  const made = Object.entries(eachStated((name) => values[name])).flatMap(([name, value]) =>
    value === undefined ? [] : [[name, make(value, name as NutrientFigure)] as const],
  );
  return Object.fromEntries(made);
}

/** The line of a nutrient on a label; undefined where the book has no rule for it. */
export function lineOf(name: NutrientName, book: RuleBookName): LabelLine | undefined {
  const line = nutrients[name].label[book];
  return line === "no rule" ? undefined : line;
}

/** How the rules of a book count a nutrient; undefined where it is not told. */
export function countingOf(name: NutrientName, book: RuleBookName): Counted | undefined {
  const counted = nutrients[name].counted[book];
  return counted === "not told" ? undefined : counted;
}

/** The content of the ingredients that stands for a nutrient by the rules of a book; undefined where it is worked out otherwise. */
export function contentOf(name: NutrientName, book: RuleBookName): Content | undefined {
  const counting = countingOf(name, book);
  return counting && "of" in counting ? counting.of : undefined;
}
