import type { Source } from "../figure/source.ts";
import type { SpeciesName } from "./species.ts";

/** Statements of the Globally Harmonised System that the salts here can call for. */
export const statements = {
  H290: "may be corrosive to metals",
  H302: "harmful if swallowed",
  H314: "causes severe skin burns and eye damage",
  H315: "causes skin irritation",
  H319: "causes serious eye irritation",
  H335: "may cause respiratory irritation",
} as const;

export type StatementCode = keyof typeof statements;

/** What is known of the class of one salt. */
export interface HazardEntry {
  /** % by mass of the salt alone from which a statement holds; none where it is not classified. */
  readonly limits: Readonly<Partial<Record<StatementCode, number>>>;
  readonly source: Source;
}

const regulation = "Regulation (EC) No 1272/2008, Annex VI";
const soda: Source = {
  cite: `${regulation}, entry 011-005-00-2, sodium carbonate: eye irritant`,
  at: "class read in safety data sheets; number from memory",
  standing: "copy",
};
const potash: Source = {
  cite: "safety data sheets of suppliers of potassium carbonate; not harmonised, so suppliers differ",
  standing: "copy",
};
const sodiumHydroxide: Source = {
  cite: `${regulation}, entry 011-002-00-6, sodium hydroxide: limits 5, 2 and 0.5 %; H290 by suppliers`,
  standing: "copy",
};
const potassiumHydroxide: Source = {
  cite: `${regulation}, entry 019-002-00-8, potassium hydroxide: limits 5, 2 and 0.5 %; H290 by suppliers`,
  at: "H302 by 333 mg/kg against 2000 mg/kg, from memory",
  standing: "copy",
};
const phosphates: Source = {
  cite: "safety data sheets of suppliers of trisodium phosphate and of the diphosphates; not harmonised, so suppliers differ: some print H335",
  standing: "copy",
};
const tripotassium: Source = {
  cite: "safety data sheets of suppliers of tripotassium phosphate; not harmonised: some print H318",
  standing: "memory",
};
const notClassified: Source = {
  cite: "bicarbonates and chlorides: no harmonised entry, not classified by their suppliers",
  standing: "memory",
};

/** General limits of Annex I for mixtures: 10 % for irritants, 20 % for irritants of the airways. */
const irritant = { H315: 10, H319: 10, H335: 20 } as const;
const burning = { H314: 2, H290: 2, H315: 0.5, H319: 0.5 } as const;

/** The classes of the salts. Of a salt that is not here the class is not known. */
export const hazardEntries: Readonly<Partial<Record<SpeciesName, HazardEntry>>> = {
  Na2CO3: { limits: { H319: 10 }, source: soda },
  K2CO3: { limits: irritant, source: potash },
  NaOH: { limits: burning, source: sodiumHydroxide },
  KOH: { limits: { ...burning, H302: 16.65 }, source: potassiumHydroxide },
  Na3PO4: { limits: irritant, source: phosphates },
  K3PO4: { limits: irritant, source: tripotassium },
  Na4P2O7: { limits: irritant, source: phosphates },
  K4P2O7: { limits: { H315: 10, H319: 10 }, source: phosphates },
  NaHCO3: { limits: {}, source: notClassified },
  KHCO3: { limits: {}, source: notClassified },
  NaCl: { limits: {}, source: notClassified },
  KCl: { limits: {}, source: notClassified },
};

/** How the parts of a mixture are counted together. */
export const summing: Source = {
  cite: "Regulation (EC) No 1272/2008, Annex I, limits for mixtures (10 % for irritants, 20 % for the airways); unlike limits by the sum of share over limit",
  at: "parts 3.2 and 3.3, in a summary",
  standing: "copy",
};
