import type { Source } from "../figure/source.ts";
import { type Decimal, type DecimalText, dec, decimalText, sum } from "../number/decimal.ts";

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

export type Element = keyof typeof atomicWeights;

const part = /(\d+(?:\.\d+)?)?((?:[A-Z][a-z]?\d*)+)(?:[.·]|$)/y;

/**
 * Counts the atoms of a formula, parts of a hydrate joined by `.` or `·`.
 *
 * @throws {RangeError} when the text is no formula of known elements: formulas are part of the program.
 * @example atomsOf("K2CO3.1.5H2O").H?.toString() // => "3"
 */
export function atomsOf(formula: string): Readonly<Partial<Record<Element, Decimal>>> {
  const atoms: Partial<Record<Element, Decimal>> = {};
  let end = 0;
  while (end < formula.length) {
    part.lastIndex = end;
    const found = part.exec(formula);
    if (found?.[2] === undefined) throw new RangeError(`not a formula: ${formula}`);
    for (const [, symbol = "", count = ""] of found[2].matchAll(/([A-Z][a-z]?)(\d*)/g)) {
      if (!isElement(symbol)) throw new RangeError(`no atomic weight for ${symbol} in ${formula}`);
      const more = dec(found[1] ?? 1).times(count === "" ? 1 : count);
      atoms[symbol] = more.plus(atoms[symbol] ?? 0);
    }
    end += found[0].length;
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

/** A salt or base without water. */
export interface Species {
  readonly formula: string;
  readonly name: string;
  readonly atoms: Readonly<Partial<Record<Element, number>>>;
  /** g/mol */
  readonly molarMass: DecimalText;
  /** Equivalents of acid per mol down to about pH 4.3: carbonate ends as carbonic acid, phosphate as H2PO4−. */
  readonly equivalentsM: number;
  /** Equivalents of acid per mol down to about pH 8.3: carbonate ends as bicarbonate, phosphate as HPO4 2−. Below zero: it uses up that much. */
  readonly equivalentsP: number;
  /** Atoms of sodium in a formula unit. */
  readonly sodium: number;
  /** Atoms of potassium in a formula unit. */
  readonly potassium: number;
  /** A neutral carbonate (bicarbonates are not). */
  readonly carbonate: boolean;
  /** Numbers as a food additive: International Numbering System and European Union. */
  readonly additive?: Additive;
  readonly sources: readonly Source[];
}

export interface Additive {
  readonly ins: string;
  readonly eu: string;
}

/** The numbers of an additive by its INS number, which the European Union writes after an E. @example additive("524").eu // => "E 524" */
export function additive(ins: string): Additive {
  return { ins, eu: `E ${ins}` };
}

const additiveNumbers: Source = {
  cite: "Codex Alimentarius, Class Names and the International Numbering System for Food Additives, CAC/GL 36",
  standing: "memory",
};
const endPoints: Source = {
  cite: "textbook acid-base titration to the phenolphthalein end (about pH 8.3) and the methyl orange end (about pH 4.3)",
  standing: "memory",
};
const condensed: Source = {
  cite: "condensed phosphates: M ends at two added protons, which is sharp; P at one, which is not sharp near pH 8.3 and is nominal",
  standing: "memory",
};

function salt(
  formula: string,
  name: string,
  equivalentsM: number,
  equivalentsP: number,
  number?: string,
  more: readonly Source[] = [],
): Species {
  const atoms = Object.fromEntries(Object.entries(atomsOf(formula)).map(([symbol, count]) => [symbol, +count]));
  return {
    formula,
    name,
    atoms,
    molarMass: decimalText(molarMass(formula)),
    equivalentsM,
    equivalentsP,
    sodium: atoms["Na"] ?? 0,
    potassium: atoms["K"] ?? 0,
    carbonate: /^(Na|K)2CO3$/.test(formula),
    ...(number === undefined ? {} : { additive: additive(number) }),
    sources: [atomicWeightSource, endPoints, ...(number === undefined ? [] : [additiveNumbers]), ...more],
  };
}

/** The salts and bases that alkaline products are made of. */
export const species = {
  Na2CO3: salt("Na2CO3", "sodium carbonate", 2, 1, "500(i)"),
  K2CO3: salt("K2CO3", "potassium carbonate", 2, 1, "501(i)"),
  NaHCO3: salt("NaHCO3", "sodium bicarbonate", 1, 0, "500(ii)"),
  KHCO3: salt("KHCO3", "potassium bicarbonate", 1, 0, "501(ii)"),
  NaOH: salt("NaOH", "sodium hydroxide", 1, 1, "524"),
  KOH: salt("KOH", "potassium hydroxide", 1, 1, "525"),
  Na3PO4: salt("Na3PO4", "trisodium phosphate", 2, 1, "339(iii)"),
  Na2HPO4: salt("Na2HPO4", "disodium hydrogen phosphate", 1, 0, "339(ii)"),
  NaH2PO4: salt("NaH2PO4", "sodium dihydrogen phosphate", 0, -1, "339(i)"),
  K3PO4: salt("K3PO4", "tripotassium phosphate", 2, 1, "340(iii)"),
  K2HPO4: salt("K2HPO4", "dipotassium hydrogen phosphate", 1, 0, "340(ii)"),
  KH2PO4: salt("KH2PO4", "potassium dihydrogen phosphate", 0, -1, "340(i)"),
  Na4P2O7: salt("Na4P2O7", "tetrasodium diphosphate", 2, 1, "450(iii)", [condensed]),
  K4P2O7: salt("K4P2O7", "tetrapotassium diphosphate", 2, 1, "450(v)", [condensed]),
  Na5P3O10: salt("Na5P3O10", "pentasodium triphosphate", 2, 1, "451(i)", [condensed]),
  NaCl: salt("NaCl", "sodium chloride", 0, 0),
  KCl: salt("KCl", "potassium chloride", 0, 0, "508"),
} as const satisfies Readonly<Record<string, Species>>;

export type SpeciesName = keyof typeof species;

/** The names of all species, in the order of the table. */
export const speciesNames = Object.keys(species) as readonly SpeciesName[];

/** A solid that binds water in fixed proportion. */
export interface Hydrate {
  readonly formula: string;
  readonly name: string;
  /** Moles of each species in a formula unit. */
  readonly species: Readonly<Partial<Record<SpeciesName, number>>>;
  /** Moles of water in a formula unit, as decimal text. */
  readonly water: DecimalText;
}

function hydrated(formula: string, name: string, parts: Hydrate["species"], water: DecimalText): Hydrate {
  return { formula, name, species: parts, water };
}

/** The hydrates (and the double salt) that are sold or that form in the jar. */
export const hydrates = {
  "Na2CO3.H2O": hydrated("Na2CO3.H2O", "sodium carbonate monohydrate", { Na2CO3: 1 }, "1"),
  "Na2CO3.7H2O": hydrated("Na2CO3.7H2O", "sodium carbonate heptahydrate", { Na2CO3: 1 }, "7"),
  "Na2CO3.10H2O": hydrated("Na2CO3.10H2O", "sodium carbonate decahydrate", { Na2CO3: 1 }, "10"),
  "K2CO3.1.5H2O": hydrated("K2CO3.1.5H2O", "potassium carbonate sesquihydrate", { K2CO3: 1 }, "1.5"),
  "Na2CO3.NaHCO3.2H2O": hydrated("Na2CO3.NaHCO3.2H2O", "sodium sesquicarbonate", { Na2CO3: 1, NaHCO3: 1 }, "2"),
  "Na3PO4.12H2O": hydrated("Na3PO4.12H2O", "trisodium phosphate dodecahydrate", { Na3PO4: 1 }, "12"),
  "Na2HPO4.2H2O": hydrated("Na2HPO4.2H2O", "disodium hydrogen phosphate dihydrate", { Na2HPO4: 1 }, "2"),
  "Na2HPO4.12H2O": hydrated("Na2HPO4.12H2O", "disodium hydrogen phosphate dodecahydrate", { Na2HPO4: 1 }, "12"),
  "NaH2PO4.H2O": hydrated("NaH2PO4.H2O", "sodium dihydrogen phosphate monohydrate", { NaH2PO4: 1 }, "1"),
  "NaH2PO4.2H2O": hydrated("NaH2PO4.2H2O", "sodium dihydrogen phosphate dihydrate", { NaH2PO4: 1 }, "2"),
  "K2HPO4.3H2O": hydrated("K2HPO4.3H2O", "dipotassium hydrogen phosphate trihydrate", { K2HPO4: 1 }, "3"),
  "Na4P2O7.10H2O": hydrated("Na4P2O7.10H2O", "tetrasodium diphosphate decahydrate", { Na4P2O7: 1 }, "10"),
} as const satisfies Readonly<Record<string, Hydrate>>;

export type HydrateName = keyof typeof hydrates;
