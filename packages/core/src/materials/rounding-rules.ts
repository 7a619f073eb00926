import type { Source } from "../figure/source.ts";
import type { DecimalText } from "../number/decimal.ts";

/** What a nutrition label declares. Energy in kcal, sodium and potassium in mg, all else in g. */
export type Nutrient =
  | "energy"
  | "fat"
  | "saturates"
  | "carbohydrate"
  | "sugars"
  | "fibre"
  | "protein"
  | "sodium"
  | "potassium"
  | "salt";

export type RuleBookName = "US" | "EU" | "JP";

/** From where to where one way of rounding holds. */
export interface RoundingBand {
  /** Least value; 0 where left out. */
  readonly from?: DecimalText;
  /** Whether the value `from` itself belongs to the band before. */
  readonly above?: true;
  /** Rounded to the nearest whole multiple of this, halves up. */
  readonly step: DecimalText;
  /** Zero is declared: it has to be, or it may be instead of the rounded value. */
  readonly zero?: "shall" | "may";
  /** "less than" this may be declared instead. */
  readonly lessThan?: DecimalText;
}

/** How one nutrient is declared. */
export interface RoundingRule {
  readonly nutrient: Nutrient;
  readonly unit: "kcal" | "g" | "mg";
  readonly bands: readonly RoundingBand[];
  readonly source: Source;
}

/** The rounding rules of one jurisdiction. */
export interface RuleBook {
  readonly name: RuleBookName;
  readonly title: string;
  /** What the declared value is for. */
  readonly per: "serving" | "100 g";
  /** Whether a label may print more digits than the rules ask for. */
  readonly finer: boolean;
  readonly rules: readonly RoundingRule[];
}

const cfr = (at: string): Source => ({ cite: "21 CFR 101.9", at, standing: "copy" });

const gram: readonly RoundingBand[] = [
  { step: "1", zero: "may", lessThan: "1" },
  { from: "0.5", step: "1", lessThan: "1" },
  { from: "1", step: "1" },
];
const milligram: readonly RoundingBand[] = [
  { step: "5", zero: "shall" },
  { from: "5", step: "5" },
  { from: "140", above: true, step: "10" },
];
/** Whole mg; below 2 % of the reference intake of 4700 mg it may be 0. The steps of sodium held until 2016. */
const potassium: readonly RoundingBand[] = [
  { step: "1", zero: "may" },
  { from: "94", step: "1" },
];
const halfGram: readonly RoundingBand[] = [
  { step: "0.5", zero: "shall" },
  { from: "0.5", step: "0.5" },
  { from: "5", step: "1" },
];

const us: RuleBook = {
  name: "US",
  title: "United States, 21 CFR 101.9 and FDA Food Labeling Guide, Appendix H",
  per: "serving",
  finer: false,
  rules: [
    {
      nutrient: "energy",
      unit: "kcal",
      bands: [
        { step: "5", zero: "may" },
        { from: "5", step: "5" },
        { from: "50", above: true, step: "10" },
      ],
      source: cfr("(c)(1)"),
    },
    { nutrient: "fat", unit: "g", bands: halfGram, source: cfr("(c)(2)") },
    { nutrient: "saturates", unit: "g", bands: halfGram, source: { ...cfr("(c)(2)(i)"), standing: "memory" } },
    { nutrient: "sodium", unit: "mg", bands: milligram, source: cfr("(c)(4)") },
    { nutrient: "potassium", unit: "mg", bands: potassium, source: cfr("(c)(8)(ii) to (iv)") },
    { nutrient: "carbohydrate", unit: "g", bands: gram, source: cfr("(c)(6)") },
    { nutrient: "fibre", unit: "g", bands: gram, source: cfr("(c)(6)(i)") },
    { nutrient: "sugars", unit: "g", bands: gram, source: cfr("(c)(6)(ii)") },
    { nutrient: "protein", unit: "g", bands: gram, source: cfr("(c)(7)") },
  ],
};

const guidance = (standing: Source["standing"] = "copy"): Source => ({
  cite: "European Commission, Guidance document on tolerances for nutrient values declared on a label, December 2012",
  at: "rounding guidelines",
  standing,
});

const tenth: readonly RoundingBand[] = [
  { step: "0.1", zero: "shall", lessThan: "0.5" },
  { from: "0.5", above: true, step: "0.1" },
  { from: "10", step: "1" },
];

const eu: RuleBook = {
  name: "EU",
  title: "European Union, Commission guidance of December 2012 on Regulation (EU) No 1169/2011",
  per: "100 g",
  finer: true,
  rules: [
    { nutrient: "energy", unit: "kcal", bands: [{ step: "1" }], source: guidance() },
    { nutrient: "fat", unit: "g", bands: tenth, source: guidance() },
    {
      nutrient: "saturates",
      unit: "g",
      bands: [
        { step: "0.1", zero: "shall", lessThan: "0.1" },
        { from: "0.1", above: true, step: "0.1" },
        { from: "10", step: "1" },
      ],
      source: guidance("memory"),
    },
    { nutrient: "carbohydrate", unit: "g", bands: tenth, source: guidance() },
    { nutrient: "sugars", unit: "g", bands: tenth, source: guidance() },
    { nutrient: "fibre", unit: "g", bands: tenth, source: guidance() },
    { nutrient: "protein", unit: "g", bands: tenth, source: guidance() },
    {
      nutrient: "salt",
      unit: "g",
      bands: [
        { step: "0.01", zero: "shall", lessThan: "0.01" },
        { from: "0.0125", above: true, step: "0.01" },
        { from: "1", step: "0.1" },
      ],
      source: guidance(),
    },
  ],
};

const japan = (standing: Source["standing"]): Source => ({
  cite: "Japan, Food Labelling Standards, Cabinet Office Ordinance No. 10 of 2015",
  at: "Appended Table 9 (zero); notice of the Consumer Affairs Agency (smallest place)",
  standing,
});

const place: readonly RoundingBand[] = [
  { step: "0.1", zero: "may" },
  { from: "0.5", step: "0.1" },
];
const whole: readonly RoundingBand[] = [
  { step: "1", zero: "may" },
  { from: "5", step: "1" },
];

/**
 * 0 where there is less than 5 mg of sodium, which is 0.0127 g of salt; else one decimal, and where that would be 0.0
 * one digit that counts.
 */
const japanSalt: readonly RoundingBand[] = [
  { step: "0.01", zero: "may" },
  { from: "0.0127", step: "0.01" },
  { from: "0.05", step: "0.1" },
];

/** The zeros and the places of salt were read in copies; the other smallest places are from memory. */
const jp: RuleBook = {
  name: "JP",
  title: "Japan, Food Labelling Standards (2015)",
  per: "100 g",
  finer: true,
  rules: [
    { nutrient: "energy", unit: "kcal", bands: whole, source: japan("memory") },
    { nutrient: "protein", unit: "g", bands: place, source: japan("memory") },
    { nutrient: "fat", unit: "g", bands: place, source: japan("memory") },
    { nutrient: "carbohydrate", unit: "g", bands: place, source: japan("memory") },
    { nutrient: "sodium", unit: "mg", bands: whole, source: japan("memory") },
    { nutrient: "salt", unit: "g", bands: japanSalt, source: japan("copy") },
  ],
};

/** Rounding rules by jurisdiction. Exact halves are rounded up: common practice, no source. */
export const ruleBooks: Readonly<Record<RuleBookName, RuleBook>> = { US: us, EU: eu, JP: jp };

/** How far an analysed content may lie from the declared one. */
export interface Tolerance {
  readonly nutrient: Nutrient;
  /** Declared value per 100 g from which it holds, g. */
  readonly from: DecimalText;
  /** Either a part of the declared value, %, or an amount, g. */
  readonly allowed: { readonly percent: DecimalText } | { readonly grams: DecimalText };
  readonly source: Source;
}

const japanTable: Source = { ...japan("read"), at: "Appended Table 9" };

/** Japan's tolerances; a value marked as an estimate need not keep them. */
export const japanTolerances: readonly Tolerance[] = (["protein", "fat"] as const).flatMap((nutrient) => [
  { nutrient, from: "0", allowed: { grams: "0.5" }, source: japanTable },
  { nutrient, from: "2.5", allowed: { percent: "20" }, source: japanTable },
]);
