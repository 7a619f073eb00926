import type { Source } from "../figure/source.ts";
import type { DecimalText } from "../number/decimal.ts";

export const ruleBookNames = ["US", "EU", "JP"] as const;

/** By whose rules a label is rounded. */
export type RuleBookName = (typeof ruleBookNames)[number];

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

/** What a jurisdiction says of all lines of a label; how each is counted and rounded stands in the record of its nutrient. */
interface RuleBook {
  readonly title: string;
  /** What the declared value is for. */
  readonly per: "serving" | "100 g";
  /** Whether a label may print more digits than the rules ask for. */
  readonly finer: boolean;
}

/** The books of rules by jurisdiction. Exact halves are rounded up: common practice, no source. */
export const ruleBooks: Readonly<Record<RuleBookName, RuleBook>> = {
  US: { title: "United States, 21 CFR 101.9 and FDA Food Labeling Guide, Appendix H", per: "serving", finer: false },
  EU: {
    title: "European Union, Commission guidance of December 2012 on Regulation (EU) No 1169/2011",
    per: "100 g",
    finer: true,
  },
  JP: { title: "Japan, Food Labelling Standards (2015)", per: "100 g", finer: true },
};

export const cfr = (at: string): Source => ({ cite: "21 CFR 101.9", at, standing: "copy" });

export const gram: readonly RoundingBand[] = [
  { step: "1", zero: "may", lessThan: "1" },
  { from: "0.5", step: "1", lessThan: "1" },
  { from: "1", step: "1" },
];
export const milligram: readonly RoundingBand[] = [
  { step: "5", zero: "shall" },
  { from: "5", step: "5" },
  { from: "140", above: true, step: "10" },
];
/** Whole mg; below 2 % of the reference intake of 4700 mg it may be 0. The steps of sodium held until 2016. */
export const milligramOfPotassium: readonly RoundingBand[] = [
  { step: "1", zero: "may" },
  { from: "94", step: "1" },
];
export const halfGram: readonly RoundingBand[] = [
  { step: "0.5", zero: "shall" },
  { from: "0.5", step: "0.5" },
  { from: "5", step: "1" },
];
export const calories: readonly RoundingBand[] = [
  { step: "5", zero: "may" },
  { from: "5", step: "5" },
  { from: "50", above: true, step: "10" },
];

export const guidance = (standing: Source["standing"] = "copy"): Source => ({
  cite: "European Commission, Guidance document on tolerances for nutrient values declared on a label, December 2012",
  at: "rounding guidelines",
  standing,
});

export const tenth: readonly RoundingBand[] = [
  { step: "0.1", zero: "shall", lessThan: "0.5" },
  { from: "0.5", above: true, step: "0.1" },
  { from: "10", step: "1" },
];
export const wholeOne: readonly RoundingBand[] = [{ step: "1" }];
export const tenthOfSaturates: readonly RoundingBand[] = [
  { step: "0.1", zero: "shall", lessThan: "0.1" },
  { from: "0.1", above: true, step: "0.1" },
  { from: "10", step: "1" },
];
export const hundredthOfSalt: readonly RoundingBand[] = [
  { step: "0.01", zero: "shall", lessThan: "0.01" },
  { from: "0.0125", above: true, step: "0.01" },
  { from: "1", step: "0.1" },
];

export const japan = (standing: Source["standing"]): Source => ({
  cite: "Japan, Food Labelling Standards, Cabinet Office Ordinance No. 10 of 2015",
  at: "Appended Table 9 (zero); notice of the Consumer Affairs Agency (smallest place)",
  standing,
});

export const place: readonly RoundingBand[] = [
  { step: "0.1", zero: "may" },
  { from: "0.5", step: "0.1" },
];
export const whole: readonly RoundingBand[] = [
  { step: "1", zero: "may" },
  { from: "5", step: "1" },
];

/**
 * 0 where there is less than 5 mg of sodium, which is 0.0127 g of salt; else one decimal, and where that would be 0.0
 * one digit that counts.
 */
export const japanSalt: readonly RoundingBand[] = [
  { step: "0.01", zero: "may" },
  { from: "0.0127", step: "0.01" },
  { from: "0.05", step: "0.1" },
];

/** How far an analysed content may lie from the declared one. */
export interface Tolerance {
  /** Declared value per 100 g from which it holds, g. */
  readonly from: DecimalText;
  /** Either a part of the declared value, %, or an amount, g. */
  readonly allowed: { readonly percent: DecimalText } | { readonly grams: DecimalText };
  readonly source: Source;
}

const japanTable: Source = { ...japan("read"), at: "Appended Table 9" };

/** Japan's tolerances; a value marked as an estimate need not keep them. */
export const japanTolerances: readonly Tolerance[] = [
  { from: "0", allowed: { grams: "0.5" }, source: japanTable },
  { from: "2.5", allowed: { percent: "20" }, source: japanTable },
];
