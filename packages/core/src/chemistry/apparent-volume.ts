import type { Source } from "../figure/source.ts";
import { type Decimal, type DecimalText, dec, HUNDRED, ONE } from "../number/decimal.ts";
import { interpolate, sodiumHydroxideVolume } from "./sodium-hydroxide-volume.ts";
import { molarMass, type SpeciesName } from "./species.ts";
import { waterDensity } from "./water-density.ts";

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
const handbook = "the CRC Handbook of 2021 at 20 °C";
const compared: Source = {
  cite: "greatest distance of the fit from CRC Handbook of Chemistry and Physics, 102nd ed. (2021), Concentrative Properties of Aqueous Solutions, from measured apparent volumes at 1 to 35 °C, and from the further tables named",
  standing: "copy",
};

function doubt(knots: FitDoubt["knots"], ...tables: readonly string[]): FitDoubt {
  return { knots, tables: tables.join(", "), source: compared };
}

const laliberte: Source = {
  cite: "M. Laliberté, J. Chem. Eng. Data 54 (2009) 1725, apparent density of solutes",
  at: "coefficients",
  standing: "copy",
};
const goncalvesKestin: Source = {
  cite: "F. A. Gonçalves and J. Kestin, Int. J. Thermophysics 2 (1981) 315, density polynomial of K2CO3 solutions",
  standing: "copy",
};
const causticTables: Source = {
  cite: "CRC Handbook of Chemistry and Physics, 102nd ed. (2021), Concentrative Properties of Aqueous Solutions, at 20 °C; two published tables of NaOH density for its change with temperature",
  standing: "copy",
};

/** v = (w + c2 + c3 t) / ((c0 w + c1) exp(1e-6 (t + c4)²)), with w the mass fraction of all salts. m³/kg, here mL/g. */
function apparent(c0: string, c1: string, c2: string, c3: string, c4: string): VolumeModel["volume"] {
  return (w, t) => {
    const growth = t.plus(c4).pow(2).div(1e6).exp();
    const density = w.times(c0).plus(c1).times(growth);
    return t.times(c3).plus(c2).plus(w).div(density).times(1000);
  };
}

/** Rows are powers of °C, columns powers of molality; kg/m³. */
const potassiumCarbonateDensity = [
  ["1000.6", "124.79", "-10.544", "0.68296", "-0.023941"],
  ["-0.0014378", "-0.23933", "0.020655", "0.001911", "-0.00022461"],
  ["-0.0057652", "0.00071823", "0.0010597", "-0.00027032", "1.7181e-5"],
  ["1.6986e-5", "1.0135e-5", "-1.2824e-5", "2.7504e-6", "-1.6771e-7"],
] as const;

/**
 * mol/kg; the weakest of the measured points. Below it the fit, which ends a little above water, is drawn to water.
 */
const WEAKEST_MEASURED = "0.08017";

function potassiumCarbonateVolume(w: Decimal, t: Decimal): Decimal {
  const molality = w.times(1000).div(ONE.minus(w).times(molarMass("K2CO3")));
  const power = (row: readonly string[], x: Decimal): Decimal =>
    row.reduceRight((total, coefficient) => total.times(x).plus(coefficient), dec(0));
  const polynomial = (at: Decimal): Decimal =>
    potassiumCarbonateDensity
      .map((row) => power(row, at))
      .reduceRight((total, coefficient) => total.times(t).plus(coefficient), dec(0))
      .div(1000);
  const weak = ONE.minus(molality.div(WEAKEST_MEASURED));
  const above = weak.gt(0) ? polynomial(dec(0)).minus(waterDensity(t)).times(weak) : dec(0);
  const density = polynomial(molality).minus(above);
  return ONE.div(density)
    .minus(ONE.minus(w).div(waterDensity(t)))
    .div(w);
}

/** The salts whose solutions have a density here; no fit was found for the phosphates. */
export const volumeModels: Readonly<Partial<Record<SpeciesName, VolumeModel>>> = {
  Na2CO3: {
    temperature: ["0", "100"],
    strongest: "20.9",
    doubt: doubt(
      [
        ["0", "0.03"],
        ["5", "0.1"],
        ["7.5", "0.2"],
        ["12.5", "0.22"],
      ],
      `${handbook} (to 15 %)`,
      "measured points that scatter (to 17.5 %)",
      "an old table at 15 °C (to 12.6 %)",
    ),
    source: laliberte,
    volume: apparent(
      "0.000000545486543455015",
      "0.000000172154929405038",
      "-0.0825850207323492",
      "0.00168822949783412",
      "4705.39822185746",
    ),
  },
  K2CO3: {
    temperature: ["5", "60"],
    strongest: "50",
    doubt: doubt(
      [
        ["0", "0.03"],
        ["2", "0.05"],
        ["5", "0.1"],
        ["12", "0.13"],
        ["18", "0.18"],
        ["28", "0.28"],
        ["40", "0.34"],
        ["44", "0.36"],
        ["50", "0.45"],
      ],
      `${handbook} (to 50 %), which lies above it`,
      "measured points (to 11 %)",
    ),
    thin: {
      below: "20",
      text: "the density of potassium carbonate solutions was fitted from 20 to 60 °C; below that the fit is carried on, and at 5, 10 and 15 °C it lies within 0.07 % of measured points up to 6.5 % by mass",
    },
    source: goncalvesKestin,
    volume: potassiumCarbonateVolume,
  },
  NaHCO3: {
    temperature: ["0", "100"],
    strongest: "12.6",
    doubt: doubt(
      [
        ["0", "0.03"],
        ["4.5", "0.11"],
        ["5.8", "0.17"],
      ],
      `${handbook} (to 5.5 %)`,
      "measured points (to 8.3 %)",
    ),
    source: laliberte,
    volume: apparent(
      "0.0377378060615898",
      "0.00710029652458366",
      "0.0735733388535116",
      "0.00168369765511221",
      "3291.38382252025",
    ),
  },
  KHCO3: {
    temperature: ["5", "95"],
    strongest: "22",
    doubt: doubt(
      [
        ["0", "0.03"],
        ["5", "0.07"],
        ["16", "0.09"],
        ["20", "0.1"],
        ["22", "0.19"],
      ],
      `${handbook} (to 22 %)`,
      "measured points (to 9.5 %)",
    ),
    source: laliberte,
    volume: apparent(
      "0.0458479253730966",
      "0.0749127808255568",
      "0.505766905030703",
      "0.00643951863958203",
      "3163.65175558093",
    ),
  },
  NaOH: {
    temperature: ["10", "40"],
    strongest: "40",
    doubt: doubt(
      [["0", "0.1"]],
      `${handbook} (to 40 %)`,
      "a table at 10 to 40 °C (to 19 %) and one at 20 to 40 °C (24 to 40 %)",
    ),
    thin: {
      below: "20",
      text: "the density of sodium hydroxide solutions above 19 % was tabulated from 20 to 40 °C; below that the change with temperature is carried on",
    },
    source: causticTables,
    volume: sodiumHydroxideVolume,
  },
  KOH: {
    temperature: ["4", "95"],
    strongest: "40",
    doubt: doubt(
      [
        ["0", "0.05"],
        ["4", "0.17"],
        ["10", "0.3"],
        ["15", "0.38"],
        ["24", "0.53"],
        ["30", "0.63"],
        ["34", "0.66"],
      ],
      `two tables that disagree: ${handbook}, up to 0.66 % below it, and one of a university at 18 °C, within 0.13 %`,
    ),
    source: laliberte,
    volume: apparent(
      "821.119043254761",
      "1043.20173374381",
      "0.112873330222752",
      "0.00124023636407386",
      "539.630388368877",
    ),
  },
  NaCl: {
    temperature: ["0", "100"],
    strongest: "26.5",
    doubt: doubt([["0", "0.1"]], `${handbook} (to 25 %)`, "a table at 20 °C (to 26 %) and one at 18 °C (to 25 %)"),
    source: laliberte,
    volume: apparent(
      "-0.00324112223655149",
      "0.0636354335906616",
      "1.01371399467365",
      "0.0145951015210159",
      "3317.34854426537",
    ),
  },
  KCl: {
    temperature: ["5", "95"],
    strongest: "26.4",
    doubt: doubt([["0", "0.1"]], `${handbook} (to 22 %)`),
    source: laliberte,
    volume: apparent(
      "-0.855928945959145",
      "6.04073571306402",
      "2.81787416217166",
      "0.0253924645877338",
      "2681.61723465886",
    ),
  },
};

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
