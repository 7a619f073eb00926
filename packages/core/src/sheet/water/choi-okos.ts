import type { Source } from "../../figure/source.ts";
import type { DecimalText } from "../../number/decimal.ts";

/** The components of a food that the equations know. Carbohydrate is without fibre; salts of every kind count as ash. */
export type Component = "water" | "protein" | "fat" | "carbohydrate" | "fibre" | "ash";

/** A property as `c0 + c1 t + c2 t²`, t in °C. */
export interface Polynomial {
  readonly c0: DecimalText;
  readonly c1: DecimalText;
  readonly c2: DecimalText;
}

export const choiOkos: Source = {
  cite: "Choi and Okos 1986, component equations, as printed in ASHRAE Refrigeration 2006, chapter 9",
  standing: "copy",
};

export const components: readonly Component[] = ["water", "protein", "fat", "carbohydrate", "fibre", "ash"];

/** kg/m³. */
export const densities: Readonly<Record<Component, Polynomial>> = {
  water: { c0: "997.18", c1: "0.0031439", c2: "-0.0037574" },
  protein: { c0: "1329.9", c1: "-0.5184", c2: "0" },
  fat: { c0: "925.59", c1: "-0.41757", c2: "0" },
  carbohydrate: { c0: "1599.1", c1: "-0.31046", c2: "0" },
  fibre: { c0: "1311.5", c1: "-0.36589", c2: "0" },
  ash: { c0: "2423.8", c1: "-0.28063", c2: "0" },
};

/**
 * kJ/(kg K). Water starts at 4.1762; some copies start at 4.1289, which puts water 1.2 % below its measured
 * 4.181 at 25 °C, so that form is not used.
 */
export const specificHeats: Readonly<Record<Component, Polynomial>> = {
  water: { c0: "4.1762", c1: "-0.000090864", c2: "0.0000054731" },
  protein: { c0: "2.0082", c1: "0.0012089", c2: "-0.0000013129" },
  fat: { c0: "1.9842", c1: "0.0014733", c2: "-0.0000048008" },
  carbohydrate: { c0: "1.5488", c1: "0.0019625", c2: "-0.0000059399" },
  fibre: { c0: "1.8459", c1: "0.0018306", c2: "-0.0000046509" },
  ash: { c0: "1.0926", c1: "0.0018896", c2: "-0.0000036817" },
};
