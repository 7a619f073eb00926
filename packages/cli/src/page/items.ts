import type { Figure } from "@noodlewright/core/figure";
import { weightCell } from "@noodlewright/core/render";
import { addedUp } from "@noodlewright/core/sheet";
import type { Answers, Item } from "./answers.ts";
import type { State } from "./state.ts";
import { words } from "./words.ts";

/** How many loads there are. */
export function loadCount({ loads }: Pick<Answers, "loads">): number {
  return loads?.count ?? 1;
}

/** An item of the list as a mend of a load remembers it: a mend holds as long as the list stays that. */
export function asOnList({ name, grams, scale, division }: Item): string {
  return `${name}, ${grams} g on ${scale}, ${division} g`;
}

/** How a load stands to the list: mended by weights of its own, or mended before the list changed, so that they are void. */
export function mendOf(items: readonly Item[], { mended }: State, load: number): "none" | "holds" | "void" {
  const totals = mended[load];
  if (totals === undefined) return "none";
  const listed = new Map(items.map((item) => [item.id, asOnList(item)]));
  return Object.entries(totals).every(([id, { of }]) => listed.get(id) === of) ? "holds" : "void";
}

/** What is to be weighed for a load: the list, or what mends the load. */
export function itemsOfLoad(items: readonly Item[], state: State, load: number): readonly Item[] {
  if (mendOf(items, state, load) !== "holds") return items;
  return items.map((item) => {
    const total = state.mended[load]?.[item.id];
    if (total === undefined) return item;
    const { of: _, ...weight } = total;
    const changed = { ...item, ...weight };
    return { ...changed, figure: { ...item.figure, text: asWeighed(changed), said: words.weigh.mendedBy } };
  });
}

/** The dough of a load, g: what goes into it by the list, or by what mends it. */
export function doughOf(items: readonly Item[]): string {
  return addedUp(items.flatMap(({ kind, grams }) => (kind === "dusting" ? [] : [grams])));
}

/** A mass as the scale of an item shows it. @param grams - g */
export function asShown({ unit, division }: Pick<Item, "unit" | "division">, grams: string): string {
  const mass: Figure = { ...noFigure, value: grams };
  return weightCell(mass, unit, division).text;
}

const noFigure = { id: "", label: "", unit: "g", places: 0, working: { kind: "given", by: "" }, sources: [] } as const;

/** The same with its unit. */
export function asWeighed(item: Pick<Item, "unit" | "division" | "grams">, grams: string = item.grams): string {
  return `${asShown(item, grams)} ${item.unit}`;
}

/** The finest division of the scales that weigh the dough, g. */
export function finest(items: readonly Pick<Item, "kind" | "division">[]): string {
  return items
    .filter(({ kind }) => kind !== "dusting")
    .reduce((least, { division }) => (Number(division) < Number(least) ? division : least), "1000");
}
