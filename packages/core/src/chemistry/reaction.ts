import { type Note, note } from "../figure/problem.ts";
import { type Composition, sharesOf, speciesOf } from "./composition.ts";

/**
 * Says that hydroxide and bicarbonate turn into carbonate where both meet in water; nothing where they do not.
 *
 * @param products - what comes together in one solution or dough
 * @example reactionNotes([{ species: { NaOH: "5" }, water: "95", inert: "0" }]) // => []
 */
export function reactionNotes(products: readonly Composition[]): readonly Note[] {
  const kinds = products.flatMap((product) => sharesOf(product).map(([name]) => speciesOf(name).kind));
  if (!kinds.includes("hydroxide") || !kinds.includes("bicarbonate")) return [];
  return [note("solutions.reaction", [], {})];
}
