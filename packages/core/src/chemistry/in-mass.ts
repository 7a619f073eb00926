import { type DecimalInput, type DecimalText, dec, decimalText } from "../number/decimal.ts";
import { alkalinityM, anhydrousShare, type Composition } from "./composition.ts";

/**
 * Anhydrous salts in a mass of a product, in the unit of the mass.
 *
 * @example saltsIn({ species: { Na2CO3: "37" }, water: "63", inert: "0" }, "200") // => "74"
 */
export function saltsIn(composition: Composition, mass: DecimalInput): DecimalText {
  return decimalText(anhydrousShare(composition).times(dec(mass)).div(100));
}

/**
 * Alkalinity M of a mass of a product, meq.
 *
 * @param grams - the mass, g
 * @example Math.round(equivalentsIn({ species: { Na2CO3: "100" }, water: "0", inert: "0" }, "100")) // => 1887
 */
export function equivalentsIn(composition: Composition, grams: DecimalInput): DecimalText {
  return decimalText(alkalinityM(composition).times(dec(grams)));
}

/** A part of a whole, %. @example percentOf("3", "40") // => "7.5" */
export function percentOf(part: DecimalInput, whole: DecimalInput): DecimalText {
  return decimalText(dec(part).times(100).div(whole));
}
