import { exact, type Figure, found, given, worked } from "../figure/figure.ts";
import { answer, inputProblem, type Note, noAnswer, type Outcome, type Problem, refuse } from "../figure/problem.ts";
import { definition, massBalance } from "../figure/source.ts";
import {
  ceilToDivision,
  type Decimal,
  type DecimalInput,
  dec,
  decimalText,
  fixedText,
  floorToDivision,
  HUNDRED,
  ONE,
  roundToDivision,
} from "../number/decimal.ts";
import type { BaumeName } from "./baume.ts";
import type { Weighed } from "./carried.ts";
import { anhydrousShare, type Composition, solutionOf } from "./composition.ts";
import { named } from "./named.ts";
import { completed, type Recipe } from "./recipe.ts";
import { staysClear } from "./solubility.ts";

/** What a stock solution is to serve for. */
export interface StockWish {
  /** The salts, or salt mix, and how many g of it one load takes. */
  readonly perLoad: Weighed;
  /** g that the scale shows as its smallest step */
  readonly division: DecimalInput;
  /** % of the dose that weighing may be off */
  readonly tolerance: DecimalInput;
  readonly loadsPerDay: DecimalInput;
  /** days that the stock is kept */
  readonly keepingDays: DecimalInput;
  /** °C where it is kept */
  readonly storage: DecimalInput;
  /** °C where it is made */
  readonly temperature: DecimalInput;
  readonly scale: BaumeName;
}

export interface Stock {
  /** How to make the stock for the whole keeping time. */
  readonly recipe: Recipe;
  /** g of stock for one load, as the scale shows it */
  readonly perLoad: Figure;
  /** g of water that comes into a load with it */
  readonly water: Figure;
  /** % that weighing may be off, half a division either way */
  readonly error: Figure;
  /** % that weighing the salts dry may be off at most, half a division either way */
  readonly dryError: Figure;
}

/** Strengths are kept to whole tenths of a percent, which a kitchen can make up. */
const STEP = dec("0.1");
/** Share of the solubility limit that a stock may take up. */
const STAYS = dec("0.8");

/**
 * The stock solution that lets small amounts of salts be weighed on the scale at hand.
 *
 * It is as strong as both the scale and the storage temperature allow: one load's worth weighs at least
 * `division / (2 × tolerance)`, and the salts take up at most four fifths of their limit where it is kept.
 *
 * Problems: `stock.wish`, `stock.too-weak`, and those of `staysClear`.
 * @example weighingStock({ perLoad: { name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: 8 }, division: 1, tolerance: 1, loadsPerDay: 4, keepingDays: 5, storage: 20, temperature: 20, scale: "145" }).ok // => true
 */
export function weighingStock(wish: StockWish): Outcome<Stock> {
  const problem = problemWith(wish);
  if (problem !== undefined) return refuse(problem);
  const { perLoad, division, tolerance } = wish;
  const salts = anhydrousShare(perLoad.composition).times(perLoad.mass).div(HUNDRED);
  const least = dec(division).times(50).div(tolerance);
  const byScale = salts.times(HUNDRED).div(least);
  const bySolubility = strongestKept(perLoad.composition, dec(wish.storage));
  if (!bySolubility.ok) return bySolubility;
  const strongest = byScale.lt(bySolubility.value) ? byScale : bySolubility.value;
  const strength = floorToDivision(strongest, STEP);
  if (strength.lte(0)) {
    return refuse(
      noAnswer(
        "stock.too-weak",
        [],
        `a stock of ${fixedText(strongest, 3)} %`,
        "at least 0.1 %",
        "take a finer scale or allow a wider tolerance",
      ),
    );
  }
  const solution = solutionOf(perLoad.composition, strength);
  if (!solution.ok) return solution;
  return answerFor(wish, solution.value, strength);
}

function answerFor(wish: StockWish, composition: Composition, strength: Decimal): Outcome<Stock> {
  const { perLoad, division } = wish;
  const dose = given({
    id: "stock.dose",
    label: `${perLoad.name} for a load`,
    unit: "g",
    places: 2,
    value: perLoad.mass,
    by: "the formula",
    sources: [definition],
  });
  const own = named(`salts in ${perLoad.name}`, "% w/w", anhydrousShare(perLoad.composition), "the composition");
  const kept = named("strength of the stock", "% w/w", strength, "scale and storage");
  const exactly = worked({
    id: "stock.exact",
    label: "stock for a load, unrounded",
    unit: "g",
    places: 3,
    formula: "dose * own / strength",
    from: { dose, own, strength: kept },
    sources: [massBalance],
  });
  const shown = found({
    id: "stock.per-load",
    label: "stock for a load",
    unit: "g",
    places: dec(division).decimalPlaces(),
    value: roundToDivision(exact(exactly), dec(division)),
    by: `rounded to the division of the scale, ${dec(division).toString()} g`,
    sources: [massBalance],
  });
  const water = worked({
    id: "stock.water",
    label: "water that comes with it",
    unit: "g",
    places: 2,
    formula: "load * water / 100",
    from: { load: shown, water: named("water in the stock", "%", composition.water, "the composition") },
    sources: [massBalance],
  });
  const error = (id: string, label: string, mass: Figure): Figure =>
    worked({
      id,
      label,
      unit: "%",
      places: 2,
      formula: "100 * division / 2 / mass",
      from: { division: named("division of the scale", "g", division, "the scale"), mass },
      sources: [definition],
    });
  const amount = worked({
    id: "solutions.amount.0",
    label: perLoad.name,
    unit: "g",
    places: 2,
    formula: "dose * loads * days",
    from: {
      dose,
      loads: named("loads a day", "", wish.loadsPerDay, "the question"),
      days: named("days kept", "", wish.keepingDays, "the question"),
    },
    sources: [massBalance],
  });
  const mass = worked({
    id: "solutions.mass",
    label: "stock to make",
    unit: "g",
    places: 1,
    formula: "amount * own / strength",
    from: { amount, own, strength: kept },
    sources: [massBalance],
  });
  const added = worked({
    id: "solutions.water",
    label: "water",
    unit: "g",
    places: 1,
    formula: "mass - amount",
    from: { mass, amount },
    sources: [massBalance],
  });
  const recipe = completed({ amounts: [amount], water: added, mass, composition }, wish);
  if (!recipe.ok) return recipe;
  const dryError = error("stock.dry-error", "off when weighed dry", dose);
  return answer(
    {
      recipe: recipe.value,
      perLoad: shown,
      water,
      error: error("stock.error", "off when weighed as stock", exactly),
      dryError,
    },
    [...dryNote(dryError, wish), ...makingNotes([amount], wish), ...recipe.notes],
  );
}

/** Says which products weigh too little for a stock that is made within the tolerance. */
export function makingNotes(
  amounts: readonly Figure[],
  { division, tolerance }: Pick<StockWish, "division" | "tolerance">,
): readonly Note[] {
  const least = dec(division).times(50).div(tolerance);
  return amounts
    .filter((amount) => exact(amount).gt(0) && exact(amount).lt(least))
    .map(({ label, value }) => {
      const off = fixedText(dec(division).times(50).div(value), 2);
      const times = fixedText(ceilToDivision(least.div(value), STEP), 1);
      const text = `weighing ${label} for the stock may be off by ${off} %, and every load with it: make ${times} times as much, or weigh ${label} on a finer scale`;
      return { code: "stock.made-coarsely", path: [], text };
    });
}

/** Says where the salts need no stock. */
export function dryNote(dryError: Figure, { tolerance }: Pick<StockWish, "tolerance">): readonly Note[] {
  if (exact(dryError).gt(tolerance)) return [];
  return [
    { code: "stock.not-needed", path: [], text: "the salts can be weighed dry on this scale within the tolerance" },
  ];
}

/** The strongest solution, % w/w, whose salts take up no more than four fifths of their limit at a temperature. */
function strongestKept(product: Composition, storage: Decimal): Outcome<Decimal> {
  const own = anhydrousShare(product);
  const probe = solutionOf(product, decimalText(own.lt(ONE) ? own.div(2) : ONE));
  if (!probe.ok) return probe;
  const clarity = staysClear(probe.value, storage);
  if (!clarity.ok) return clarity;
  if (clarity.notes.some(({ code }) => code === "solubility.by-ions")) return answer(clearUpTo(product, storage));
  // What is taken of the limits goes with the mass of salts to the mass of water.
  const salts = anhydrousShare(probe.value);
  const perWater = salts.div(probe.value.water).times(HUNDRED).times(STAYS).div(exact(clarity.value.taken));
  const inert = dec(probe.value.inert).div(salts);
  const share = perWater
    .times(HUNDRED)
    .div(perWater.times(inert.plus(saltsBeside(probe.value, salts)).plus(1)).plus(1));
  return answer(share.lt(own) ? share : own);
}

/** The greatest strength whose solution is clear, to a quarter of a step: the activities of ions do not go with the mass. */
function clearUpTo(product: Composition, storage: Decimal): Decimal {
  const isClear = (percent: Decimal): boolean => {
    const solution = solutionOf(product, percent);
    const clarity = solution.ok ? staysClear(solution.value, storage) : undefined;
    return clarity?.ok === true && clarity.value.verdict === "clear";
  };
  let [low, high] = [dec(0), anhydrousShare(product)];
  if (isClear(high)) return high;
  while (high.minus(low).gt(STEP.div(4))) {
    const middle = low.plus(high).div(2);
    if (isClear(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Chlorides to one part of the alkaline salts: they take room as well. */
function saltsBeside(solution: Composition, salts: Decimal): Decimal {
  return dec(solution.species.NaCl ?? 0)
    .plus(solution.species.KCl ?? 0)
    .div(salts);
}

function problemWith({ perLoad, division, tolerance, loadsPerDay, keepingDays }: StockWish): Problem | undefined {
  const wanted = [perLoad.mass, division, tolerance, loadsPerDay, keepingDays].map(dec);
  if (wanted.every((value) => value.gt(0)) && anhydrousShare(perLoad.composition).gt(0)) return undefined;
  return inputProblem(
    "stock.wish",
    [],
    "a dose, division, tolerance, number of loads or keeping time that is not above 0, or no alkaline salt",
    "all of them above 0",
    "state them all",
  );
}
