import { exact, type Figure, found, given, worked } from "../figure/figure.ts";
import type { Published } from "../figure/graph.ts";
import { measure } from "../figure/in-system.ts";
import { answer, type Note, note, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import { definition, massBalance } from "../figure/source.ts";
import { type DecimalInput, dec, fixedText } from "../number/decimal.ts";
import type { Product, Weighed } from "./carried.ts";
import { anhydrousShare, type Composition, fromMasses, mixture, solutionOf } from "./composition.ts";
import { grams, named } from "./named.ts";
import { type Conditions, completed, type Recipe } from "./recipe.ts";
import { type StatedStrength, solutionAt } from "./stated-strength.ts";

/** A stock, and the strength that water is to bring it down to. */
export interface Dilution extends Conditions {
  readonly stock: Weighed;
  readonly target: StatedStrength;
}

/**
 * How much water brings a stock down to a strength.
 *
 * Problems: `solutions.amount`, and those of `solutionAt`.
 * @example shown(dilute({ stock: { name: "stock", composition: { species: { K2CO3: "40" }, water: "60", inert: "0" }, mass: 500 }, target: { measure: "mass-percent", value: "20" }, temperature: 20, scale: "145" }).value.water) // => "500.00 g"
 */
export function dilute({ stock, target, ...conditions }: Dilution): Outcome<Published<Recipe>> {
  const nothing = nothingOf(stock);
  if (nothing !== undefined) return refuse(nothing);
  const solution = solutionAt(stock.composition, target);
  if (!solution.ok) return solution;
  const amount = given(grams("solutions.amount.0", stock.name), stock.mass, "the amount of stock", definition);
  const from = { mass: amount, own: strengthOf(stock, 0), target: aimedAt(solution.value) };
  const water = worked(grams("solutions.water", "water to add"), "mass * (own / target - 1)", from, massBalance);
  const mass = worked(grams("solutions.mass", "solution"), "mass + water", { mass: amount, water }, massBalance);
  const compositionOn = [from.own, from.target];
  return completed(
    { products: [stock], amounts: [amount], water, mass, composition: solution.value, compositionOn },
    conditions,
    solution.notes,
  );
}

function strengthOf({ name, composition }: Product, index: number): Figure {
  const id = `solutions.strength.${index}`;
  return named(id, `strength of ${name}`, "% w/w", anhydrousShare(composition), "the composition");
}

function aimedAt(solution: Composition): Figure {
  return named("solutions.target", "strength aimed at", "% w/w", anhydrousShare(solution), "the target");
}

/** A batch of solution, and the strength that it is to have. */
export interface Correction extends Conditions {
  readonly batch: Weighed;
  readonly target: StatedStrength;
  /** What to strengthen it with. */
  readonly salts: Product;
  /** Least and greatest strength, % by mass, that the batch may have by its reading. */
  readonly within?: { readonly low: DecimalInput; readonly high: DecimalInput };
  /** mL that the tank holds. */
  readonly tank?: DecimalInput;
}

/**
 * What to add to a batch that came out too strong (water) or too weak (salts).
 *
 * With the range of the batch's strength a note tells what either end takes; with the size of the tank, whether it fits.
 *
 * Problems: `solutions.amount`; `solutions.too-weak-salts` when what there is to add is itself weaker than the target, and those of `solutionAt`.
 * @example shown(correct({ batch: { name: "batch", composition: { species: { Na2CO3: "9" }, water: "91", inert: "0" }, mass: 1000 }, target: { measure: "mass-percent", value: "10" }, salts: { name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" } }, temperature: 20, scale: "145" }).value.amounts[1]) // => "11.11 g"
 */
export function correct({ within, tank, ...correction }: Correction): Outcome<Published<Recipe>> {
  const recipe = corrected(correction);
  if (!recipe.ok) return recipe;
  const about = [...withinNotes(correction, within), ...tankNotes(correction.batch, recipe.value, tank)];
  return answer(recipe.value, [...about, ...recipe.notes]);
}

/** Says what a batch takes at either end of the strength that it may have. */
function withinNotes(correction: Omit<Correction, "within" | "tank">, within: Correction["within"]): readonly Note[] {
  if (within === undefined) return [];
  const { species, inert } = correction.batch.composition;
  const ends = [within.low, within.high].map(dec).flatMap((end) => {
    const solution = solutionOf(fromMasses({ species, inert }), end);
    if (!solution.ok) return [];
    const recipe = corrected({ ...correction, batch: { ...correction.batch, composition: solution.value } });
    const added = recipe.ok ? (recipe.value.amounts[1] ?? recipe.value.water) : undefined;
    if (added === undefined) return [];
    const of = added.label === "water to add" ? ("water" as const) : ("salts" as const);
    return [{ strength: fixedText(end, 2), added: measure(added.value, "g", 0), of }];
  });
  return ends.length < 2 ? [] : [note("solutions.batch-within", [], { ends, salts: correction.salts.name })];
}

/** Says where the corrected batch is more than its tank holds, and how much of it can be corrected there. */
function tankNotes(batch: Weighed, recipe: Recipe, tank: DecimalInput | undefined): readonly Note[] {
  if (tank === undefined) return [];
  const { volume } = recipe;
  if (volume === undefined) return [note("solutions.tank-unknown", [], {})];
  const most = exact({ ...volume, value: volume.range?.high ?? volume.value });
  if (most.lte(tank)) return [];
  const litres = (millilitres: DecimalInput) => measure(dec(millilitres).div(1000), "L", 2);
  const part = measure(dec(batch.mass).times(tank).div(most).toDecimalPlaces(0, 1), "g");
  return [note("solutions.tank", [], { fills: litres(most), tank: litres(tank), most: part })];
}

function corrected({
  batch,
  target,
  salts,
  ...conditions
}: Omit<Correction, "within" | "tank">): Outcome<Published<Recipe>> {
  const nothing = nothingOf(batch);
  if (nothing !== undefined) return refuse(nothing);
  const thinner = solutionAt(batch.composition, target);
  if (thinner.ok) return dilute({ stock: batch, target, ...conditions });
  const aim = solutionAt(salts.composition, target);
  if (!aim.ok) return aim;
  const from = {
    mass: given(grams("solutions.amount.0", batch.name), batch.mass, "the batch", definition),
    target: aimedAt(aim.value),
    own: strengthOf(batch, 0),
    salts: strengthOf(salts, 1),
  };
  if (exact(from.salts).lte(from.target.value)) {
    const [strength, aimed] = [fixedText(from.salts.value, 1), fixedText(from.target.value, 1)];
    return refuse(problem("solutions.too-weak-salts", [], { name: salts.name, strength, target: aimed }));
  }
  const added = grams("solutions.amount.1", `${salts.name} to add`);
  const more = worked(added, "mass * (target - own) / (salts - target)", from, massBalance);
  const mass = worked(grams("solutions.mass", "solution"), "mass + more", { mass: from.mass, more }, massBalance);
  const composition = mixture([batch, { composition: salts.composition, mass: more.value }]);
  const why = "a batch that is too weak takes salts";
  const water = found(grams("solutions.water", "water to add"), 0, why, [from.own, from.target], massBalance);
  const compositionOn = Object.values(from);
  return completed(
    { products: [batch, salts], amounts: [from.mass, more], water, mass, composition, compositionOn },
    conditions,
    aim.notes,
  );
}

function nothingOf({ name, mass }: Weighed): Problem | undefined {
  if (dec(mass).gt(0)) return undefined;
  return problem("solutions.amount", [], { amount: dec(mass).toString(), of: name });
}
