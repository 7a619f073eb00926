import { type Figure, found, given, worked } from "../figure/figure.ts";
import { definition, fromSpec, massBalance, type Source } from "../figure/source.ts";
import { ceilToDivision, type Decimal, dec, decimalText, HUNDRED, roundToDivision } from "../number/decimal.ts";
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
  /** Of it in a load, and what is left to weigh of the carrier. */
  readonly perLoad: Figure;
  readonly carrierLeft: Figure;
  /** How many loads it lasts. */
  readonly lasts: Figure;
  readonly figures: readonly Figure[];
}

/** Round strengths, strongest first. The strongest stays dissolved in a fridge: the least soluble carbonate at 0 °C is. */
const stockStrengths = ["5", "4", "3", "2.5", "2", "1.5", "1", "0.5", "0.25", "0.2", "0.1"];
const premixStrengths = ["25", "20", "10", "5", "2.5", "2", "1", "0.5", "0.2", "0.1"];

const coldSolubility: Source = {
  cite: "Comey and Hahn 1921 and Seidell, as tabulated by a substance database: sodium carbonate 7.0 and sodium bicarbonate 6.9 g per 100 g water at 0 °C",
  standing: "copy",
};

/**
 * Finds a way to weigh an ingredient of which a load takes too little for its scale.
 *
 * A soluble salt becomes a stock solution, anything else a premix with the first flour, at the greatest strength at which
 * both the making and the dosing stay within the tolerance. Where a load has too little water or flour for that, the
 * answer is the scale that would do.
 *
 * @param tolerance - most that rounding may be off, %
 */
export function findRemedy(
  weighed: WeighedLine,
  water: WeighedLine,
  flour: WeighedLine,
  count: Figure,
  tolerance: Decimal,
): Remedy {
  const soluble = weighed.line.material.composition !== undefined;
  const carrier = soluble ? water : flour;
  const division = dec(weighed.division);
  const least = division.div(2).times(HUNDRED).div(tolerance);
  const need = dec(weighed.exact.value);
  const strength = (soluble ? stockStrengths : premixStrengths).map(dec).find((percent) => {
    const dose = need.times(HUNDRED).div(percent);
    return dose.gte(least) && dose.minus(need).lte(dec(carrier.load.value));
  });
  const made = strength && makeStock(weighed, carrier, soluble, { strength, least, need, division, count });
  return made ?? finerScale(weighed, tolerance);
}

interface Choice {
  readonly strength: Decimal;
  readonly least: Decimal;
  readonly need: Decimal;
  readonly division: Decimal;
  readonly count: Figure;
}

function makeStock(weighed: WeighedLine, carrier: WeighedLine, soluble: boolean, choice: Choice): StockRemedy | undefined {
  const { strength, least, need, division, count } = choice;
  const { id, name } = weighed.line;
  const kind = soluble ? "stock solution" : "premix";
  const places = Math.min(division.decimalPlaces(), 6);
  const naming = (what: string, label: string) => ({ id: `${id}.stock-${what}`, label, unit: "g", places });
  const wanted = need.times(count.value);
  const ingredient = found({
    ...naming("ingredient", `${name} for the ${kind}`),
    value: ceilToDivision(wanted.gt(least) ? wanted : least, division),
    by: `enough for the batch and at least ${decimalText(least)} g, so that rounding to ${decimalText(division)} g stays within the tolerance`,
    sources: [definition],
  });
  const thinner = found({
    ...naming("thinner", `${carrier.line.name} for the ${kind}`),
    value: roundToDivision(dec(ingredient.value).times(HUNDRED.minus(strength)).div(strength), division),
    by: `makes it ${decimalText(strength)} % by mass`,
    sources: soluble ? [massBalance, coldSolubility] : [massBalance],
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
  const brings = dec(perLoad.value).times(HUNDRED.minus(exactStrength.value)).div(HUNDRED);
  const left = roundToDivision(dec(carrier.load.value).minus(brings), dec(carrier.division));
  if (left.isNegative() || dec(perLoad.value).isZero()) return undefined;
  const carrierLeft = found({
    ...naming("carrier-left", `${carrier.line.name} left to weigh`),
    value: left,
    by: `${carrier.load.value} g − ${decimalText(brings.toSignificantDigits(6))} g in the ${kind}`,
    sources: [massBalance],
  });
  const lasts = worked({
    id: `${id}.stock-lasts`,
    label: `loads that the ${kind} lasts`,
    unit: "",
    places: 0,
    formula: "floor((ingredient + thinner) / dose)",
    from: { ingredient, thinner, dose: perLoad },
    sources: [massBalance],
  });
  const figures = [exactStrength, ingredient, thinner, perLoad, carrierLeft, lasts];
  return { kind, weighed, carrier, strength: exactStrength, ingredient, thinner, perLoad, carrierLeft, lasts, figures };
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
  return { kind: "finer scale", weighed, division, figures: [division] };
}
