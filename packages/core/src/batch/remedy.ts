import { type Composition, mixture, waterOnly } from "../chemistry/composition.ts";
import { staysClear } from "../chemistry/solubility.ts";
import { type Figure, found, given, worked } from "../figure/figure.ts";
import { definition, fromSpec, massBalance } from "../figure/source.ts";
import { ceilToDivision, type Decimal, dec, decimalText, HUNDRED, roundToDivision } from "../number/decimal.ts";
import { roundKeepingTotal } from "../number/rounding.ts";
import type { WeighedLine } from "./weighing.ts";

/** How to weigh what is too little for the scale. Masses in g. */
export type Remedy =
  | StockRemedy
  | {
      readonly kind: "finer scale";
      readonly weighed: WeighedLine;
      /** Division that would do. */
      readonly division: Figure;
      readonly figures: readonly Figure[];
    };

/** A stock in water, or a premix with flour, of which a load takes an amount that the scale can show. */
export interface StockRemedy {
  readonly kind: "stock solution" | "premix";
  readonly weighed: WeighedLine;
  /** What it is thinned with, and the line whose amount in the load falls by that much. */
  readonly carrier: WeighedLine;
  /** % by mass of the ingredient. */
  readonly strength: Figure;
  /** To make it once. */
  readonly ingredient: Figure;
  readonly thinner: Figure;
  /** Of it in a load. */
  readonly perLoad: Figure;
  /** How many loads it lasts. */
  readonly lasts: Figure;
  readonly figures: readonly Figure[];
}

/** Round strengths, strongest first, % by mass. */
const stockStrengths = ["5", "4", "3", "2.5", "2", "1.5", "1", "0.5", "0.25", "0.2", "0.1"];
/** Moistest thing that may be mixed into flour and kept, %: flours themselves may hold up to 15.5 %. */
const moistestPremix = 16;
const premixStrengths = ["25", "20", "10", "5", "2.5", "2", "1", "0.5", "0.2", "0.1"];

/** A stock is kept in a fridge, °C, and has to stay clear there. */
const fridge = "4";

/**
 * Finds a way to weigh an ingredient of which a load takes too little for its scale.
 *
 * A soluble salt becomes a stock solution, anything dry a premix with the first flour, at the greatest strength at which
 * both the making and the dosing stay within the tolerance. Where a load has too little water or flour for that, or
 * the ingredient is moist or only for dusting, the answer is the scale that would do.
 *
 * @param water - the water that stocks may take the place of
 * @param flour - the flour that premixes may take the place of
 * @param tolerance - most that rounding may be off, %
 */
export function findRemedy(
  weighed: WeighedLine,
  water: Carrier,
  flour: Carrier,
  count: Figure,
  tolerance: Decimal,
): Remedy {
  const { role, material } = weighed.line;
  const { composition } = material;
  const soluble = composition !== undefined;
  const moist = !soluble && dec(material.moisture).gt(moistestPremix);
  if (moist || role === "dusting") return finerScale(weighed, tolerance);
  const carrier = soluble ? water : flour;
  const division = dec(weighed.division);
  const least = division.div(2).times(HUNDRED).div(tolerance);
  const need = dec(weighed.exact.value);
  const strength = (soluble ? stockStrengths : premixStrengths).map(dec).find((percent) => {
    const dose = need.times(HUNDRED).div(percent);
    const fits = dose.gte(least) && dose.minus(need).lte(carrier.free);
    return fits && (composition === undefined || keptClear(composition, percent) !== undefined);
  });
  const choice = { least, need, division, count, tolerance };
  const made = strength && makeStock(weighed, carrier.weighed, soluble, { ...choice, strength });
  return made && broughtBy(made).lte(carrier.free) ? made : finerScale(weighed, tolerance);
}

/** What a product takes of the limits of solubility as a stock in the fridge; nothing where crystals may grow or no table tells. */
function keptClear(composition: Composition, percent: Decimal): Figure | undefined {
  const stock = mixture([
    { composition, mass: percent },
    { composition: waterOnly, mass: HUNDRED.minus(percent) },
  ]);
  const clarity = staysClear(stock, fridge);
  return clarity.ok && clarity.value.verdict === "clear" ? clarity.value.taken : undefined;
}

/** What thins, and how much of it in a load is not yet taken up by other stocks, g. */
export interface Carrier {
  readonly weighed: WeighedLine;
  readonly free: Decimal;
}

/** What a stock brings of its carrier to a load, g. */
export function broughtBy({ perLoad, strength }: StockRemedy): Decimal {
  return dec(perLoad.value).times(HUNDRED.minus(strength.value)).div(HUNDRED);
}

interface Choice {
  readonly strength: Decimal;
  readonly least: Decimal;
  readonly need: Decimal;
  readonly division: Decimal;
  readonly count: Figure;
  readonly tolerance: Decimal;
}

function makeStock(
  weighed: WeighedLine,
  carrier: WeighedLine,
  soluble: boolean,
  choice: Choice,
): StockRemedy | undefined {
  const { strength, least, need, division, count, tolerance } = choice;
  const { id, name } = weighed.line;
  const kind = soluble ? "stock solution" : "premix";
  const places = Math.min(division.decimalPlaces(), 6);
  const naming = (what: string, label: string) => ({ id: `${id}.stock-${what}`, label, unit: "g", places });
  const { composition } = weighed.line.material;
  const limits = composition === undefined ? undefined : keptClear(composition, strength);
  const wanted = need.times(count.value).times(HUNDRED.plus(tolerance)).div(HUNDRED);
  const ingredient = found({
    ...naming("ingredient", `${name} for the ${kind}`),
    value: ceilToDivision(wanted.gt(least) ? wanted : least, division),
    by: `enough for the batch with the tolerance on every dose, and at least ${decimalText(least)} g, so that rounding to ${decimalText(division)} g stays within the tolerance`,
    sources: [definition],
  });
  const thinner = found({
    ...naming("thinner", `${carrier.line.name} for the ${kind}`),
    value: ceilToDivision(dec(ingredient.value).times(HUNDRED.minus(strength)).div(strength), division),
    by: `makes it ${decimalText(strength)} % by mass, or a little less, so that a dose is not smaller than it has to be`,
    sources: [massBalance, ...(limits?.sources ?? [])],
  });
  const exactStrength = worked({
    id: `${id}.stock-strength`,
    label: `strength of the ${kind}`,
    unit: "% by mass",
    places: 3,
    formula: "100 * ingredient / (ingredient + thinner)",
    from: { ingredient, thinner },
    sources: [massBalance],
  });
  const dose = need.times(HUNDRED).div(exactStrength.value);
  const perLoad = found({
    ...naming("dose", `${kind} of ${name} in a load`),
    value: roundToDivision(dose, division),
    by: `${decimalText(need.toSignificantDigits(6))} g × 100 ÷ ${decimalText(dec(exactStrength.value).toSignificantDigits(6))}, rounded to ${decimalText(division)} g`,
    sources: [massBalance],
  });
  if (dec(perLoad.value).isZero()) return undefined;
  const lasts = worked({
    id: `${id}.stock-lasts`,
    label: `loads that the ${kind} lasts`,
    unit: "",
    places: 0,
    formula: "floor((ingredient + thinner) / dose)",
    from: { ingredient, thinner, dose: perLoad },
    sources: [massBalance],
  });
  const figures = [exactStrength, ingredient, thinner, perLoad, lasts];
  return { kind, weighed, carrier, strength: exactStrength, ingredient, thinner, perLoad, lasts, figures };
}

function finerScale(weighed: WeighedLine, tolerance: Decimal): Remedy {
  const limit = given({
    id: "weighing.tolerance",
    label: "weighing tolerance",
    unit: "%",
    places: 1,
    value: tolerance,
    by: "spec, or 1 % unless stated",
    sources: [fromSpec],
  });
  const division = worked({
    id: `${weighed.line.id}.finer-division`,
    label: `division that weighs ${weighed.line.name} within the tolerance`,
    unit: "g",
    places: 4,
    formula: "2 * mass * tolerance / 100",
    from: { mass: weighed.exact, tolerance: limit },
    sources: [definition],
  });
  return { kind: "finer scale", weighed, division, figures: [limit, division] };
}

/** One weight of a load in which stocks and premixes stand for what is too little to weigh. */
export interface ReplacedWeight {
  readonly name: string;
  /** g */
  readonly mass: Figure;
  readonly division: string;
  readonly unit: string;
}

/**
 * The weights of a load with the stocks and premixes in: each takes the place of its ingredient, and what it brings of
 * water or flour is taken off that weight. What is left to weigh is rounded to the scale, its total kept.
 *
 * @returns nothing where no stock is used, or where together they bring more than the load takes
 */
export function weightsWithStocks(
  lines: readonly WeighedLine[],
  remedies: readonly Remedy[],
): readonly ReplacedWeight[] | undefined {
  const stocks = remedies.filter((remedy): remedy is StockRemedy => remedy.kind !== "finer scale");
  const inDough = stocks.filter(({ weighed }) => lines.some(({ line }) => line.id === weighed.line.id));
  if (inDough.length === 0) return undefined;
  const kept = lines.map((weighed): Kept => {
    const own = inDough.find((stock) => stock.weighed.line.id === weighed.line.id);
    if (own !== undefined) return { weighed, stock: own };
    const brought = inDough.filter(({ carrier }) => carrier.line.id === weighed.line.id);
    return { weighed, exact: brought.length === 0 ? weighed.exact : lessBrought(weighed, brought) };
  });
  const rest = kept.flatMap((one) => ("exact" in one ? [one] : []));
  const rounded = roundKeepingTotal(
    rest.map(({ weighed, exact }) => ({ value: dec(exact.value), division: dec(weighed.division) })),
  );
  const weights = kept.map((one): ReplacedWeight => {
    const { line, division, unit } = one.weighed;
    if ("stock" in one) return { name: `${one.stock.kind} of ${line.name}`, mass: one.stock.perLoad, division, unit };
    const value = rounded[rest.indexOf(one)] ?? dec(one.exact.value);
    return { name: line.name, mass: leftToWeigh(one.weighed, one.exact, value), division, unit };
  });
  return weights.some(({ mass }) => dec(mass.value).isNegative()) ? undefined : weights;
}

/** A line of a load with stocks: the stock that stands for it, or what exactly is left to weigh of it. */
type Kept =
  | { readonly weighed: WeighedLine; readonly stock: StockRemedy }
  | { readonly weighed: WeighedLine; readonly exact: Figure };

function lessBrought(weighed: WeighedLine, stocks: readonly StockRemedy[]): Figure {
  const { line, exact } = weighed;
  return worked({
    id: `${line.id}.left`,
    label: `${line.name} left to weigh`,
    unit: "g",
    places: 2,
    formula: "exact - sum(dose * (100 - strength) / 100)",
    from: {
      exact,
      dose: stocks.map(({ perLoad }) => perLoad),
      strength: stocks.map(({ strength }) => strength),
    },
    sources: [massBalance],
  });
}

/** What is left of a line, to the division of its scale; the plain weight of the load where that is the same. */
function leftToWeigh({ line, load, division }: WeighedLine, exact: Figure, value: Decimal): Figure {
  if (dec(load.value).eq(value)) return load;
  return roundedTo(`${line.id}.with-stocks`, `${line.name} in a load with stocks`, exact, value, division);
}

function roundedTo(id: string, label: string, exact: Figure, value: Decimal, division: string): Figure {
  const numbers = exact.working.kind === "formula" ? exact.working.numbers : exact.value;
  return found({
    id,
    label,
    unit: "g",
    places: Math.min(dec(division).decimalPlaces(), 6),
    value,
    by: `${numbers} = ${decimalText(dec(exact.value).toSignificantDigits(7))} g, rounded to ${division} g, the total of the load kept`,
    sources: exact.sources,
  });
}
