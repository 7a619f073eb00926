import { named } from "../../chemistry/named.ts";
import { atomicWeightSource, atomsOf, molarMass } from "../../chemistry/species.ts";
import { type Figure, worked } from "../../figure/figure.ts";
import type { Source } from "../../figure/source.ts";
import type { DecimalText } from "../../number/decimal.ts";

/** Salts whose heat of solution can be worked out, without crystal water. */
export type DissolvingSalt = "NaCl" | "Na2CO3" | "K2CO3" | "NaHCO3" | "KHCO3";

export const crcEnthalpies: Source = {
  cite: "CRC Handbook of Chemistry and Physics, standard thermodynamic properties of chemical substances and of aqueous ions, 25 °C",
  at: "enthalpy of formation of the solid and of its ions",
  standing: "copy",
};

interface Enthalpies {
  /** Enthalpy of formation of the solid, kJ/mol. */
  readonly solid: DecimalText;
  readonly anion: keyof typeof ions;
}

/** Enthalpies of formation in water at infinite dilution, kJ/mol. */
const ions = { Na: "-240.1", K: "-252.4", Cl: "-167.2", CO3: "-677.1", HCO3: "-692.0" } as const satisfies Readonly<
  Record<string, DecimalText>
>;

const salts: Readonly<Record<DissolvingSalt, Enthalpies>> = {
  NaCl: { solid: "-411.2", anion: "Cl" },
  Na2CO3: { solid: "-1130.7", anion: "CO3" },
  K2CO3: { solid: "-1151.0", anion: "CO3" },
  NaHCO3: { solid: "-950.8", anion: "HCO3" },
  KHCO3: { solid: "-963.2", anion: "HCO3" },
};

export const dissolvingSalts: readonly DissolvingSalt[] = ["NaCl", "Na2CO3", "K2CO3", "NaHCO3", "KHCO3"];

/**
 * Tells how much heat a salt without crystal water gives off as it dissolves in much water at 25 °C, in kJ/kg; below zero
 * where it takes up heat.
 *
 * Source: enthalpies of formation from the CRC Handbook.
 *
 * @example heatOfSolution("NaCl").value.slice(0, 6) // => "-66.73"
 */
export function heatOfSolution(salt: DissolvingSalt): Figure {
  const { solid, anion } = salts[salt];
  const atoms = atomsOf(salt);
  return worked({
    id: `heat-of-solution.${salt}`,
    label: `heat of solution of ${salt}`,
    unit: "kJ/kg",
    places: 0,
    formula: "(solid - sodium * sodiumIon - potassium * potassiumIon - anion) / mass * 1000",
    from: {
      solid: enthalpy(salt, solid),
      sodium: atoms.Na ?? 0,
      sodiumIon: enthalpy("Na ion", ions.Na),
      potassium: atoms.K ?? 0,
      potassiumIon: enthalpy("K ion", ions.K),
      anion: enthalpy(`${anion} ion`, ions[anion]),
      mass: named(`molar mass of ${salt}`, "g/mol", molarMass(salt), "atomic weights", atomicWeightSource),
    },
    sources: [crcEnthalpies],
  });
}

function enthalpy(of: string, value: DecimalText): Figure {
  return named(`enthalpy of formation of ${of}`, "kJ/mol", value, "the table", crcEnthalpies);
}
