import { measure } from "../figure/in-system.ts";
import { answer, type Note, note, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import { type Decimal, type DecimalText, dec, decimalText, fixedText, HUNDRED, ONE, sum } from "../number/decimal.ts";
import { type BaumeName, baumeFromDensity, baumeScales, densityFromBaume } from "./baume.ts";
import { rootBetween } from "./bracket.ts";
import {
  anhydrousShare,
  type Composition,
  isChloride,
  mixture,
  reachText,
  sharesOf,
  solutionOf,
  speciesOf,
  waterOnly,
} from "./composition.ts";
import { densityOf, densityOff, dissolvedIn, solutionDensity } from "./density.ts";

/** A strength as somebody states it. Volumes are meant at 20 °C where no temperature is given, degrees Baumé at the hydrometer's own. */
export type StatedStrength =
  | {
      readonly measure: PlainMeasure;
      readonly value: DecimalText;
      /** °C */
      readonly temperature?: DecimalText;
    }
  | {
      readonly measure: "degrees-baume";
      readonly value: DecimalText;
      readonly scale: BaumeName;
      /** °C of the liquid when read */
      readonly temperature?: DecimalText;
    };

/**
 * The measures: % w/w, % w/v, g/L, mol/L, mol/kg of water, density in g/mL, anhydrous salts to 100 parts of water,
 * and product as weighed to 100 parts of water.
 */
export type PlainMeasure =
  | "mass-percent"
  | "mass-volume-percent"
  | "grams-per-litre"
  | "mol-per-litre"
  | "mol-per-kilogram"
  | "density"
  | "parts-to-water"
  | "parts-as-weighed";

/** Volumes are meant at this temperature, °C, unless another is named: the usual one of laboratory tables. */
const USUAL_TEMPERATURE = "20";

/**
 * The solution that a product and water make at a stated strength.
 *
 * Where the strength rests on a density, notes give how far that may be off, and the temperature at which it is taken, of
 * degrees Baumé as read, where none is stated.
 *
 * @param product - dry, crystalline or itself a solution; its salts give the ratio
 * Problems: `strength.value`, `strength.degrees`, `strength.no-salt`, `solution.too-strong`, `strength.beyond-fit`, and those of `solutionDensity`.
 * @example solutionAt({ species: { Na2CO3: "100" }, water: "0", inert: "0" }, { measure: "parts-to-water", value: "25" }).value.water // => "80"
 */
export function solutionAt(product: Composition, stated: StatedStrength): Outcome<Composition> {
  const solution = solutionFor(product, stated, 0);
  if (!solution.ok) return solution;
  return answer(solution.value, [...readAt(stated), ...fitNote(product, stated, solution.value), ...solution.notes]);
}

/** A strength that counts a product as weighed, crystal water and all, told of its anhydrous salts; that of others as it is. */
export function countedAsWeighed(stated: StatedStrength, product: Composition): StatedStrength {
  if (!weighing.includes(stated.measure)) return stated;
  return { ...stated, value: decimalText(anhydrousShare(product).times(stated.value).div(HUNDRED)) };
}

type Measures = readonly StatedStrength["measure"][];

/** Measures that count the mass of the salts. */
const weighing: Measures = ["mass-percent", "mass-volume-percent", "grams-per-litre"];

/** Whether a strength counts the mass of salts, so that crystal water makes a difference. */
export function countsMass({ measure }: StatedStrength): boolean {
  return weighing.includes(measure) || measure === "parts-to-water" || measure === "parts-as-weighed";
}

/** Least and greatest strength, % by mass, that the doubt of the density fits leaves; undefined where no density is needed. */
export function fitRange(
  product: Composition,
  stated: StatedStrength,
): { readonly low: Decimal; readonly high: Decimal } | undefined {
  if (!restsOnDensity(stated)) return undefined;
  return { low: edgeOf(product, stated, "low"), high: edgeOf(product, stated, "high") };
}

/**
 * The least or the greatest strength of a solution, % by mass, by the doubt of the density fits: water, and the strongest
 * that the fits cover, at the most.
 */
export function edgeOf(product: Composition, stated: StatedStrength, edge: "low" | "high"): Decimal {
  const outcome = solutionFor(product, stated, edge === "low" ? 1 : -1);
  if (outcome.ok) return anhydrousShare(outcome.value);
  return edge === "low" ? dec(0) : strongest(product);
}

const withoutDensity: Measures = ["mass-percent", "parts-as-weighed", "parts-to-water", "mol-per-kilogram"];

function restsOnDensity({ measure }: StatedStrength): boolean {
  return !withoutDensity.includes(measure);
}

/** At which temperature a strength is taken, where that matters and is not said beside it. */
function readAt(stated: StatedStrength): readonly Note[] {
  const { temperature } = stated;
  if (stated.measure !== "degrees-baume") {
    if (temperature !== undefined || !restsOnDensity(stated)) return [];
    return [note("strength.read-at", [], { temperature: measure(USUAL_TEMPERATURE, "°C"), stated: false })];
  }
  const { value, scale } = stated;
  const at = measure(dec(temperature ?? baumeScales[scale].sample).toDecimalPlaces(1), "°C");
  return [note("strength.read-at", [], { degrees: value, temperature: at, stated: temperature !== undefined })];
}

function fitNote(product: Composition, stated: StatedStrength, solution: Composition): readonly Note[] {
  const range = fitRange(product, stated);
  const density = solutionDensity(solution, stated.temperature ?? USUAL_TEMPERATURE);
  if (range === undefined || !density.ok || density.value.range === undefined) return [];
  const share = fixedText(anhydrousShare(solution), 2);
  const [low, high] = [fixedText(range.low, 2), fixedText(range.high, 2)];
  return [note("strength.fit", [], { share, low, high, why: density.value.range.why })];
}

/** @param tilt - 1 for a true density as far above the fits as they may be off, -1 for as far below */
function solutionFor(product: Composition, stated: StatedStrength, tilt: -1 | 0 | 1): Outcome<Composition> {
  const value = dec(stated.value);
  if (anhydrousShare(product).isZero()) return refuse(noSalt);
  if (value.lte(0)) return refuse(problem("strength.value", [], { strength: value.toString() }));
  const temperature = dec(stated.temperature ?? USUAL_TEMPERATURE);
  const byVolume = (unit: string, measure: Measure): Outcome<Composition> =>
    byDensity(product, value, temperature, measure, tilt, { value, unit });
  const byWater = (salts: Decimal, unit: string): Outcome<Composition> => {
    const outcome = withWater(product, salts.div(value));
    if (outcome.ok) return outcome;
    const most = reachText(salts.div(product.water));
    return refuse(problem("solution.too-strong", [], { strength: decimalText(value), most, unit }));
  };
  switch (stated.measure) {
    case "mass-percent":
      return solutionOf(product, value);
    case "parts-as-weighed":
      return solutionOf(product, anhydrousShare(product).times(value).div(value.plus(HUNDRED)));
    case "parts-to-water":
      return byWater(anhydrousShare(product).times(HUNDRED), "parts to 100 parts of water");
    case "mol-per-kilogram":
      return byWater(molesIn(product).times(1000), "mol/kg of water");
    case "density":
      return byVolume("g/mL", (_, density) => density);
    case "mass-volume-percent":
      return byVolume("% w/v", (solution, density) => anhydrousShare(solution).times(density));
    case "grams-per-litre":
      return byVolume("g/L", (solution, density) => anhydrousShare(solution).times(density).times(10));
    case "mol-per-litre":
      return byVolume("mol/L", (solution, density) => molesIn(solution).times(density).times(10));
    case "degrees-baume": {
      const { sample, modulus } = baumeScales[stated.scale];
      if (value.gte(modulus)) return refuse(problem("strength.degrees", [], { degrees: value.toString(), modulus }));
      const read = dec(stated.temperature ?? sample);
      const density = densityFromBaume(value, stated.scale, read);
      const degrees = (found: Decimal): Decimal => baumeFromDensity(found, stated.scale, read);
      return byDensity(product, density, read, (_, found) => found, tilt, { value, unit: "°Bé", degrees });
    }
  }
}

/** What keeps a composition from being a solution of alkaline salts. */
export function notASolution(composition: Composition): Problem | undefined {
  if (anhydrousShare(composition).isZero()) return noSalt;
  if (!dec(composition.water).isZero()) return undefined;
  return problem("strength.no-water", [], {});
}

const noSalt: Problem = problem("strength.no-salt", [], {});

/** Moles of alkaline salts in 100 g. */
function molesIn(composition: Composition): Decimal {
  return sum(
    sharesOf(composition).flatMap(([name, share]) => (isChloride(name) ? [] : [share.div(speciesOf(name).molarMass)])),
  );
}

/** 100 g of product brought to so many grams of water. */
function withWater(product: Composition, water: Decimal): Outcome<Composition> {
  const own = anhydrousShare(product);
  const mass = HUNDRED.plus(water).minus(product.water);
  return solutionOf(product, own.times(HUNDRED).div(mass.gt(0) ? mass : ONE));
}

/** The strongest solution of a product that the fits of density cover, % w/w. */
function strongest(product: Composition): Decimal {
  const own = anhydrousShare(product);
  const used = sum(dissolvedIn(product).map(({ share, model }) => share.div(model.strongest)));
  const limit = own.div(used.plus(dec(product.inert).div(HUNDRED))).toDecimalPlaces(20, 1);
  return limit.lt(own) ? limit : own;
}

type Measure = (solution: Composition, density: Decimal) => Decimal;

function byDensity(
  product: Composition,
  target: Decimal,
  temperature: Decimal,
  measure: Measure,
  tilt: -1 | 0 | 1,
  asked: { readonly value: Decimal; readonly unit: string; readonly degrees?: (density: Decimal) => Decimal },
): Outcome<Composition> {
  const greatest = strongest(product);
  const thinned = (percent: Decimal): Composition => {
    if (percent.isZero()) return waterOnly;
    const own = anhydrousShare(product);
    const water = own.div(percent).minus(1);
    return mixture([
      { composition: product, mass: 1 },
      { composition: waterOnly, mass: water.isNegative() ? 0 : water },
    ]);
  };
  const known = solutionDensity(thinned(greatest), temperature);
  if (!known.ok) return known;
  const height = (percent: Decimal): Decimal => {
    const solution = thinned(percent);
    const off = densityOff(solution).times(tilt).div(HUNDRED).plus(1);
    return measure(solution, densityOf(solution, temperature).times(off));
  };
  const root = rootBetween((percent) => height(percent).minus(target), dec(0), greatest);
  if (root === undefined || root.isZero() || height(root).minus(target).abs().gt("1e-12")) {
    const { value, unit, degrees = (same: Decimal) => same } = asked;
    const lowest = decimalText(degrees(height(dec(0))).toDecimalPlaces(4));
    const most = { highest: reachText(degrees(height(greatest))), strongest: reachText(greatest) };
    return refuse(problem("strength.beyond-fit", [], { measured: decimalText(value), unit, lowest, ...most }));
  }
  return solutionOf(product, root);
}
