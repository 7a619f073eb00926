import { molarMassFigure, named } from "../../chemistry/named.ts";
import { type DissolvingSalt, enthalpyOf, species } from "../../chemistry/species.ts";
import { type Figure, worked } from "../../figure/figure.ts";
import { type Published, published } from "../../figure/graph.ts";
import type { Source } from "../../figure/source.ts";
import type { DecimalText } from "../../number/decimal.ts";

export const crcEnthalpies: Source = {
  cite: "CRC Handbook of Chemistry and Physics, standard thermodynamic properties of chemical substances and of aqueous ions, 25 °C",
  at: "enthalpy of formation of the solid and of its ions",
  standing: "copy",
};

/** Enthalpies of formation in water at infinite dilution, kJ/mol. */
const ions = { Na: "-240.1", K: "-252.4", Cl: "-167.2", CO3: "-677.1", HCO3: "-692.0" } as const satisfies Readonly<
  Record<string, DecimalText>
>;

/**
 * Tells how much heat a salt without crystal water gives off as it dissolves in much water at 25 °C, in kJ/kg; below zero
 * where it takes up heat.
 *
 * Source: enthalpies of formation from the CRC Handbook.
 *
 * @example heatOfSolution("NaCl").value.slice(0, 6) // => "-66.73"
 */
export function heatOfSolution(salt: DissolvingSalt): Published<Figure> {
  const { solid, anion } = enthalpyOf(salt);
  const { sodium, potassium } = species[salt];
  const naming = { id: `heat-of-solution.${salt}`, label: `heat of solution of ${salt}`, unit: "kJ/kg", places: 0 };
  const from = {
    solid: enthalpy(salt, solid),
    sodium,
    sodiumIon: enthalpy("Na ion", ions.Na),
    potassium,
    potassiumIon: enthalpy("K ion", ions.K),
    anion: enthalpy(`${anion} ion`, ions[anion]),
    mass: molarMassFigure(salt),
  };
  const formula = "(solid - sodium * sodiumIon - potassium * potassiumIon - anion) / mass * 1000";
  return published(worked(naming, formula, from, crcEnthalpies));
}

function enthalpy(of: string, value: DecimalText): Figure {
  const id = `enthalpy.${of.replace(" ", "-")}`;
  return named(id, `enthalpy of formation of ${of}`, "kJ/mol", value, "the table", crcEnthalpies);
}
