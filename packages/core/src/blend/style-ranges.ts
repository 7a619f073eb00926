import type { Source } from "../figure/source.ts";
import type { DecimalText } from "../number/decimal.ts";

/** What a style guide tells about: protein, ash and such as % of what the source says, sizes in mm. */
export type StyleQuantity = "protein" | "ash" | "water" | "salt" | "alkali" | "thickness" | "width";

/** A range published for a style; an open side is absent. */
export interface StyleRange {
  readonly style: string;
  readonly quantity: StyleQuantity;
  readonly low?: DecimalText;
  readonly high?: DecimalText;
  readonly unit: string;
  readonly source: Source;
}

const akashi: Source = {
  cite: "review citing Akashi and others 1999, Journal of Agriculture and Life Science, article 19786",
  standing: "copy",
};
const shelke: Source = {
  cite: "K. Shelke, J. W. Dick, Y. F. Holm, K. S. Loo, Cereal Chemistry 67:338-342, 1990",
  at: "abstract",
  standing: "read",
};
const instantTrade: Source = {
  cite: "Japan Convenience Foods Industry Association, pages on ingredients and making",
  standing: "read",
};
const okinawa: Source = { cite: "national federation of noodle makers of Japan, Okinawa soba rule", standing: "read" };
const kishimen: Source = { cite: "fair-competition rule for noodles, Japan, Nagoya kishimen", standing: "copy" };
const fuQuoted: Source = {
  cite: "B. X. Fu, Food Research International 41:888-902, 2008, quoted in npj Science of Food, s41538-023-00183-5",
  standing: "copy",
};
const textbook: Source = { cite: "laboratory method for yellow alkaline noodles, textbook copy", standing: "copy" };
export const whiteSalted: Source = {
  cite: "Y. Ye, Y. Zhang, J. Yan and others, Cereal Chemistry 86(4):477-485, 2009",
  at: "abstract: 33 to 37 % water and 0 to 2 % salt tried, 35 and 1 recommended",
  standing: "read",
};
const wuQuoted: Source = { cite: "Wu and others, quoted in npj Science of Food, s41538-023-00183-5", standing: "copy" };
const maker: Source = { cite: "noodle maker's page on cutter numbers by region", standing: "read" };
const houKruk: Source = { cite: "G. Hou, M. Kruk, AIB Technical Bulletin XX(12), 1998", standing: "memory" };

const ofFlour = "% of flour";
const at14 = "% at 14 % mb";
const notStated = "%, basis not stated";

type Row = readonly [
  style: string,
  quantity: StyleQuantity,
  low: DecimalText,
  high: DecimalText,
  unit: string,
  source: Source,
];

/** Ranges by style; an empty text is an open side. Where no moisture basis stood in the source, the unit says so. */
const rows: readonly Row[] = [
  ["cantonese", "protein", "10.5", "12.0", notStated, akashi],
  ["cantonese", "ash", "0.33", "0.38", notStated, akashi],
  ["white salted", "protein", "8", "10", notStated, akashi],
  ["white salted", "ash", "0.36", "0.40", notStated, akashi],
  ["white salted", "water", "33", "37", ofFlour, whiteSalted],
  ["white salted", "salt", "0", "2", ofFlour, whiteSalted],
  ["yellow alkaline", "protein", "10", "12", notStated, textbook],
  ["yellow alkaline", "water", "32", "35", ofFlour, textbook],
  ["yellow alkaline", "salt", "1", "3", ofFlour, fuQuoted],
  ["yellow alkaline", "alkali", "0.5", "1.7", ofFlour, wuQuoted],
  ["hokkien", "protein", "10.0", "11.5", notStated, shelke],
  ["hokkien", "salt", "1.4", "1.7", ofFlour, shelke],
  ["hokkien", "alkali", "0.7", "1.2", ofFlour, shelke],
  ["hokkien", "protein", "11.0", "12.5", at14, houKruk],
  ["hokkien", "ash", "0.40", "0.45", at14, houKruk],
  ["malaysian hokkien", "protein", "10.0", "11.0", at14, houKruk],
  ["malaysian hokkien", "ash", "", "0.48", at14, houKruk],
  ["malaysian hokkien", "water", "30", "33", ofFlour, houKruk],
  ["thin ramen", "width", "1.07", "1.25", "mm", maker],
  ["dip noodle", "width", "2.50", "3.33", "mm", maker],
  ["ramen", "width", "1.15", "2.14", "mm", maker],
  ["ramen", "protein", "10.5", "11.5", at14, houKruk],
  ["ramen", "ash", "0.33", "0.40", at14, houKruk],
  ["chinese raw", "protein", "10.5", "12.5", at14, houKruk],
  ["chinese raw", "ash", "0.35", "0.41", at14, houKruk],
  ["bamee", "protein", "11.5", "13.0", at14, houKruk],
  ["bamee", "ash", "", "0.46", at14, houKruk],
  ["instant fried", "water", "30", "40", ofFlour, instantTrade],
  ["instant fried", "salt", "1", "3", ofFlour, instantTrade],
  ["instant fried", "alkali", "0.1", "0.2", ofFlour, instantTrade],
  ["instant fried", "width", "1.36", "1.67", "mm", instantTrade],
  ["instant non-fried", "water", "30", "40", ofFlour, instantTrade],
  ["instant non-fried", "salt", "1", "3", ofFlour, instantTrade],
  ["instant non-fried", "alkali", "0.3", "0.6", ofFlour, instantTrade],
  ["okinawa soba", "protein", "11", "", notStated, okinawa],
  ["okinawa soba", "ash", "", "0.42", notStated, okinawa],
  ["okinawa soba", "water", "34", "36", ofFlour, okinawa],
  ["okinawa soba", "thickness", "1.5", "1.7", "mm", okinawa],
  ["okinawa soba", "width", "2.5", "3.0", "mm", okinawa],
  ["kishimen", "protein", "8.2", "", notStated, kishimen],
  ["kishimen", "ash", "", "0.38", notStated, kishimen],
  ["kishimen", "width", "5.0", "7.5", "mm", kishimen],
];

/**
 * The ranges published for noodle styles, each with its source and how well that is known.
 *
 * @example styleRanges().filter(({ style }) => style === "yellow alkaline").map(({ quantity, low, high }) => [quantity, low, high])[0] // => ["protein", "10", "12"]
 */
export function styleRanges(): readonly StyleRange[] {
  return rows.map(([style, quantity, low, high, unit, source]) => ({
    style,
    quantity,
    ...(low === "" ? {} : { low }),
    ...(high === "" ? {} : { high }),
    unit,
    source,
  }));
}
