import { evaluate, parseExpression, type Value } from "../figure/expression.ts";
import { exact, type Figure, found, worked } from "../figure/figure.ts";
import { type Published, publish } from "../figure/graph.ts";
import { type Note, note, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import { definition, type Source } from "../figure/source.ts";
import { type Decimal, type DecimalInput, dec, fixedText, HUNDRED, ONE, sum } from "../number/decimal.ts";
import { fitDoubt, reach, type VolumeModel } from "./apparent-volume.ts";
import { type Composition, sharesOf, speciesOf } from "./composition.ts";
import { shareFigure } from "./composition-figures.ts";
import { percent } from "./named.ts";
import { known } from "./salts/record.ts";
import { type SpeciesName, speciesWith } from "./species.ts";
import { kell, waterDensity } from "./water-density.ts";

const mixing: Source = {
  cite: "M. Laliberté and W. E. Cooper, J. Chem. Eng. Data 49 (2004) 1141, mixing rule of apparent volumes",
  standing: "copy",
};

interface Dissolved {
  readonly name: SpeciesName;
  /** % of the solution. */
  readonly share: Decimal;
  /** Mass fraction of the clear solution, inert matter left out. */
  readonly fraction: Decimal;
  readonly model: VolumeModel;
}

/**
 * The density of a solution.
 *
 * The volumes of water and of each salt add up; what a salt takes up depends on all salts together and on the
 * temperature. Inert matter is left out. For mixed salts each salt may fill its own range by as much as the others leave.
 *
 * @param composition - of the solution
 * @param temperature - °C, 0 to 40
 * @param on - what the solution was mixed from, where figures tell that
 * Problems: `density.no-model`, `density.temperature`, `density.too-strong`.
 * Source: mixing rule of Laliberté and Cooper 2004; fits as named in the figure.
 * @example shown(solutionDensity({ species: { Na2CO3: "10" }, water: "90", inert: "0" }, 20).value) // => "1.1036 g/mL"
 */
export function solutionDensity(
  composition: Composition,
  temperature: DecimalInput,
  on?: readonly Figure[],
): Outcome<Published<Figure>> {
  const t = dec(temperature);
  const salts = dissolvedIn(composition);
  const without = problemWith(composition, salts, t);
  if (without !== undefined) return refuse(without);
  return publish(densityFigure(salts, t, composition, on), notesOn(salts, t, composition));
}

/** The salts of a solution of which there is a fit. */
export function dissolvedIn(composition: Composition): readonly Dissolved[] {
  const clear = HUNDRED.minus(composition.inert);
  return sharesOf(composition).flatMap(([name, share]) => {
    const model = known(speciesOf(name).volume);
    return model === undefined ? [] : [{ name, share, fraction: share.div(clear), model }];
  });
}

function fractionOf(salts: readonly Dissolved[]): Decimal {
  return sum(salts.map(({ fraction }) => fraction));
}

/** Of shares in % and apparent volumes in mL/g. */
const densityFormula = "1 / ((1 - sum(shares / 100)) / water + sum(shares / 100 * volumes))";

/**
 * The density as a bare number, g/mL: for procedures that ask for it again and again.
 *
 * @throws {RangeError} outside the ranges: `solutionDensity` says so in data.
 * @example densityOf({ species: {}, water: "100", inert: "0" }, 20).toFixed(4) // => "0.9982"
 */
export function densityOf(composition: Composition, temperature: DecimalInput): Decimal {
  const t = dec(temperature);
  const salts = dissolvedIn(composition);
  if (problemWith(composition, salts, t)) throw new RangeError("no density outside the ranges of the fits");
  const total = fractionOf(salts);
  const values = new Map<string, Value>([
    ["shares", salts.map(({ fraction }) => fraction.times(HUNDRED))],
    ["volumes", salts.map(({ model }) => model.volume(total, t))],
    ["water", waterDensity(t)],
  ]);
  return evaluate(parseExpression(densityFormula), (name) => values.get(name));
}

function problemWith(composition: Composition, salts: readonly Dissolved[], t: Decimal): Problem | undefined {
  const names = sharesOf(composition).map(([name]) => name);
  const unknown = names.filter((name) => !salts.some((salt) => salt.name === name));
  if (unknown.length > 0) return problem("density.no-model", [], { unknown, modelled: speciesWith("volume") });
  const ranges = salts.map(({ model }) => model.temperature);
  const low = ranges.reduce((most, [least]) => (dec(least).gt(most) ? least : most), "0");
  const high = ranges.reduce((least, [, most]) => (dec(most).lt(least) ? most : least), "40");
  if (t.lt(low) || t.gt(high)) return problem("density.temperature", [], { temperature: t.toString(), low, high });
  const used = sum(salts.map(({ fraction, model }) => reach(fraction, model)));
  if (used.lte(1)) return undefined;
  const total = fractionOf(salts).times(HUNDRED);
  const most = fixedText(total.div(used).toDecimalPlaces(2, 1), 2);
  return problem("density.too-strong", [], { strength: fixedText(total, 2), most });
}

function densityFigure(
  salts: readonly Dissolved[],
  t: Decimal,
  composition: Composition,
  on: readonly Figure[] | undefined,
): Figure {
  const total = fractionOf(salts);
  const { off, why } = widestDoubt(salts);
  const { inert } = composition;
  const shares = salts.map(({ name }) => {
    const share = shareFigure(composition, name, on);
    if (dec(inert).isZero()) return share;
    const naming = percent(`density.share.${name}`, `${speciesOf(name).name} in the clear solution`);
    return worked(naming, "100 * share / (100 - inert)", { share, inert }, definition);
  });
  const volumes = salts.map(({ name, model }) => {
    const label = `apparent volume of ${speciesOf(name).name}`;
    const naming = { id: `density.volume.${name}`, label, unit: "mL/g", places: 5 };
    return found(naming, model.volume(total, t), "the published fit", shares, model.source);
  });
  const ofWater = { id: "density.water", label: "density of water", unit: "g/mL", places: 5 };
  const water = found(ofWater, waterDensity(t), "the published equation", undefined, kell);
  const figure = worked(
    { id: "solution.density", label: `density at ${t.toString()} °C`, unit: "g/mL", places: 4 },
    salts.length === 0 ? "water" : densityFormula,
    salts.length === 0 ? { water } : { shares, volumes, water },
    kell,
    mixing,
    ...new Set(salts.flatMap(({ model }) => [model.source, model.doubt.source])),
  );
  const margin = exact(figure).times(off).div(HUNDRED);
  const range = { low: exact(figure).minus(margin).toFixed(6), high: exact(figure).plus(margin).toFixed(6), why };
  return { ...figure, range };
}

/** Water alone is known to this, ± %: the equations for it differ by 0.0003 %, the digits kept by less. */
const WATER_OFF = dec("0.001");

/** The salt whose fit is in most doubt at this strength stands for all. */
function widestDoubt(salts: readonly Dissolved[]): { readonly off: Decimal; readonly why: string } {
  const strength = fractionOf(salts).times(HUNDRED);
  const doubts = salts.map(({ name, model }) => ({
    off: fitDoubt(model.doubt, strength),
    why: `the density fit of ${speciesOf(name).name} against ${model.doubt.tables}`,
  }));
  const start = { off: WATER_OFF, why: "the equations for water" };
  const { off, why } = doubts.reduce((worst, one) => (one.off.gt(worst.off) ? one : worst), start);
  return { off, why: `± ${off.toDecimalPlaces(2).toString()} % for ${why}` };
}

/**
 * How far the density of a solution may be off by the fits, ± % of it; zero where a salt has no fit.
 *
 * @example densityOff({ species: { NaCl: "10" }, water: "90", inert: "0" }).toString() // => "0.1"
 */
export function densityOff(composition: Composition): Decimal {
  const salts = dissolvedIn(composition);
  return salts.length === 0 ? dec(0) : widestDoubt(salts).off;
}

function notesOn(salts: readonly Dissolved[], t: Decimal, composition: Composition): readonly Note[] {
  const total = fractionOf(salts);
  const notes: Note[] = [];
  for (const { name, model } of salts) {
    if (model.thin !== undefined && t.lt(model.thin.below)) {
      notes.push(note("density.carried-on", [], { why: model.thin.text }));
    }
    if (reach(total, model).gt(ONE)) {
      const facts = { total: fixedText(total.times(HUNDRED), 1), strongest: model.strongest };
      notes.push(note("density.mixed-beyond", [], { ...facts, salt: speciesOf(name).name }));
    }
  }
  if (!dec(composition.inert).isZero()) {
    notes.push(note("density.inert", [], { inert: fixedText(composition.inert, 2) }));
  }
  return notes;
}
