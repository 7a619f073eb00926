import type { Figure } from "@noodlewright/core/figure";
import { weightCell } from "@noodlewright/core/render";
import { addedUp, standingOf } from "@noodlewright/core/sheet";
import type { Answers, Item } from "./answers.ts";
import { type Listed, loadOf, type State, weighedKey, without, withWeight } from "./state.ts";
import { words } from "./words.ts";

/** How many loads there are. */
export function loadCount({ loads }: Pick<Answers, "loads">): number {
  return loads?.count ?? 1;
}

/** Loads of which anything was weighed, timed or written down. */
export function touchedLoads({ weighed, lots, timers, doughs }: State): readonly number[] {
  const isWritten = (written: object) => Object.values(written).some((one) => one !== "");
  const loads = [
    ...[...Object.keys(weighed), ...Object.keys(lots).filter((key) => lots[key] !== "")].map(
      (key) => key.split("/")[0],
    ),
    ...Object.keys(doughs).filter((load) => isWritten(doughs[load] ?? {})),
    ...timers.map(loadOf),
  ].map(Number);
  return [...new Set(loads)].filter((load) => Number.isInteger(load) && load > 0).sort((one, other) => one - other);
}

/** The last load there is to see: of the list, or one of which something was entered before the list had fewer. */
export function lastLoad(today: Pick<Answers, "loads">, state: State): number {
  return Math.max(loadCount(today), ...touchedLoads(state).slice(-1));
}

/** The list of a load: that by which all of it was weighed, or that of today. */
export function listOfLoad(items: readonly Item[], { lists = {} }: State, load: number): readonly Item[] {
  const kept = lists[load];
  const isAsNow = kept?.length === items.length && kept.every((one, index) => isSame(one, items[index]));
  if (kept === undefined || isAsNow) return items;
  return kept.map((item) => {
    const said = words.weigh.listThen;
    return { ...item, figure: { from: "batch", id: item.id, label: item.name, text: asWeighed(item), said } };
  });
}

function isSame(one: Listed, other: Item | undefined): boolean {
  return one.id === other?.id && asOnList(one) === asOnList(other);
}

/** Whether all of a load was weighed before the list changed: it is judged by the list that it was weighed by. */
export function isPast(items: readonly Item[], state: State, load: number): boolean {
  return listOfLoad(items, state, load) !== items;
}

const listedOf = ({ id, name, grams, unit, division, scale, kind }: Item): Listed => {
  return { id, name, grams, unit, division, scale, kind };
};

/** The state with a weight of a load. Where all of it is in, the load keeps its list. */
export function withItem(items: readonly Item[], state: State, load: number, item: Item, weight: Weight): State {
  // A load that keeps its list keeps what differed then.
  const differs = isPast(items, state, load) ? state.weighed[weighedKey(load, item.id)]?.differs : weight.differs;
  const { grams, at } = weight;
  const put = withWeight(state, load, item.id, {
    grams,
    name: item.name,
    at,
    of: listedOf(item),
    ...(differs && { differs }),
  });
  const isIn = itemsOfLoad(items, put, load).every(({ id, name, ...one }) => {
    const entry = put.weighed[weighedKey(load, id)];
    return entry?.name === name && "right over".includes(standingOf(one.grams, one.division, entry.grams).kind);
  });
  if (isIn) return { ...put, lists: { ...put.lists, [load]: listOfLoad(items, put, load).map(listedOf) } };
  return isPast(items, put, load) ? put : reopened(put, load);
}

interface Weight {
  /** What the scale showed, g. */
  readonly grams: string;
  /** Milliseconds since 1970. */
  readonly at: number;
  /** What differs from the spec, in words. */
  readonly differs: readonly string[];
}

/** The state with a load that goes by the list of today. */
export function reopened(state: State, load: number): State {
  return { ...state, lists: without(state.lists ?? {}, String(load)) };
}

/** An item of the list as a mend of a load remembers it: a mend holds as long as the list stays that. */
export function asOnList({
  name,
  grams,
  scale,
  division,
}: Pick<Item, "name" | "grams" | "scale" | "division">): string {
  return `${name}, ${grams} g on ${scale}, ${division} g`;
}

/** How a load stands to the list: mended by weights of its own, or mended before the list changed, so that they are void. */
export function mendOf(items: readonly Item[], state: State, load: number): "none" | "holds" | "void" {
  const totals = state.mended[load];
  if (totals === undefined) return "none";
  const listed = new Map(listOfLoad(items, state, load).map((item) => [item.id, asOnList(item)]));
  return Object.entries(totals).every(([id, { of }]) => listed.get(id) === of) ? "holds" : "void";
}

/** What is to be weighed for a load: the list, or what mends the load. */
export function itemsOfLoad(items: readonly Item[], state: State, load: number): readonly Item[] {
  const list = listOfLoad(items, state, load);
  if (mendOf(items, state, load) !== "holds") return list;
  return list.map((item) => {
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
