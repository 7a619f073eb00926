import { type Figure, found } from "../figure/figure.ts";
import { type Published, publish } from "../figure/graph.ts";
import { type Note, note, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import type { Source } from "../figure/source.ts";
import type { DecimalInput } from "../number/decimal.ts";
import { type Composition, sharesOf, speciesOf } from "./composition.ts";
import { shareFigure, waterFigure } from "./composition-figures.ts";
import { phRule } from "./hazard.ts";
import { activities, chlorideInPotassiumChloride, harvieMollerWeare, type Molalities } from "./pitzer.ts";

const plummerBusenberg: Source = {
  cite: "L. N. Plummer and E. Busenberg, Geochim. Cosmochim. Acta 46 (1982) 1011, dissociation constants with temperature",
  standing: "copy",
};

const waterIon: Source = {
  cite: "dissociation constant of water with temperature, as in the data file phreeqc.dat of the U.S. Geological Survey",
  standing: "copy",
};

/** Constants that belong with the activity parameters, at 25 °C. */
const constants = { pK1: 6.337, pK2: 10.339, pKw: 13.998 };
/** mol/kg; the ionic strength is never below the molality of the cations */
const GREATEST_STRENGTH = 6;

/**
 * The pH of a solution of carbonates, bicarbonates, hydroxides and chlorides, closed to the air.
 *
 * It is the pH of the solution, never that of a dough: flour buffers, and no published figure lets dough pH be worked out.
 * The scale is MacInnes's. Other temperatures than 25 °C move the dissociation constants and leave the activity
 * coefficients; against full calculations from 5 to 40 °C that stays within 0.05.
 *
 * @param composition - of the solution
 * @param temperature - °C, 0 to 40
 * @param on - what the solution was mixed from, where figures tell that
 * Problems: `ph.phosphate`, `ph.no-water`, `ph.no-salt`, `ph.too-strong`, `ph.temperature`.
 * Source: Harvie, Møller and Weare 1984; Plummer and Busenberg 1982 for the change with temperature.
 * @example shown(solutionPh({ species: { Na2CO3: "1" }, water: "99", inert: "0" }, 25).value) // => "11.4"
 */
export function solutionPh(
  composition: Composition,
  temperature: DecimalInput,
  on?: readonly Figure[],
): Outcome<Published<Figure>> {
  const t = Number(temperature);
  const water = Number(composition.water);
  const phosphates = sharesOf(composition).filter(([name]) => speciesOf(name).ions === "not known");
  if (phosphates.length > 0) {
    return refuse(problem("ph.phosphate", [], { phosphates: phosphates.map(([name]) => name) }));
  }
  if (!(water > 0)) return refuse(problem("ph.no-water", [], {}));
  if (t < 0 || t > 40) return refuse(problem("ph.temperature", [], { temperature: t }));
  const totals = totalsOf(composition, water / 1000);
  const cations = totals.Na + totals.K;
  if (cations - totals.Cl <= 1e-6) return refuse(problem("ph.no-salt", [], {}));
  if (cations > GREATEST_STRENGTH) return refuse(tooStrong(cations));
  const solved = solve(totals, t);
  if (solved.ionicStrength > GREATEST_STRENGTH) return refuse(tooStrong(solved.ionicStrength));
  const value = solved.ph;
  const doubt = doubtOf(solved.ionicStrength) + (t === 25 ? 0 : 0.05);
  const label = `pH of the solution at ${t} °C, closed to the air (MacInnes scale)`;
  const figure = found(
    { id: "solution.ph", label, unit: "", places: 1 },
    value.toFixed(6),
    "carbonate equilibria with Pitzer's activity coefficients, solved by halving and repetition",
    [...sharesOf(composition).map(([name]) => shareFigure(composition, name, on)), waterFigure(composition, on)],
    ...(t === 25 ? [harvieMollerWeare] : [harvieMollerWeare, plummerBusenberg, waterIon]),
  );
  const range = {
    low: (value - doubt).toFixed(2),
    high: (value + doubt).toFixed(2),
    why: `the choice of the single-ion scale and the fit leave about ${doubt.toFixed(2)} of doubt at this strength`,
  };
  return publish({ ...figure, range }, [note("ph.of-the-solution", [], {}), ...phRule(composition, figure.value)]);
}

/** A pH with what is to be said about it, or why there is none. */
export function phTold(ph: Outcome<Figure>): { readonly ph?: Figure; readonly notes: readonly Note[] } {
  if (ph.ok) return { ph: ph.value, notes: ph.notes };
  return { notes: ph.problems.map((problem) => note("ph.not-estimated", [], { problem })) };
}

function tooStrong(ionicStrength: number): Problem {
  return problem("ph.too-strong", [], { strength: ionicStrength.toFixed(1), most: GREATEST_STRENGTH });
}

/** The single-ion scale alone moves the pH by 0.03 at ionic strength 0.3 and by 0.09 at 1.5. */
function doubtOf(ionicStrength: number): number {
  if (ionicStrength <= 0.3) return 0.05;
  return ionicStrength <= 1.5 ? 0.1 : 0.2;
}

/** Atoms of each element, which do not change with pH, mol per kg of water. */
function totalsOf(composition: Composition, kilogramsPer100g: number) {
  const totals = { Na: 0, K: 0, Cl: 0, C: 0 };
  for (const [name, share] of sharesOf(composition)) {
    const { molarMass, atoms } = speciesOf(name);
    const molality = Number(share.div(molarMass)) / kilogramsPer100g;
    for (const element of elements) totals[element] += molality * (atoms[element] ?? 0);
  }
  return totals;
}

const elements = ["Na", "K", "Cl", "C"] as const;

type Totals = ReturnType<typeof totalsOf>;

/** Dissociation constants in molalities: the activity coefficients are drawn into them. */
type Constants = Readonly<typeof constants>;

/** Solves the balance and renews the activity coefficients in turn until the pH stands still; then moves it to the temperature. */
function solve(totals: Totals, t: number): { readonly ph: number; readonly ionicStrength: number } {
  const { Na, K, Cl, C: carbon } = totals;
  let molalities: Molalities = { Na, K, Cl, OH: 0, HCO3: 0, CO3: carbon };
  let before = Number.NaN;
  for (let round = 0; round < 100; round += 1) {
    const drawn = constantsIn(molalities);
    const ph = balance(totals, drawn);
    molalities = { Na, K, Cl, ...speciesAt(ph, carbon, drawn) };
    if (Math.abs(ph - before) < 1e-9) break;
    before = ph;
  }
  const drawn = constantsIn(molalities);
  return { ph: balance(totals, moved(drawn, t)), ionicStrength: activities(molalities).ionicStrength };
}

function constantsIn(molalities: Molalities): Constants {
  const { anions, water, ionicStrength } = activities(molalities);
  const scale = anions.Cl - chlorideInPotassiumChloride(ionicStrength);
  const hydroxide = (anions.OH - scale) / Math.LN10;
  const bicarbonate = (anions.HCO3 - scale) / Math.LN10;
  const carbonate = (anions.CO3 - 2 * scale) / Math.LN10;
  return {
    pK1: constants.pK1 + bicarbonate - water / Math.LN10,
    pK2: constants.pK2 + carbonate - bicarbonate,
    pKw: constants.pKw + hydroxide - water / Math.LN10,
  };
}

/** The constants at another temperature: moved by the change of the dissociation constants alone. */
function moved(drawn: Constants, t: number): Constants {
  if (t === 25) return drawn;
  const change = (pK: (kelvin: number) => number): number => pK(t + 273.15) - pK(298.15);
  return { pK1: drawn.pK1 + change(pK1), pK2: drawn.pK2 + change(pK2), pKw: drawn.pKw + change(pKw) };
}

function speciesAt(ph: number, carbon: number, drawn: Constants): Pick<Molalities, "OH" | "HCO3" | "CO3"> {
  const carbonate = 10 ** (ph - drawn.pK2);
  const acid = 10 ** (drawn.pK1 - ph);
  const bicarbonate = carbon / (1 + carbonate + acid);
  return { OH: 10 ** (ph - drawn.pKw), HCO3: bicarbonate, CO3: bicarbonate * carbonate };
}

/** The pH at which the charges balance, by halving. */
function balance(totals: Totals, drawn: Constants): number {
  const positive = totals.Na + totals.K - totals.Cl;
  let [low, high] = [4, 16];
  for (let step = 0; step < 50; step += 1) {
    const ph = (low + high) / 2;
    const { OH, HCO3, CO3 } = speciesAt(ph, totals.C, drawn);
    if (OH + HCO3 + 2 * CO3 < positive) low = ph;
    else high = ph;
  }
  return (low + high) / 2;
}

function pK1(T: number): number {
  return 356.3094 + 0.06091964 * T - 21834.37 / T - 126.8339 * Math.log10(T) + 1684915 / T ** 2;
}

function pK2(T: number): number {
  return 107.8871 + 0.03252849 * T - 5151.79 / T - 38.92561 * Math.log10(T) + 563713.9 / T ** 2;
}

function pKw(T: number): number {
  return -(293.29227 + 0.1360833 * T - 10576.913 / T - 123.73158 * Math.log10(T) - 6.996455e-5 * T ** 2);
}
