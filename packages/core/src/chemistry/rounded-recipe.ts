import { type Figure, found, summed, worked } from "../figure/figure.ts";
import { type Note, note } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import { type DecimalInput, type DecimalText, dec, decimalText, digitsText, fixedText } from "../number/decimal.ts";
import { roundKeepingTotal } from "../number/rounding.ts";
import type { Product } from "./carried.ts";
import { anhydrousShare } from "./composition.ts";
import { named } from "./named.ts";

/** Most that rounding may be off, % of the strength, before a word about it. */
const FINE = "1";

/** A word about a scale that is too coarse for a recipe; none where the weights make the strength to within 1 % of it. */
export function coarseNotes({ strength }: RoundedRecipe, meant: Figure): readonly Note[] {
  const off = dec(strength.value).minus(meant.value).abs().times(100);
  if (off.lte(dec(meant.value).times(FINE))) return [];
  const facts = { made: fixedText(strength.value, 2), meant: fixedText(meant.value, 2) };
  return [note("solutions.coarse-scale", [], facts)];
}

/** Products and water, g of each in order. */
interface ToWeigh {
  readonly products: readonly Product[];
  readonly amounts: readonly Figure[];
  readonly water: Figure;
}

/** A recipe as a scale shows it. */
export interface RoundedRecipe {
  /** g of each product */
  readonly amounts: readonly Figure[];
  /** g of water */
  readonly water: Figure;
  /** g of all of them */
  readonly total: Figure;
  /** % w/w that these weights make */
  readonly strength: Figure;
  /** g that the smallest step of the scale is */
  readonly division: DecimalText;
}

/**
 * Rounds a recipe to the division of a scale, keeping the total as near as the division allows.
 *
 * @param division - g, above 0
 */
export function roundRecipe(recipe: ToWeigh, division: DecimalInput): RoundedRecipe {
  const step = dec(division);
  const exactly = [...recipe.amounts, recipe.water];
  const rounded = roundKeepingTotal(exactly.map(({ value }) => ({ value: dec(value), division: step })));
  const places = Math.max(0, step.decimalPlaces());
  const weights = exactly.map((figure, index) =>
    found(
      { id: figure === recipe.water ? "weigh.water" : `weigh.${index + 1}`, label: figure.label, unit: "g", places },
      rounded[index] ?? 0,
      `${figure.label} of ${digitsText(figure.value, 10)} g, rounded to the division of ${step.toString()} g so that the total stays`,
      exactly,
      massBalance,
    ),
  );
  const total = summed(
    { id: "weigh.total", label: "solution as weighed", unit: "g", places },
    { weights },
    massBalance,
  );
  const amounts = weights.slice(0, -1);
  const own = recipe.products.map(({ name, composition }, index) =>
    named(`weigh.salts.${index + 1}`, `salts in ${name}`, "% w/w", anhydrousShare(composition), "the composition"),
  );
  const strength = worked(
    { id: "weigh.strength", label: "strength as weighed", unit: "% w/w", places: 3 },
    dec(total.value).isZero() ? "0 * sum(amounts * own)" : "sum(amounts * own) / total",
    { amounts, own, total },
    massBalance,
  );
  return { amounts, water: weights.at(-1) ?? recipe.water, total, strength, division: decimalText(step) };
}
