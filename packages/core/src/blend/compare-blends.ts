import { type Figure, named, summed, worked } from "../figure/figure.ts";
import { definition, massBalance } from "../figure/source.ts";
import type { BlendAnswer, FoundBlend } from "./blend-question.ts";

/** One line of a table before and after. A side is absent where its blend has no such figure. */
export interface Change {
  /** What both are called in their own blend. */
  readonly id: string;
  readonly label: string;
  readonly before?: Figure;
  readonly after?: Figure;
  readonly difference?: Figure;
}

/**
 * Sets the figures of two blends side by side, matched by their identity, with the difference where both have one.
 *
 * @param shares - of every flour in the blend before, those that are not in it among them
 */
export function compareBlends(old: FoundBlend, fresh: FoundBlend, shares: readonly Figure[]): readonly Change[] {
  const after = figuresIn(fresh);
  const ids = new Set([...figuresIn(old).map(({ id }) => id), ...after.map((figure) => ownId(fresh, figure))]);
  return [...ids].map((id): Change => {
    const before = [...figuresIn(old), ...shares].find((figure) => figure.id === id);
    const now = after.find((figure) => ownId(fresh, figure) === id) ?? noShare(fresh, before);
    return {
      id,
      label: now?.label ?? before?.label ?? id,
      ...(before && { before }),
      ...(now && { after: now }),
      ...(before && now && { difference: difference(before, now) }),
    };
  });
}

/** A flour that is no more in a blend has what the others leave of it, which is nothing. */
function noShare({ scope, shares }: FoundBlend, before: Figure | undefined): Figure | undefined {
  if (before === undefined || !isShare(before.id)) return undefined;
  const { id, unit, places } = before;
  const label = `share of ${before.label.replace(/^share of /u, "")}`;
  const others = shares.map(({ share }) => share);
  return worked({ id: `${scope}.${id}`, label, unit, places }, "100 - sum(others)", { others }, definition);
}

function difference(before: Figure, after: Figure): Figure {
  const places = Math.max(before.places, after.places);
  const naming = named(after.unit, places)(`${after.id}.difference`, `change of ${after.label}`);
  return worked(naming, "after - before", { after, before }, massBalance);
}

/** The two sums of a table of shares. */
export function shareTotals(changes: readonly Change[]): readonly Figure[] {
  return (["before", "after"] as const).flatMap((side) => {
    const shares = changes.filter(({ id }) => isShare(id)).flatMap((change) => change[side] ?? []);
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

/** What a figure of a blend is called in it. */
export function ownId({ scope }: FoundBlend, { id }: Figure): string {
  return scope === "" ? id : id.slice(scope.length + 1);
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

/** Whether a line is the share of a flour. */
export function isShare(id: string): boolean {
  return id.endsWith(".parts");
}
