import { exact, given, worked } from "../figure/figure.ts";
import { inputProblem, noAnswer, type Outcome, type Problem, refuse } from "../figure/problem.ts";
import { definition, massBalance } from "../figure/source.ts";
import { dec, fixedText } from "../number/decimal.ts";
import type { Product, Weighed } from "./carried.ts";
import { anhydrousShare, mixture } from "./composition.ts";
import { named } from "./named.ts";
import { type Conditions, completed, type Recipe } from "./recipe.ts";
import { type StatedStrength, solutionAt } from "./stated-strength.ts";

export interface Dilution extends Conditions {
  readonly stock: Weighed;
  readonly target: StatedStrength;
}

/**
 * How much water brings a stock down to a strength.
 *
 * Problems: `solutions.amount`, and those of `solutionAt`.
 * @example dilute({ stock: { name: "stock", composition: { species: { K2CO3: "40" }, water: "60", inert: "0" }, mass: 500 }, target: { measure: "mass-percent", value: "20" }, temperature: 20, scale: "145" }).ok // => true
 */
export function dilute({ stock, target, ...conditions }: Dilution): Outcome<Recipe> {
  const nothing = nothingOf(stock);
  if (nothing !== undefined) return refuse(nothing);
  const solution = solutionAt(stock.composition, target);
  if (!solution.ok) return solution;
  const { name } = stock;
  const amount = given({
    id: "solutions.amount.0",
    label: name,
    unit: "g",
    places: 2,
    value: stock.mass,
    by: "the amount of stock",
    sources: [definition],
  });
  const from = {
    mass: amount,
    own: named(`strength of ${name}`, "% w/w", anhydrousShare(stock.composition), "the composition"),
    target: named("strength aimed at", "% w/w", anhydrousShare(solution.value), "the target"),
  };
  const water = worked({
    id: "solutions.water",
    label: "water to add",
    unit: "g",
    places: 2,
    formula: "mass * (own / target - 1)",
    from,
    sources: [massBalance],
  });
  const mass = worked({
    id: "solutions.mass",
    label: "solution",
    unit: "g",
    places: 2,
    formula: "mass + water",
    from: { mass: amount, water },
    sources: [massBalance],
  });
  return completed({ amounts: [amount], water, mass, composition: solution.value }, conditions);
}

export interface Correction extends Conditions {
  readonly batch: Weighed;
  readonly target: StatedStrength;
  /** What to strengthen it with. */
  readonly salts: Product;
}

/**
 * What to add to a batch that came out too strong (water) or too weak (salts).
 *
 * Problems: `solutions.amount`; `solutions.too-weak-salts` when what there is to add is itself weaker than the target, and those of `solutionAt`.
 * @example correct({ batch: { name: "batch", composition: { species: { Na2CO3: "9" }, water: "91", inert: "0" }, mass: 1000 }, target: { measure: "mass-percent", value: "10" }, salts: { name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" } }, temperature: 20, scale: "145" }).ok // => true
 */
export function correct({ batch, target, salts, ...conditions }: Correction): Outcome<Recipe> {
  const nothing = nothingOf(batch);
  if (nothing !== undefined) return refuse(nothing);
  const thinner = solutionAt(batch.composition, target);
  if (thinner.ok) return dilute({ stock: batch, target, ...conditions });
  const aim = solutionAt(salts.composition, target);
  if (!aim.ok) return aim;
  const from = {
    mass: given({
      id: "solutions.amount.0",
      label: batch.name,
      unit: "g",
      places: 2,
      value: batch.mass,
      by: "the batch",
      sources: [definition],
    }),
    target: named("strength aimed at", "% w/w", anhydrousShare(aim.value), "the target"),
    own: named(`strength of ${batch.name}`, "% w/w", anhydrousShare(batch.composition), "the composition"),
    salts: named(`strength of ${salts.name}`, "% w/w", anhydrousShare(salts.composition), "the composition"),
  };
  if (exact(from.salts).lte(from.target.value)) {
    return refuse(
      noAnswer(
        "solutions.too-weak-salts",
        [],
        `${salts.name} of ${fixedText(from.salts.value, 1)} % to add`,
        `more than the ${fixedText(from.target.value, 1)} % aimed at`,
        "add dry salts or a stronger stock",
      ),
    );
  }
  const more = worked({
    id: "solutions.amount.1",
    label: `${salts.name} to add`,
    unit: "g",
    places: 2,
    formula: "mass * (target - own) / (salts - target)",
    from,
    sources: [massBalance],
  });
  const mass = worked({
    id: "solutions.mass",
    label: "solution",
    unit: "g",
    places: 2,
    formula: "mass + more",
    from: { mass: from.mass, more },
    sources: [massBalance],
  });
  const composition = mixture([batch, { composition: salts.composition, mass: more.value }]);
  const water = given({
    id: "solutions.water",
    label: "water to add",
    unit: "g",
    places: 2,
    value: 0,
    by: "a batch that is too weak takes salts",
    sources: [massBalance],
  });
  return completed({ amounts: [from.mass, more], water, mass, composition }, conditions);
}

function nothingOf({ name, mass }: Weighed): Problem | undefined {
  if (dec(mass).gt(0)) return undefined;
  return inputProblem(
    "solutions.amount",
    [],
    `${dec(mass).toString()} g of ${name}`,
    "an amount above 0",
    "state how much there is",
  );
}
