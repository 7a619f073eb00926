import type { Figure } from "@noodlewright/core/figure";
import { weightCell } from "@noodlewright/core/render";
import type { Answers, Item } from "./answers.ts";
import type { State } from "./state.ts";
import { words } from "./words.ts";

/** How many loads there are. */
export function loadCount({ loads }: Pick<Answers, "loads">): number {
  return loads?.count ?? 1;
}

/** What is to be weighed for a load: the list, or what mends the load. */
export function itemsOfLoad(items: readonly Item[], { mended }: State, load: number): readonly Item[] {
  const totals = mended[load];
  return items.map((item) => {
    const total = totals?.[item.id];
    if (total === undefined) return item;
    const changed = { ...item, ...total };
    return { ...changed, figure: { ...item.figure, text: asWeighed(changed), said: words.weigh.mendedBy } };
  });
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
