import { type Figure, given, named, summed, worked } from "../figure/figure.ts";
import { type Published, published, scoped, underScope, withOrigins } from "../figure/graph.ts";
import { definition, massBalance } from "../figure/source.ts";
import type { BlendAnswer, FoundBlend } from "./blend-question.ts";

/** One line of a table before and after. A side is absent where its blend has no such figure. */
export interface Change {
  readonly label: string;
  readonly before?: Figure;
  readonly after?: Figure;
  readonly difference?: Figure;
}

/**
 * Sets the figures of two blends side by side, matched by their identity, with the difference where both have one; those
 * of the blend before, and all that they rest on, are named anew, `before.` and their identity.
 *
 * @example compareFigures([], []) // => []
 */
export function compareFigures(before: readonly Figure[], after: readonly Figure[]): readonly Published<Change>[] {
  const ids = [...new Set([...before, ...after].map(({ id }) => id))];
  const olds = scoped("before", withOrigins(before));
  return ids.map((id) => {
    const known = olds.find((figure) => figure.id === `before.${id}`);
    const knownNow = after.find((figure) => figure.id === id);
    const old = known ?? noShare(`before.${id}`, knownNow);
    const fresh = knownNow ?? noShare(id, known);
    const label = (fresh ?? old)?.label ?? id;
    if (old === undefined || fresh === undefined) {
      return published({ label, ...(old && { before: old }), ...(fresh && { after: fresh }) });
    }
    return published({ label, before: old, after: fresh, difference: difference(old, fresh) });
  });
}

/** A flour that is in one blend only has no share of the other. */
function noShare(id: string, like: Figure | undefined): Figure | undefined {
  if (like === undefined || !/^(?:before\.)?share\./u.test(id)) return undefined;
  const { label, unit, places } = like;
  return given({ id, label, unit, places }, 0, "not in the blend", definition);
}

function difference(before: Figure, after: Figure): Figure {
  const places = Math.max(before.places, after.places);
  const naming = named(after.unit, places)(`${after.id}.difference`, `change of ${after.label}`);
  return worked(naming, "after - before", { after, before }, massBalance);
}

/** The two sums of a table of shares. */
export function shareTotals(changes: readonly Change[]): readonly Figure[] {
  return (["before", "after"] as const).flatMap((side) => {
    const shares = changes.filter((change) => isShare(idOf(change))).flatMap((change) => change[side] ?? []);
    if (shares.length === 0) return [];
    const places = Math.max(0, ...shares.map((share) => share.places));
    const label = side === "before" ? "all flours before" : "all flours now";
    return summed(named("% of flour", places)(`shares.${side}`, label), { share: shares }, definition);
  });
}

/** The first blend of an answer, or the nearest one where none meets everything. */
export function shownBlend(answer: BlendAnswer): FoundBlend | undefined {
  return answer.kind === "found" ? answer.blends[0] : answer.nearest;
}

/** All figures of a blend: its shares and what it comes to. */
export function figuresIn({ shares, figures }: FoundBlend): readonly Figure[] {
  return [...shares.map(({ share }) => share), ...figures];
}

/** The figures of a blend by id, but no share as is that stands at a moisture as well. */
export function idsAtBasis(ids: readonly string[]): readonly string[] {
  const isAt = (id: string, other: string): boolean => other !== id && other.startsWith(id.replace(/as-is$/u, ""));
  return ids.filter((id) => !id.endsWith(".as-is") || !ids.some((other) => isAt(id, other)));
}

/** What is known of each blend of an answer; the figures of the second are named `alternative.2.` and their identity, and so on. */
export function eachUnderScope<T extends object>(rows: readonly T[]): readonly T[] {
  return rows.map((row, index) => (index === 0 ? row : underScope(`alternative.${index + 1}`, row)));
}

/** An answer with the blends of its rows. */
export function withBlends(answer: BlendAnswer, rows: readonly { readonly blend: FoundBlend }[]): BlendAnswer {
  return answer.kind === "found" ? { ...answer, blends: rows.map(({ blend }) => blend) } : answer;
}

/** The identity of a line, whichever side has it. */
export function idOf({ before, after }: Change): string | undefined {
  return after?.id ?? before?.id.replace(/^before\./u, "");
}

/** Whether a line is the share of a flour. */
export const isShare = (id: string | undefined): boolean => id?.startsWith("share.") === true;
