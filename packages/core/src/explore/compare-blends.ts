import { type Figure, worked } from "../figure/figure.ts";
import { massBalance } from "../figure/source.ts";

/** One line of a table before and after. A side is absent where its blend has no such figure. */
export interface Change {
  readonly label: string;
  readonly before?: Figure;
  readonly after?: Figure;
  readonly difference?: Figure;
}

/**
 * Sets the figures of two blends side by side, matched by their identity, with the difference where both have one.
 *
 * @example compareFigures([], []) // => []
 */
export function compareFigures(before: readonly Figure[], after: readonly Figure[]): readonly Change[] {
  const ids = [...new Set([...before, ...after].map(({ id }) => id))];
  return ids.map((id) => {
    const [old, fresh] = [before.find((figure) => figure.id === id), after.find((figure) => figure.id === id)];
    const label = (fresh ?? old)?.label ?? id;
    if (old === undefined || fresh === undefined) {
      return { label, ...(old === undefined ? {} : { before: old }), ...(fresh === undefined ? {} : { after: fresh }) };
    }
    return { label, before: old, after: fresh, difference: difference(old, fresh) };
  });
}

function difference(before: Figure, after: Figure): Figure {
  return worked({
    id: `${after.id}.difference`,
    label: `change of ${after.label}`,
    unit: after.unit,
    places: after.places,
    formula: "after - before",
    from: { after, before },
    sources: [massBalance],
  });
}
