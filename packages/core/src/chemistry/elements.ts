import type { Source } from "../figure/source.ts";
import { type Decimal, type DecimalText, dec, sum } from "../number/decimal.ts";

/** Standard atomic weights, g/mol. */
export const atomicWeightSource: Source = {
  cite: "IUPAC Commission on Isotopic Abundances and Atomic Weights, Standard atomic weights 2021, abridged to five figures; Pure Appl. Chem. 94 (2022) 573",
  at: "Table 1",
  standing: "copy",
};

export const atomicWeights = {
  H: "1.0080",
  C: "12.011",
  N: "14.007",
  O: "15.999",
  Na: "22.990",
  P: "30.974",
  Cl: "35.45",
  K: "39.098",
} as const satisfies Readonly<Record<string, DecimalText>>;

/** The elements of the salts, by symbol. */
export type Element = keyof typeof atomicWeights;

const part = /(\d+(?:\.\d+)?)?((?:[A-Z][a-z]?\d*)+)(?:[.·]|$)/y;

/**
 * The parts of a formula that `.` or `·` joins, such as a salt and its crystal water, with how many there are of each.
 *
 * @throws {RangeError} when the text is no formula: formulas are part of the program.
 * @example partsOf("K2CO3.1.5H2O")[1] // => { formula: "H2O", count: "1.5" }
 */
export function partsOf(formula: string): readonly { readonly formula: string; readonly count: DecimalText }[] {
  const parts: { readonly formula: string; readonly count: DecimalText }[] = [];
  let end = 0;
  while (end < formula.length) {
    part.lastIndex = end;
    const found = part.exec(formula);
    if (found?.[2] === undefined) throw new RangeError(`not a formula: ${formula}`);
    parts.push({ formula: found[2], count: found[1] ?? "1" });
    end += found[0].length;
  }
  return parts;
}

/**
 * Counts the atoms of a formula, parts of a hydrate joined by `.` or `·`.
 *
 * @throws {RangeError} when the text is no formula of known elements: formulas are part of the program.
 * @example atomsOf("K2CO3.1.5H2O").H?.toString() // => "3"
 */
export function atomsOf(formula: string): Readonly<Partial<Record<Element, Decimal>>> {
  const atoms: Partial<Record<Element, Decimal>> = {};
  for (const one of partsOf(formula)) {
    for (const [, symbol = "", count = ""] of one.formula.matchAll(/([A-Z][a-z]?)(\d*)/g)) {
      if (!isElement(symbol)) throw new RangeError(`no atomic weight for ${symbol} in ${formula}`);
      atoms[symbol] = dec(one.count)
        .times(count === "" ? 1 : count)
        .plus(atoms[symbol] ?? 0);
    }
  }
  return atoms;
}

function isElement(symbol: string): symbol is Element {
  return Object.hasOwn(atomicWeights, symbol);
}

/**
 * The molar mass of a formula in g/mol, built from the atomic weights.
 *
 * Reads hydrates: `Na2CO3.10H2O`, `K2CO3.1.5H2O`, and any substance of the elements in `atomicWeights`, such as `H2O`.
 *
 * @throws {RangeError} when the text is no formula of known elements: formulas are part of the program.
 * @example molarMass("Na2CO3.10H2O").toString() // => "286.138"
 */
export function molarMass(formula: string): Decimal {
  const atoms = Object.entries(atomsOf(formula));
  return sum(atoms.map(([symbol, count]) => (isElement(symbol) ? count.times(atomicWeights[symbol]) : dec(0))));
}
