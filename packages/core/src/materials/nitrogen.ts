import type { Source } from "../figure/source.ts";
import type { Decimal, DecimalText } from "../number/decimal.ts";

/** A factor that turns nitrogen into protein, and where it is used. */
export interface NitrogenFactor {
  readonly use: string;
  readonly factor: DecimalText;
  readonly source: Source;
}

const usda: Source = { cite: "USDA Standard Reference 28, file FOOD_DES, field N_Factor", standing: "copy" };

/** Factors in use. */
export const nitrogenFactors: readonly NitrogenFactor[] = [
  { use: "white wheat flour, semolina", factor: "5.70", source: usda },
  { use: "whole wheat, durum, spelt, triticale, rye, barley, oats, millet", factor: "5.83", source: usda },
  { use: "wheat bran", factor: "6.31", source: usda },
  { use: "wheat germ", factor: "5.80", source: usda },
  { use: "rice flour", factor: "5.95", source: usda },
  { use: "buckwheat, corn, starches, potato, sorghum, soy, chickpea, egg", factor: "6.25", source: usda },
  {
    use: "soy, older tables",
    factor: "5.71",
    source: {
      cite: "Jones factors as reprinted by FAO, Carbohydrates and protein conversion, x5557e",
      standing: "copy",
    },
  },
  {
    use: "flour specification, United States",
    factor: "5.70",
    source: { cite: "USDA Commercial Item Description A-A-20126F", at: "section 6.3 note 8", standing: "read" },
  },
  {
    use: "flour, Italy",
    factor: "5.70",
    source: { cite: "DPR 9 February 2001 n. 187", at: "art. 1", standing: "copy" },
  },
  {
    use: "wheat gluten, Codex",
    factor: "6.25",
    source: { cite: "CODEX STAN 163-1987, rev. 2001", at: "section 3.2.2", standing: "read" },
  },
  {
    use: "nutrition label, European Union",
    factor: "6.25",
    source: { cite: "Regulation (EU) No 1169/2011", at: "Annex I point 10", standing: "copy" },
  },
  {
    use: "nutrition label, United States, unless the method for the food says otherwise",
    factor: "6.25",
    source: { cite: "21 CFR 101.9(c)(7)", standing: "memory" },
  },
];

/** The factor of a flour specification. */
export const flourFactor: DecimalText = "5.7";

/** The factor of a nutrition label that has no other. */
export const labelFactor: DecimalText = "6.25";

/**
 * Turns a protein content from one nitrogen factor to another: P_b = P_a F_b / F_a.
 *
 * @param value - protein, %
 * @param from - factor the value rests on, above zero
 * @param to - factor wanted
 * @example onFactor(dec(12), dec("5.7"), dec("6.25")).toFixed(4) // => "13.1579"
 */
export function onFactor(value: Decimal, from: Decimal, to: Decimal): Decimal {
  return value.times(to).div(from);
}
