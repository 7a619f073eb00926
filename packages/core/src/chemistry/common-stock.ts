import { type Figure, found, worked } from "../figure/figure.ts";
import { answer, type Outcome, problem, refuse } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import {
  ceilToDivision,
  type Decimal,
  type DecimalInput,
  type DecimalText,
  dec,
  decimalText,
  HUNDRED,
  roundToDivision,
  sum,
  ZERO,
} from "../number/decimal.ts";
import type { Weighed } from "./carried.ts";
import { type Composition, mixture, waterOnly } from "./composition.ts";
import { grams } from "./named.ts";
import { type Solubility, staysClear } from "./solubility.ts";

/** A scale that a stock is made and weighed with. Masses in g. */
export interface StockScale {
  readonly division: DecimalInput;
  /** Most it weighs; without an end unless stated. */
  readonly capacity?: DecimalInput;
}

/** What a stock of salts is to serve for. Masses in g. */
export interface CommonStockWish {
  /** The salts that one load takes. */
  readonly products: readonly Weighed[];
  /** The scales at hand; each mass goes on the finest that takes it. */
  readonly scales: readonly StockScale[];
  /** Most that weighing may be off, %. */
  readonly tolerance: DecimalInput;
  /** Loads to come, for which it has to be enough. */
  readonly loads: DecimalInput;
  /** °C where it is kept. */
  readonly storage: DecimalInput;
  /** Most water that a load can take with it; without an end unless stated. */
  readonly water?: DecimalInput;
  /** The figures of the products, the loads and the water, where there are any: what is found follows from them. */
  readonly on?: readonly Figure[];
}

/** One stock solution of all salts of a load. Masses in g, whole divisions of the scales but for what a load gets. */
export interface CommonStock {
  /** Stock for one load. */
  readonly perLoad: Figure;
  /** Whole loads that it is enough for. */
  readonly lasts: Figure;
  /** To make it: each product in the order of the wish, and the water. */
  readonly amounts: readonly Figure[];
  readonly water: Figure;
  readonly mass: Figure;
  /** Products as weighed, % of the stock. */
  readonly strength: Figure;
  /** What a load gets with its dose: each product in the order of the wish, and the water. */
  readonly delivered: readonly Figure[];
  readonly brought: Figure;
  readonly composition: Composition;
  readonly kept: Solubility;
}

/** Share of its solubility limit that a salt may take up where it is kept, %, as far as the limit of each alone is known. */
const STAYS = "80";
/** A stock with more water than this, to one part of salts, is no way to weigh. */
const THINNEST = dec("1000");
/** A dose is rounded up to tens or fives of divisions where that adds at most so many %. */
const ROUND_ADDS = dec("10");
const ROUND_STEPS = ["100", "50", "20", "10", "5", "2", "1"];
/** How many more loads are tried to bring every salt within the tolerance once all are rounded. */
const MORE_LOADS = 60;

/**
 * The smallest stock solution of all salts of a load that weighs within the tolerance: half a division of its scale is
 * within it for the dose and for each salt that goes into the stock, and what a load gets is as well.
 *
 * It is as strong as that allows and as stays clear where it is kept, lasts at least for the loads to come, and brings
 * no more water than a load can take.
 *
 * Problems: `stock.wish`, `stock.not-clear`, `stock.too-much-water`, `stock.scales`, and those of `staysClear`.
 * Source: mass balance; solubility as in `staysClear`.
 * @example shown(commonStock({ products: [{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: 2 }], scales: [{ division: 1 }], tolerance: 1, loads: 1, storage: 4 }).value.perLoad) // => "50 g"
 */
export function commonStock(wish: CommonStockWish): Outcome<CommonStock> {
  const { products, scales, tolerance, loads } = wish;
  const wanted = [...products.map(({ mass }) => mass), ...scales.map(({ division }) => division), tolerance, loads];
  if (products.length === 0 || scales.length === 0 || wanted.some((value) => dec(value).lte(0))) {
    return refuse(problem("stock.wish", [], {}));
  }
  const salts = sum(products.map(({ mass }) => dec(mass)));
  const clear = leastDose(wish, salts);
  if (!clear.ok) return clear;
  const dose = roundDose(wish, clear.value);
  const room = wish.water === undefined ? undefined : salts.plus(wish.water);
  if (dose === undefined || room?.lt(dose)) {
    const inDigits = (one: Decimal): DecimalText => decimalText(one.toSignificantDigits(4));
    const facts = { least: inDigits(dose ?? clear.value), ...(room !== undefined && { room: inDigits(room) }) };
    return refuse(problem("stock.too-much-water", [], facts));
  }
  for (const { division } of finestFirst(scales)) {
    const least = leastLoads(wish, dec(division));
    for (let more = 0; more < MORE_LOADS; more += 1) {
      const stock = made(wish, dose, least.plus(more));
      if (stock !== undefined) return stock;
    }
  }
  return refuse(problem("stock.scales", [], {}));
}

/** Loads whose salts the division of a scale weighs within the tolerance, at least those to come. */
function leastLoads({ products, tolerance, loads }: CommonStockWish, division: Decimal): Decimal {
  const least = leastWeight(division, tolerance);
  const needed = products.map(({ mass }) => least.div(mass));
  return needed.reduce((most, one) => (one.gt(most) ? one : most), dec(loads)).ceil();
}

/** Least mass of which half a division is within the tolerance. */
function leastWeight(division: Decimal, tolerance: DecimalInput): Decimal {
  return division.times(50).div(tolerance);
}

function finestFirst(scales: readonly StockScale[]): readonly StockScale[] {
  return [...scales].sort((a, b) => dec(a.division).comparedTo(b.division));
}

/** Division of the finest scale that takes a mass. */
function scaleFor(mass: Decimal, scales: readonly StockScale[]): Decimal | undefined {
  const fitting = finestFirst(scales).find(({ capacity }) => capacity === undefined || mass.lte(capacity));
  return fitting && dec(fitting.division);
}

/**
 * The smallest dose that stays clear where the stock is kept, to half a per cent: what salts take of their limits does not
 * go with their mass where the activities of ions count. Each salt may be more than meant by the tolerance.
 */
function leastDose({ products, storage, tolerance }: CommonStockWish, salts: Decimal): Outcome<Decimal> {
  const more = HUNDRED.plus(tolerance).div(HUNDRED);
  const most = products.map(({ composition, mass }) => ({ composition, mass: more.times(mass) }));
  const clarity = (water: Decimal) => staysClear(mixture([...most, { composition: waterOnly, mass: water }]), storage);
  const isClear = (water: Decimal): boolean => {
    const outcome = clarity(water);
    if (!outcome.ok || outcome.value.verdict !== "clear") return false;
    return outcome.notes.some(({ code }) => code === "solubility.by-ions") || dec(outcome.value.taken.value).lte(STAYS);
  };
  let [low, high] = [ZERO, salts];
  while (!isClear(high)) {
    if (high.gt(salts.times(THINNEST))) {
      const outcome = clarity(high);
      return outcome.ok ? refuse(problem("stock.not-clear", [], { verdict: outcome.value.verdict })) : outcome;
    }
    [low, high] = [high, high.times(2)];
  }
  while (high.minus(low).times(200).gt(salts.plus(low))) {
    const middle = low.plus(high).div(2);
    if (isClear(middle)) high = middle;
    else low = middle;
  }
  return answer(salts.plus(high));
}

/** A dose that the scale tells within the tolerance, rounded up to a round number where that adds little. */
function roundDose({ scales, tolerance, water, products }: CommonStockWish, clear: Decimal): Decimal | undefined {
  const room = water === undefined ? undefined : sum(products.map(({ mass }) => dec(mass))).plus(water);
  for (const { division, capacity } of finestFirst(scales)) {
    const least = leastWeight(dec(division), tolerance);
    const exactly = least.gt(clear) ? least : clear;
    const most = exactly.times(HUNDRED.plus(ROUND_ADDS)).div(HUNDRED);
    const tried = ROUND_STEPS.map((steps) => ceilToDivision(exactly, dec(division).times(steps)));
    const dose = tried.find((one) => one.lte(most) && room?.lt(one) !== true) ?? ceilToDivision(exactly, dec(division));
    if (capacity === undefined || dose.lte(capacity)) return dose;
  }
  return undefined;
}

/** A stock for so many loads; nothing where a salt of it would be off by more than the tolerance, or its water too much. */
function made(wish: CommonStockWish, dose: Decimal, loads: Decimal): Outcome<CommonStock> | undefined {
  const { products, scales, tolerance } = wish;
  const weighed = products.map(({ mass }) => {
    const wanted = loads.times(mass);
    const division = scaleFor(wanted, scales);
    return division === undefined ? undefined : { division, mass: roundToDivision(wanted, division) };
  });
  const salts = sum(weighed.map((one) => one?.mass ?? dec(0)));
  const thinned = loads.times(dose).minus(salts);
  const coarsest = scaleFor(thinned, scales) ?? dec(scales.at(-1)?.division ?? 1);
  const poured = ceilToDivision(thinned, coarsest);
  const all = salts.plus(poured);
  const fits = weighed.every((one, index) => {
    const need = dec(products[index]?.mass ?? 0);
    if (one === undefined || one.mass.lt(leastWeight(one.division, tolerance))) return false;
    const off = one.mass.times(dose).div(all).minus(need).abs();
    return off.times(HUNDRED).lte(need.times(tolerance));
  });
  const brings = poured.times(dose).div(all);
  if (!fits || poured.isNegative() || (wish.water !== undefined && brings.gt(wish.water))) return undefined;
  const masses = weighed.map((one) => one?.mass ?? ZERO);
  return described(wish, dose, masses, poured);
}

function described(
  { products, storage, on = [] }: CommonStockWish,
  dose: Decimal,
  masses: readonly Decimal[],
  poured: Decimal,
): Outcome<CommonStock> {
  const naming = (what: string, label: string, value: Decimal) => {
    const places = Math.min(value.decimalPlaces(), 4);
    return { id: `common-stock.${what}`, label, unit: "g", places };
  };
  const weighed = (what: string, label: string, value: Decimal, by: string): Figure =>
    found(naming(what, label, value), value, by, on, massBalance);
  const smallest = "the smallest stock that weighs within the tolerance, to the scale";
  const amounts = products.map(({ name }, at) => weighed(`amount.${at + 1}`, name, masses[at] ?? ZERO, smallest));
  const water = weighed("water", "water", poured, "thins it so that the scale tells the dose within the tolerance");
  const least = "the least that weighs within the tolerance and stays clear, in a round number";
  const perLoad = weighed("per-load", "stock for a load", dose, least);
  const inAll = naming("mass", "stock to make", sum([...masses, poured]));
  const mass = worked(inAll, "sum(amounts) + water", { amounts, water }, massBalance);
  const lasting = { id: "common-stock.lasts", label: "loads that it lasts", unit: "", places: 0 };
  const lasts = worked(lasting, "floor(mass / load)", { mass, load: perLoad }, massBalance);
  const salts = { id: "common-stock.strength", label: "salts as weighed", unit: "% by mass", places: 2 };
  const strength = worked(salts, "100 * sum(amounts) / mass", { amounts, mass }, massBalance);
  const inLoad = (what: string, label: string, amount: Figure): Figure => {
    const from = { load: perLoad, amount, mass };
    return worked(grams(`common-stock.${what}`, label), "load * amount / mass", from, massBalance);
  };
  const delivered = amounts.map((amount, index) =>
    inLoad(`delivered.${index + 1}`, `${amount.label} in a load, with the stock`, amount),
  );
  const composition = mixture([
    ...products.map((product, index) => ({ ...product, mass: masses[index] ?? dec(0) })),
    { composition: waterOnly, mass: poured },
  ]);
  const kept = staysClear(composition, storage, [...amounts, water]);
  if (!kept.ok) return kept;
  const brought = inLoad("brought", "water that comes with it", water);
  const stock = { perLoad, lasts, amounts, water, mass, strength, delivered, brought, composition, kept: kept.value };
  return answer(stock, kept.notes);
}
