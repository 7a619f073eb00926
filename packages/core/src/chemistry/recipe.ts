import type { Figure } from "../figure/figure.ts";
import { type Published, publish, scoped } from "../figure/graph.ts";
import { distinct, type Note, note, type Outcome, problem, refuse } from "../figure/problem.ts";
import { type DecimalInput, dec, decOf } from "../number/decimal.ts";
import type { BaumeName } from "./baume.ts";
import type { Product } from "./carried.ts";
import { type Composition, fromMasses } from "./composition.ts";
import { readHydrometer } from "./hydrometer.ts";
import { coarseNotes, type RoundedRecipe, roundRecipe } from "./rounded-recipe.ts";
import { type Solubility, staysClear } from "./solubility.ts";
import { type Strength, strengthOf, volumeOfMass } from "./strength.ts";

/** What every recipe for a solution has to know. */
export interface Conditions {
  /** °C at which it is made and at which volumes are meant */
  readonly temperature: DecimalInput;
  /** °C at which it is kept; as made where nothing is stated */
  readonly storage?: DecimalInput;
  /** scale of the hydrometer to check it with */
  readonly scale: BaumeName;
  /** g that the smallest step of the scale is; 1 where nothing is stated */
  readonly division?: DecimalInput;
}

/** How to make a solution, and all about it. */
export interface Recipe {
  /** What goes in, the water aside. */
  readonly products: readonly Product[];
  /** g of each product, in their order */
  readonly amounts: readonly Figure[];
  /** g of water to add */
  readonly water: Figure;
  readonly mass: Figure;
  /** mL; absent where no published fit of density covers the solution */
  readonly volume?: Figure;
  readonly composition: Composition;
  /** What the composition follows from. */
  readonly compositionOn: readonly Figure[];
  readonly strength: Strength;
  /** The same as the scale shows it. */
  readonly weighed: RoundedRecipe;
  /** % w/w that the hydrometer tells, with what an error of reading is worth; absent where no published fit covers it */
  readonly byHydrometer?: Figure;
  /** Whether it dissolves when made; absent where a salt has no solubility table. */
  readonly made?: Solubility;
  /** Whether it stays clear where it is kept; absent where a salt has no solubility table. */
  readonly kept?: Solubility;
}

/** What a way of mixing has worked out. */
type Mixed = Pick<Recipe, "products" | "amounts" | "water" | "mass" | "composition" | "compositionOn">;

/**
 * Completes what was mixed with its strength in every measure, its volume and whether it stays clear.
 *
 * @param about - notes on how the strength aimed at was taken
 * Problems: `solutions.temperature`, `solutions.division`, and those of `strengthOf`.
 */
export function completed(
  mixed: Mixed,
  { temperature, storage, scale, division = 1 }: Conditions,
  about: readonly Note[] = [],
): Outcome<Published<Recipe>> {
  if (dec(temperature).lt(0) || dec(temperature).gt(100)) {
    return refuse(problem("solutions.temperature", [], { temperature: dec(temperature).toString() }));
  }
  if (!decOf("division", division).gt(0)) {
    return refuse(problem("solutions.division", ["division"], { division: dec(division).toFixed() }));
  }
  const { composition, compositionOn: from, mass } = mixed;
  const strength = strengthOf(composition, temperature, scale, from);
  if (!strength.ok) return strength;
  const volume = volumeOfMass(composition, mass, temperature, from);
  const made = staysClear(composition, temperature, from);
  const kept = staysClear(composition, storage ?? temperature, from);
  const weighed = roundRecipe(mixed, division);
  const { baume } = strength.value;
  const check = baume && checkByHydrometer(composition, scale, baume);
  const recipe = {
    ...mixed,
    products: mixed.products.map(({ name, composition }) => ({ name, composition })),
    strength: strength.value,
    weighed,
    ...(check?.ok && { byHydrometer: { ...check.value.massPercent, label: "strength by the hydrometer" } }),
    ...(volume.ok ? { volume: volume.value } : {}),
    ...(made.ok && { made: under("made", made.value) }),
    ...(kept.ok && { kept: under("kept", kept.value) }),
  };
  const notes = [
    ...coarseNotes(weighed, strength.value.massPercent),
    ...about,
    ...strength.notes,
    ...clarityNotes(made, "at the making temperature"),
    ...clarityNotes(kept, "where it is kept"),
  ];
  return publish(recipe, distinct(notes));
}

/** What one reads off a hydrometer in a kitchen, degrees: common practice, no source. */
const usualReadingError = "0.2";

/** What a hydrometer tells about a solution one has made, and what an error of reading is worth. */
function checkByHydrometer({ species, inert }: Composition, scale: BaumeName, degrees: Figure) {
  const reading = { measure: "degrees-baume", scale, value: degrees.value } as const;
  return readHydrometer(fromMasses({ species, inert }), reading, usualReadingError, [degrees]);
}

/** The solubility with its figures under a name of their own, since there are two of them. */
function under(when: string, solubility: Solubility): Solubility {
  const [taken = solubility.taken, ...limits] = scoped(when, [solubility.taken, ...solubility.limits]);
  return { ...solubility, taken, limits };
}

function clarityNotes(outcome: Outcome<Solubility>, where: "at the making temperature" | "where it is kept") {
  if (!outcome.ok) return outcome.problems.map((problem) => note("solutions.clarity-unknown", [], { where, problem }));
  const { verdict, solid } = outcome.value;
  const own =
    verdict === "doubtful" || verdict === "crystals" ? [note(`solutions.${verdict}`, [], { where, solid })] : [];
  return [...own, ...outcome.notes];
}
