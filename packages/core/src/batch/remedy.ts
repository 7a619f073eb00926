import type { Weighed } from "../chemistry/carried.ts";
import { type CommonStock, commonStock } from "../chemistry/common-stock.ts";
import { mixture, waterOnly } from "../chemistry/composition.ts";
import { staysClear } from "../chemistry/solubility.ts";
import { type Figure, found, worked } from "../figure/figure.ts";
import { commonPractice, definition, massBalance } from "../figure/source.ts";
import { writtenWorking } from "../figure/written-working.ts";
import { type Decimal, dec, decimalText, leadingDigit } from "../number/decimal.ts";
import { roundKeepingTotal } from "../number/rounding.ts";
import { findUnit, type ScaleUnit } from "../number/units.ts";
import type { Delivered } from "./as-weighed.ts";
import { chooseScale, type Scales, tooLittle, type WeighedLine } from "./weighing.ts";

/** A scale, as they are sold, that weighs an ingredient within the tolerance. */
export interface FinerScale {
  readonly kind: "finer scale";
  readonly weighed: WeighedLine;
  /** Its division, g. */
  readonly division: Figure;
}

/** One stock solution of all the salts of a load, table salt with them, where one of them is too little for its scale. */
export interface StockRemedy {
  readonly kind: "stock solution";
  /** The salts, in the order of `stock.amounts` and `stock.delivered`. */
  readonly salts: readonly WeighedLine[];
  /** The water that it is made with, and that falls in a load by what it brings. */
  readonly carrier: WeighedLine;
  readonly stock: CommonStock;
  /** What it is made of, each on its scale: the salts, then the water. */
  readonly parts: readonly ScaledMass[];
  /** What of it goes into a load. */
  readonly dose: ScaledMass;
  /** Division of a scale, as they are sold, that weighs the salts dry, g. */
  readonly dry: Figure;
  /** Whether the stock is for many more loads than are to come, so that a finer scale is the shorter way. */
  readonly muchLeft: boolean;
}

/** A mass and the scale that weighs it. */
export interface ScaledMass {
  readonly name: string;
  /** g */
  readonly mass: Figure;
  readonly division: string;
  readonly unit: ScaleUnit;
  readonly scale: string;
}

/** What is too little for its scale, and what to do about it. */
export interface Remedies {
  readonly tooLittle: readonly WeighedLine[];
  readonly stock?: StockRemedy;
  readonly finer: readonly FinerScale[];
}

/** A stock is kept in a fridge, °C, and has to stay clear there. */
export const fridge = "4";
/** A stock that lasts for more than so many times the loads to come is much for a kitchen to keep. */
const MANY_TIMES = 10;
/** Divisions of the scales that are sold, g or oz. */
const sold = ["5", "2", "1", "0.5", "0.1", "0.05", "0.01", "0.005", "0.001"].map(dec);

/**
 * Finds how to weigh what is too little for its scale.
 *
 * The salts of a load, table salt with them, go into one stock solution, if the water of a load takes it and the stock
 * stays clear in a fridge. All else, and salts of which no table tells whether they stay clear, needs a finer scale.
 *
 * @param lines - of one load, dusting with them
 * @param loads - loads to come, for which a stock has to be enough
 * @param tolerance - %, most that weighing may be off
 */
export function findRemedies(
  lines: readonly WeighedLine[],
  scales: Scales,
  loads: Figure,
  tolerance: Figure,
): Remedies {
  const small = lines.filter((weighed) => tooLittle(weighed, dec(tolerance.value)));
  const stock = stockOf(lines, small, scales, loads, tolerance);
  const finer = small
    .filter((weighed) => stock?.salts.includes(weighed) !== true)
    .map((weighed) => finerScale(weighed, tolerance));
  return { tooLittle: small, ...(stock && { stock }), finer };
}

function stockOf(
  lines: readonly WeighedLine[],
  small: readonly WeighedLine[],
  scales: Scales,
  loads: Figure,
  tolerance: Figure,
): StockRemedy | undefined {
  const carrier = lines.find(({ line }) => line.role === "water");
  const needed = small.filter(dissolves);
  if (carrier === undefined || needed.length === 0) return undefined;
  const salts = lines.filter(dissolves);
  const wish = {
    products: salts.map(saltOf),
    scales,
    tolerance: dec(tolerance.value),
    loads: loads.value,
    storage: fridge,
  };
  const on = [...[...salts, carrier].flatMap(({ exact, step }) => [exact, step]), loads, tolerance];
  const outcome = commonStock({ ...wish, water: carrier.exact.value, on });
  if (!outcome.ok) return undefined;
  const stock = outcome.value;
  const scaled = (name: string, mass: Figure): ScaledMass => {
    const { scale } = chooseScale(dec(mass.value), scales);
    return { name, mass, division: decimalText(scale.division), unit: scale.unit, scale: scale.name };
  };
  const dry = needed
    .map((weighed) => finerScale(weighed, tolerance).division)
    .reduce((finest, one) => (dec(one.value).lt(finest.value) ? one : finest));
  const { perLoad, lasts, amounts, water } = stock;
  const parts = [...amounts.map((amount) => scaled(amount.label, amount)), scaled(carrier.line.name, water)];
  const dose = scaled("stock solution of the salts", perLoad);
  const muchLeft = dec(lasts.value).gt(dec(loads.value).times(MANY_TIMES));
  return { kind: "stock solution", salts, carrier, stock, parts, dose, dry, muchLeft };
}

/** The salts of one load that go into a stock, g of each before rounding. */
export function saltsOfLoad({ lines }: { readonly lines: readonly WeighedLine[] }): readonly Weighed[] {
  return lines.filter(dissolves).map(saltOf);
}

function saltOf({ line: { name, material }, exact }: WeighedLine): Weighed {
  return { name, composition: material.composition ?? waterOnly, mass: exact.value };
}

/** Whether a load has something of a salt of which a table tells how much water holds in a fridge. */
function dissolves({ line: { role, material }, exact }: WeighedLine): boolean {
  const { composition } = material;
  if (role === "dusting" || composition === undefined || dec(exact.value).isZero()) return false;
  const thin = mixture([
    { composition, mass: 1 },
    { composition: waterOnly, mass: 99 },
  ]);
  const clarity = staysClear(thin, fridge);
  return clarity.ok && clarity.value.verdict === "clear";
}

function finerScale(weighed: WeighedLine, tolerance: Figure): FinerScale {
  const { id, name } = weighed.line;
  const coarsest = `coarsest division that weighs ${name} within the tolerance`;
  const naming = { id: `${id}.coarsest-division`, label: coarsest, unit: "g", places: 4 };
  const most = worked(naming, "2 * mass * tolerance / 100", { mass: weighed.exact, tolerance }, definition);
  const inUnit = dec(findUnit(weighed.unit)?.factor ?? 1);
  const fine = (division: Decimal): boolean => division.lte(most.value) && division.lt(weighed.division);
  const value =
    sold.map((division) => division.times(inUnit)).find(fine) ??
    leadingDigit(dec(most.value).div(inUnit)).times(inUnit);
  const label = `division of a scale, as they are sold, that weighs ${name} within the tolerance`;
  const finer = { id: `${id}.finer-division`, label, unit: "g", places: Math.min(value.decimalPlaces(), 4) };
  const by = `the coarsest that is sold and at most ${decimalText(dec(most.value).toSignificantDigits(4))} g`;
  const division = found(finer, value, by, [most], commonPractice);
  return { kind: "finer scale", weighed, division };
}

/** One weight of a load in which a stock stands for the salts. */
export interface StockedWeight extends ScaledMass {
  /** The ingredient; left out for the stock. */
  readonly weighed?: WeighedLine;
}

/**
 * The weights of a load with the stock in: it takes the place of its salts, and what it is more than they is taken off
 * the water. What is left to weigh is rounded to the scale so that the load keeps its total.
 */
export function weightsWithStock(lines: readonly WeighedLine[], remedy: StockRemedy): readonly StockedWeight[] {
  const { salts, carrier, dose } = remedy;
  const rest = lines
    .filter((weighed) => !salts.includes(weighed))
    .map((weighed) => ({ weighed, exact: weighed === carrier ? waterLeft(remedy) : weighed.exact }));
  const rounded = roundKeepingTotal(
    rest.map(({ weighed, exact }) => ({ value: dec(exact.value), division: dec(weighed.division) })),
  );
  return rest.flatMap(({ weighed, exact }, index): readonly StockedWeight[] => {
    const { line, division, unit } = weighed;
    const all = rest.map((one) => one.exact);
    const mass = leftToWeigh(weighed, exact, rounded[index] ?? dec(exact.value), all);
    const weight = { name: line.name, mass, division, unit, scale: weighed.scale, weighed };
    return weighed === carrier ? [weight, dose] : [weight];
  });
}

/** Water of a load that is left to pour beside the stock: the load keeps its total. */
function waterLeft({ carrier, salts, stock }: StockRemedy): Figure {
  const naming = { id: `${carrier.line.id}.left`, label: `${carrier.line.name} left to weigh`, unit: "g", places: 2 };
  const from = { water: carrier.exact, salts: salts.map(({ exact }) => exact), stock: stock.perLoad };
  return worked(naming, "water + sum(salts) - stock", from, massBalance);
}

/** What is left of a line, to the division of its scale; the plain weight of the load where that is the same. */
function leftToWeigh(
  { line, load, division, scale }: WeighedLine,
  exact: Figure,
  value: Decimal,
  on: readonly Figure[],
): Figure {
  if (dec(load.value).eq(value)) return load;
  const numbers = writtenWorking(exact)?.numbers ?? exact.value;
  const by = `${numbers} = ${decimalText(dec(exact.value).toSignificantDigits(7))} g, rounded to ${division} g (${scale}), the total of the load kept`;
  const places = Math.min(dec(division).decimalPlaces(), 6);
  const naming = { id: `${line.id}.with-stock`, label: `${line.name} in a load with the stock`, unit: "g", places };
  return found(naming, value, by, on, ...exact.sources);
}

/** What a load really gets of each ingredient, as it is weighed: with the stock where there is one. */
export function deliveredBy(
  lines: readonly WeighedLine[],
  remedy: StockRemedy | undefined,
  weights: readonly StockedWeight[],
): readonly Delivered[] {
  return lines.map((weighed): Delivered => {
    const { line, load } = weighed;
    if (remedy === undefined) return { line, load };
    const inStock = remedy.stock.delivered[remedy.salts.indexOf(weighed)];
    const mass = weights.find((one) => one.weighed === weighed)?.mass ?? load;
    return { line, load: inStock ?? (weighed === remedy.carrier ? allWater(mass, remedy) : mass) };
  });
}

function allWater(poured: Figure, { carrier, stock }: StockRemedy): Figure {
  const { id, name } = carrier.line;
  const naming = { id: `${id}.in-all`, label: `${name} in a load, the stock's with it`, unit: "g", places: 2 };
  return worked(naming, "poured + brought", { poured, brought: stock.brought }, massBalance);
}
