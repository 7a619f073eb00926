import { table } from "../figure/frozen.ts";
import { type DecimalText, decimalText } from "../number/decimal.ts";
import { atomsOf, type Element, molarMass, partsOf } from "./elements.ts";
import { carbonates } from "./salts/carbonates.ts";
import { chlorides } from "./salts/chlorides.ts";
import { hydroxides } from "./salts/hydroxides.ts";
import { phosphates } from "./salts/phosphates.ts";
import type { Product, Salt } from "./salts/record.ts";

const records = { ...carbonates, ...hydroxides, ...phosphates, ...chlorides };

/** The salts and bases by formula, without water. */
export type SpeciesName = keyof typeof records;

/** A salt or base without water: its record, and what its formula tells. */
export interface Species extends Salt {
  readonly formula: SpeciesName;
  readonly atoms: Readonly<Partial<Record<Element, number>>>;
  /** g/mol */
  readonly molarMass: DecimalText;
  /** Atoms of sodium in a formula unit. */
  readonly sodium: number;
  /** Atoms of potassium in a formula unit. */
  readonly potassium: number;
}

/** The names of all species, in the order of the records. */
export const speciesNames: readonly SpeciesName[] = table(Object.keys(records) as SpeciesName[]);

/** The salts and bases that alkaline products are made of. */
export const species = listed(speciesNames, (formula): Species => {
  const atoms = Object.fromEntries(Object.entries(atomsOf(formula)).map(([symbol, count]) => [symbol, +count]));
  return {
    ...records[formula],
    formula,
    atoms,
    molarMass: decimalText(molarMass(formula)),
    sodium: atoms["Na"] ?? 0,
    potassium: atoms["K"] ?? 0,
  };
});

/** The species of which something is known. @example speciesWith("volume").length // => 8 */
export function speciesWith(what: "volume" | "solubility"): readonly SpeciesName[] {
  return speciesNames.filter((name) => records[name][what] !== "not known");
}

/** A solid that binds water in fixed proportion. */
export interface Hydrate {
  readonly formula: HydrateName;
  readonly name: string;
  /** Moles of each species in a formula unit. */
  readonly species: Readonly<Partial<Record<SpeciesName, number>>>;
  /** Moles of water in a formula unit, as decimal text. */
  readonly water: DecimalText;
}

/** The solids with crystal water, or of two salts, by formula. */
export type HydrateName = { [S in SpeciesName]: keyof (typeof records)[S]["hydrates"] }[SpeciesName];

const namesOfHydrates: Readonly<Record<string, string>> = Object.assign(
  {},
  ...speciesNames.map((name) => records[name].hydrates),
);

export const hydrateNames: readonly HydrateName[] = table(Object.keys(namesOfHydrates) as HydrateName[]);

/** A salt without water, or a solid that binds some. */
export type Formula = SpeciesName | HydrateName;

/** A pure product of a salt or hydrate, under all its names. */
interface NamedProduct extends Product {
  readonly name: string;
  readonly of: Formula;
}

/** The pure products of all salts, in the order of the records; what its record has no product of, under its own name. */
export const saltProducts: readonly NamedProduct[] = table(
  speciesNames.flatMap((salt): readonly NamedProduct[] => {
    const sold: readonly (Product & { readonly of: Formula })[] = records[salt].products;
    const formulas = [salt, ...hydrateNames.filter((one) => Object.hasOwn(records[salt].hydrates, one))];
    const others = formulas.filter((formula) => !sold.some(({ of, baked }) => of === formula && baked !== true));
    return [
      ...sold.map((product) => ({ name: nameOf(product.of), ...product })),
      ...others.map((of) => {
        const name = nameOf(of);
        return { key: name.replaceAll(" ", "-"), name, of, aliases: [], names: [] };
      }),
    ];
  }),
);

/** The hydrates (and the double salt) that are sold or that form in the jar. */
export const hydrates = listed(hydrateNames, (formula): Hydrate => {
  const parts = partsOf(formula);
  const salts = parts.filter((part) => part.formula !== "H2O").map((part) => [part.formula, Number(part.count)]);
  return {
    formula,
    name: nameOf(formula),
    species: Object.fromEntries(salts),
    water: parts.find((part) => part.formula === "H2O")?.count ?? "0",
  };
});

/** The name of a salt or hydrate. @example nameOf("K2CO3.1.5H2O") // => "potassium carbonate sesquihydrate" */
export function nameOf(formula: Formula): string {
  return isHydrate(formula) ? (namesOfHydrates[formula] ?? formula) : records[formula].name;
}

/** Whether a formula is that of a hydrate. @example isHydrate("K2CO3") // => false */
export function isHydrate(formula: Formula): formula is HydrateName {
  return Object.hasOwn(namesOfHydrates, formula);
}

/** A record for each name, made when it is first asked for. */
function listed<K extends string, V extends object>(names: readonly K[], make: (name: K) => V): Readonly<Record<K, V>> {
  const made: Partial<Record<K, V>> = {};
  const getters = names.map((name) => [name, { enumerable: true, get: () => (made[name] ??= table(make(name))) }]);
  return Object.freeze(Object.defineProperties({} as Record<K, V>, Object.fromEntries(getters)));
}

/** Salts whose heat of solution can be worked out, without crystal water. */
export type DissolvingSalt = {
  [S in SpeciesName]: (typeof records)[S]["enthalpy"] extends "not known" ? never : S;
}[SpeciesName];

/** Whether the heat of solution of a salt can be worked out. @example isDissolving("NaOH") // => false */
export function isDissolving(name: SpeciesName): name is DissolvingSalt {
  return records[name].enthalpy !== "not known";
}

/** Enthalpy of formation of the solid, kJ/mol, and the anion that it gives off. @example enthalpyOf("NaCl") // => { solid: "-411.2", anion: "Cl" } */
export function enthalpyOf(salt: DissolvingSalt) {
  const { enthalpy, ions } = records[salt];
  return { solid: enthalpy, anion: ions.anion } as const;
}

/** The numbers of a food additive: International Numbering System and European Union. */
export interface Additive {
  readonly ins: string;
  readonly eu: string;
}

/** The numbers of an additive by its INS number, which the European Union writes after an E. @example additive("524").eu // => "E 524" */
export function additive(ins: string): Additive {
  return { ins, eu: `E ${ins}` };
}
