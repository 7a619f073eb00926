import { type Figure, given, worked } from "../figure/figure.ts";
import type { Published } from "../figure/graph.ts";
import { answer, note, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import { definition, massBalance } from "../figure/source.ts";
import { type Decimal, type DecimalInput, dec, fixedText, sum, ZERO } from "../number/decimal.ts";
import type { Product } from "./carried.ts";
import { anhydrousShare, type Composition, potassiumCarbonateShare } from "./composition.ts";
import { grams, named } from "./named.ts";
import { type InRatio, mixInRatio, partsAsWeighed, type RatioBy } from "./ratio.ts";
import { type Conditions, completed, type Recipe } from "./recipe.ts";
import { holdsCrystals } from "./solubility.ts";
import { countsMass, type StatedStrength, solutionAt } from "./stated-strength.ts";
import { type Amount, massOfVolume } from "./strength.ts";

/** A solution to make of dry products in a ratio. */
export interface MakeUp extends Conditions {
  readonly products: readonly [InRatio, ...(readonly InRatio[])];
  readonly ratioBy: RatioBy;
  readonly target: StatedStrength;
  readonly amount: Amount;
}

/**
 * How to make up a solution from products at hand and water.
 *
 * Problems: `solutions.parts`, `solutions.amount`, and those of `solutionAt`; by volume also those of `solutionDensity`.
 * @example shown(makeUp({ products: [{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, parts: 1 }], ratioBy: "as-weighed", target: { measure: "mass-percent", value: "10" }, amount: { grams: 1000 }, temperature: 20, scale: "145" }).value.amounts[0]) // => "100.00 g"
 */
export function makeUp(request: MakeUp): Outcome<Published<Recipe>> {
  const { products, ratioBy, target, amount } = request;
  const problem = problemWith(request);
  if (problem !== undefined) return refuse(problem);
  const parts = partsAsWeighed(products, ratioBy);
  const salts = mixInRatio(products, ratioBy);
  const solution = solutionAt(salts, target);
  if (!solution.ok) return solution;
  const made = anhydrousShare(solution.value);
  const strength = named("solutions.strength", "strength of the solution", "% w/w", made, "the target");
  const partFigures = products.map(({ name }, index) =>
    named(`solutions.part.${index}`, `part of ${name} as weighed`, "", parts[index] ?? ZERO, "the ratio"),
  );
  const [label, mixed] = ["salts in the mix of products", anhydrousShare(salts)];
  const own = named("solutions.salts", label, "% w/w", mixed, "the compositions", massBalance, partFigures);
  const compositionOn = [strength, ...partFigures];
  const mass = massFor(amount, solution.value, request, compositionOn);
  if (!mass.ok) return mass;
  const amounts = products.map((product, index) =>
    worked(
      grams(`solutions.amount.${index}`, product.name),
      "mass * strength / own * part / sum(parts)",
      { mass: mass.value, strength, own, part: partFigures[index] ?? ZERO, parts: partFigures },
      massBalance,
    ),
  );
  const water = worked(
    grams("solutions.water", "water"),
    "mass - sum(amounts)",
    { mass: mass.value, amounts },
    massBalance,
  );
  const crystals = countsMass(target) ? products.filter(({ composition }) => holdsCrystals(composition)) : [];
  const names = crystals.map(({ name }) => name);
  const counted = names.length > 0 ? [note("solutions.crystal-water", [], { names })] : [];
  const recipe = { products, amounts, water, mass: mass.value, composition: solution.value, compositionOn };
  return completed(recipe, request, [...counted, ...solution.notes]);
}

/** A solution to blend of two others. */
export interface Blend extends Conditions {
  readonly stocks: readonly [Product, Product];
  readonly target: StatedStrength;
  /** K2CO3 as mass % of the anhydrous carbonates */
  readonly potassiumShare: DecimalInput;
  readonly amount: Amount;
}

/**
 * How to blend two stocks, and water if need be, to a strength and a ratio.
 *
 * Problems: `solutions.ratio`, and those of `makeUp`; `solution.too-strong` names the strength that the blend reaches without water.
 * @example blend({ stocks: [{ name: "soda", composition: { species: { Na2CO3: "15" }, water: "85", inert: "0" } }, { name: "potash", composition: { species: { K2CO3: "40" }, water: "60", inert: "0" } }], target: { measure: "mass-percent", value: "15" }, potassiumShare: 40, amount: { grams: 100 }, temperature: 20, scale: "145" }).value.amounts.map(({ value }) => value) // => ["60", "15"]
 */
export function blend({ stocks, potassiumShare, ...request }: Blend): Outcome<Published<Recipe>> {
  const wanted = dec(potassiumShare);
  const excess = ({ composition: { species } }: Product): Decimal => {
    const [potash, soda] = [dec(species.K2CO3 ?? 0), dec(species.Na2CO3 ?? 0)];
    return potash.minus(potash.plus(soda).times(wanted).div(100));
  };
  const [one, other] = stocks;
  const [first, second] = [excess(one), excess(other)];
  const alike = first.isZero() && second.isZero();
  const shares = stocks.map(({ composition }) => potassiumCarbonateShare(composition));
  if (first.times(second).gt(0) || shares.includes(undefined)) {
    const range = shares.map((share) => (share === undefined ? "none" : `${fixedText(share, 1)} %`));
    return refuse(problem("solutions.ratio", [], { wanted: fixedText(wanted, 1), range }));
  }
  const products = [
    { ...one, parts: alike ? 1 : second.abs() },
    { ...other, parts: alike ? 1 : first.abs() },
  ] as const;
  return makeUp({ ...request, products, ratioBy: "as-weighed" });
}

function problemWith({ products, ratioBy, amount }: MakeUp): Problem | undefined {
  const empty = products.find(({ composition }) => anhydrousShare(composition).isZero());
  if (ratioBy === "anhydrous" && empty !== undefined) return problem("solutions.parts", [], { without: empty.name });
  if (products.some(({ parts }) => dec(parts).isNegative()) || sum(products.map(({ parts }) => dec(parts))).lte(0)) {
    return problem("solutions.parts", [], {});
  }
  const value = "grams" in amount ? amount.grams : amount.millilitres;
  return dec(value).gt(0) ? undefined : problem("solutions.amount", [], { amount: dec(value).toString() });
}

function massFor(
  amount: Amount,
  solution: Composition,
  { temperature }: Conditions,
  on: readonly Figure[],
): Outcome<Figure> {
  const naming = grams("solutions.mass", "solution");
  if ("grams" in amount) return answer(given(naming, amount.grams, "the amount asked for", definition));
  const mass = massOfVolume(solution, amount.millilitres, temperature, on);
  return mass.ok ? answer({ ...mass.value, ...naming }) : mass;
}
