import type { Source } from "../figure/source.ts";
import { type Decimal, type DecimalText, dec, HUNDRED } from "../number/decimal.ts";
import { rowsOf } from "../number/table.ts";
import { interpolate } from "./sodium-hydroxide-volume.ts";

/** How the volume a dissolved salt takes up is known, and where. */
export interface VolumeModel {
  /** °C, least and greatest */
  readonly temperature: readonly [DecimalText, DecimalText];
  /** % by mass of the one salt in water, greatest */
  readonly strongest: DecimalText;
  /** How far the density of a solution of the one salt may be off, and by which tables. */
  readonly doubt: FitDoubt;
  /** Where within the range the fit has no measurements of its own, in words. */
  readonly thin?: { readonly below: DecimalText; readonly text: string };
  readonly source: Source;
  /** Apparent specific volume in mL/g, from the mass fraction of all salts together and °C. */
  readonly volume: (saltFraction: Decimal, temperature: Decimal) => Decimal;
}

/** How far a fit lies from what was published beside it. */
export interface FitDoubt {
  /** % by mass with ± % of the density, rising in strength; straight lines between, the last one on to the end. */
  readonly knots: readonly (readonly [DecimalText, DecimalText])[];
  /** The tables the fit was held against. */
  readonly tables: string;
  readonly source: Source;
}

/** Handbook table of 2021, read in a copy. */
export const handbook = "the CRC Handbook of 2021 at 20 °C";
const compared: Source = {
  cite: "greatest distance of the fit from CRC Handbook of Chemistry and Physics, 102nd ed. (2021), Concentrative Properties of Aqueous Solutions, from measured apparent volumes at 1 to 35 °C, and from the further tables named",
  standing: "copy",
};

export function doubt(knots: Parameters<typeof rowsOf>[0], ...tables: readonly string[]): FitDoubt {
  return { knots: rowsOf(knots), tables: tables.join(", "), source: compared };
}

export const laliberte: Source = {
  cite: "M. Laliberté, J. Chem. Eng. Data 54 (2009) 1725, apparent density of solutes",
  at: "coefficients",
  standing: "copy",
};

/** v = (w + c2 + c3 t) / ((c0 w + c1) exp(1e-6 (t + c4)²)), with w the mass fraction of all salts. m³/kg, here mL/g. */
export function apparent(c0: string, c1: string, c2: string, c3: string, c4: string): VolumeModel["volume"] {
  return (w, t) => {
    const growth = t.plus(c4).pow(2).div(1e6).exp();
    const density = w.times(c0).plus(c1).times(growth);
    return t.times(c3).plus(c2).plus(w).div(density).times(1000);
  };
}

/** Share of the way to the strongest solution of a salt that its own model covers; 1 is the end of its range. */
export function reach(share: Decimal, model: VolumeModel): Decimal {
  return share.times(HUNDRED).div(model.strongest);
}

/** ± % of the density that a fit may be off at a strength, % by mass of all salts. @example fitDoubt({ knots: [["0", "0.1"], ["10", "0.3"]], tables: "", source: definition }, dec(5)).toString() // => "0.2" */
export function fitDoubt({ knots }: FitDoubt, percent: Decimal): Decimal {
  return interpolate(
    knots.map(([at, off]) => [dec(at), dec(off)] as const),
    percent,
  );
}
