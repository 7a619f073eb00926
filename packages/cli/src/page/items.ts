import type { Figure } from "@noodlewright/core/figure";
import { weightCell } from "@noodlewright/core/render";
import { addedUp, heldIn, type OnScale, standingOf, weighedBeside } from "@noodlewright/core/sheet";
import type { Answers, Item } from "./answers.ts";
import { type Held, type Listed, loadOf, type State, weighedKey, without, withWeight } from "./state.ts";
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
export function listOfLoad(items: readonly Item[], state: State, load: number): readonly Item[] {
  return pastList(items, state, load) ?? openList(items, state, load);
}

/** The list by which all of a load was weighed, where that of today is another. */
function pastList(items: readonly Item[], state: State, load: number): readonly Item[] | undefined {
  const kept = state.lists?.[load];
  const now = openList(items, state, load);
  if (kept === undefined || (kept.length === now.length && kept.every((one, index) => isSame(one, now[index])))) return;
  return kept.map((item) => {
    const said = words.weigh.listThen;
    return { ...item, figure: { from: "batch", id: item.id, label: item.name, text: asWeighed(item), said } };
  });
}

/** The list of today for a load: without its stock where some of what that brings is in already, which it would bring again. */
function openList(items: readonly Item[], state: State, load: number): readonly Item[] {
  const { plain } = items.find((item) => item.plain) ?? {};
  const others = weighedOf(state, load).filter((one) => !isOn(items, one));
  return plain && others.some((one) => isOn(plain, one) || heldOf(plain, one)) ? plain : items;
}

function isSame(one: Listed, other: Item | undefined): boolean {
  return one.id === other?.id && asOnList(one) === asOnList(other);
}

/** Whether all of a load was weighed before the list changed: it is judged by the list that it was weighed by. */
export function isPast(items: readonly Item[], state: State, load: number): boolean {
  return pastList(items, state, load) !== undefined;
}

/** Whether a load is weighed without the stock solution of the list. */
export function isPlain(items: readonly Item[], state: State, load: number): boolean {
  return items.some(({ plain }) => plain) && listOfLoad(items, state, load).every(({ kind }) => kind !== "stock");
}

/** All that was weighed for a load, as its list had it; without one, as it was weighed. `grams` is what is in. */
export function weighedOf(state: State, load: number): readonly Item[] {
  const start = weighedKey(load, "");
  return Object.entries(state.weighed).flatMap(([key, { of, name, grams }]): readonly Item[] => {
    if (!key.startsWith(start)) return [];
    const id = key.slice(start.length);
    const item = of ?? { id, name, grams, unit: "g", division: "0.01", scale: "", kind: "ingredient" as const };
    const holds = item.holds?.map((one) => ({ ...one, grams: heldIn(grams, one.grams, item.grams) }));
    const figure = { from: "batch" as const, id, label: name, text: asWeighed(item, grams) };
    return [{ ...item, name, grams, figure, ...(holds && { holds }) }];
  });
}

/** Whether what was weighed is on a list: the same thing, and a stock that is as strong. */
function isOn(items: readonly Item[], one: Item): boolean {
  const item = items.find(({ id, name }) => id === one.id && name === one.name);
  const [asked = [], got = []] = [item?.holds, one.holds];
  const isAsStrong = ({ id, name, grams }: Held): boolean => {
    const same = got.find((other) => other.id === id && other.name === name);
    const wanted = Number(heldIn(one.grams, grams, item?.grams ?? "1"));
    return same !== undefined && Math.abs(Number(same.grams) - wanted) <= wanted / 100;
  };
  return item !== undefined && (got.length === 0 || (got.length === asked.length && asked.every(isAsStrong)));
}

/** The last load beside one that took a stock of another strength than its list asks for: some of it may stand there. */
export function otherStock(list: readonly Item[], state: State, load: number): number | undefined {
  const isStock = ({ kind }: Item): boolean => kind === "stock";
  if (!list.some(isStock) || weighedOf(state, load).some(isStock)) return;
  const took = (one: number) => weighedOf(state, one).find(isStock);
  const last = touchedLoads(state).findLast((one) => one !== load && took(one) !== undefined);
  const stock = last === undefined ? undefined : took(last);
  return stock === undefined || isOn(list, stock) ? undefined : last;
}

/** What a stock brought of what a list asks for; nothing where it brought something else. */
function heldOf(items: readonly Item[], { holds = [] }: Item): readonly Held[] | undefined {
  const isAsked = (part: Held) =>
    items.some(({ id, name, kind }) => kind !== "dusting" && id === part.id && name === part.name);
  return holds.length > 0 && holds.every(isAsked) ? holds : undefined;
}

/** What is in the bowl of a load, beside its list. */
export type Bowl = ReturnType<typeof bowlOf>;

/** What is in the bowl of a load. @param items - the list of the load */
export function bowlOf(items: readonly Item[], state: State, load: number) {
  const weighed = weighedOf(state, load);
  const own = weighed.filter((one) => isOn(items, one));
  const off = weighed.filter((one) => !own.includes(one) && one.kind !== "dusting");
  const counted = off.filter((one) => heldOf(items, one) !== undefined);
  const parts = counted.flatMap(({ holds = [] }) => holds);
  const massOf = (some: readonly Held[], item: Item) =>
    some.flatMap(({ id, grams }) => (id === item.id ? [grams] : []));
  /** What is in of an item, with what a stock brought of it, g; nothing where none is. */
  const inAll = (item: Item): string | undefined => {
    const masses = [...massOf(own, item), ...massOf(parts, item)];
    return masses.length === 0 ? undefined : addedUp(masses);
  };
  // What a coarser scale weighed is known no better.
  const stepOf = ({ id, division }: Item): string =>
    own.reduce((most, one) => (one.id === id && Number(one.division) > Number(most) ? one.division : most), division);
  const standing = (item: Item): OnScale => standingOf(item.grams, stepOf(item), inAll(item));
  return {
    /** What a stock that is not on the list brought of an item, g. */
    brought: (item: Item) => addedUp(massOf(parts, item)),
    inAll,
    standing,
    /** Stocks that are in and not on the list, and count as what they are made of. */
    counted,
    /** What else is in and not on the list, and what must not go in beside it. */
    foreign: off.filter((one) => !counted.includes(one)),
    barredBy: (foreign: Item) =>
      items.filter((item) => item.kind !== "dusting" && isMissing(standing(item)) && dosesAgain(item, foreign)),
  };
}

/** Whether something is still to go in. */
export function isMissing({ kind }: OnScale): boolean {
  return kind === "open" || kind === "short";
}

/** What a thing stands for: the entry of the spec, with which its id begins; a stock stands for those of all it holds. */
function entriesOf(item: Item): readonly string[] {
  return (item.holds ?? [item]).map(({ id }) => id.split(".").slice(0, 2).join("."));
}

/** Whether something doses again what is in. Of a stock of an earlier page nothing tells what it holds: salts and water. */
function dosesAgain(item: Item, foreign: Item): boolean {
  const isUnknown = foreign.id.startsWith("common-stock") && !foreign.holds;
  const [doses, held] = [entriesOf(item), entriesOf(foreign)];
  return doses.some((one) => (isUnknown ? /^(?:alkali|salt|water)/u.test(one) : held.includes(one)));
}

const listedOf = ({ id, name, grams, unit, division, scale, kind, holds }: Item): Listed => {
  return { id, name, grams, unit, division, scale, kind, ...(holds && { holds }) };
};

/** The state with a weight of a load. Where all of it is in, the load keeps its list. */
export function withItem(items: readonly Item[], state: State, load: number, item: Item, weight: Weight): State {
  // A load that keeps its list keeps what differed and what was found then.
  const then = isPast(items, state, load) ? state.weighed[weighedKey(load, item.id)] : weight;
  const brought = bowlOf(itemsOfLoad(items, state, load), state, load).brought(item);
  const put = withWeight(state, load, item.id, {
    grams: brought === "0" ? weight.grams : weighedBeside(weight.grams, brought, item.division),
    name: item.name,
    at: weight.at,
    of: listedOf(item),
    ...(then?.differs && { differs: then.differs }),
    ...(then?.found && { found: then.found }),
  });
  const { standing, foreign } = bowlOf(itemsOfLoad(items, put, load), put, load);
  if (foreign.length === 0 && !itemsOfLoad(items, put, load).some((one) => isMissing(standing(one))))
    return { ...put, lists: { ...put.lists, [load]: listOfLoad(items, put, load).map(listedOf) } };
  return isPast(items, put, load) ? put : reopened(put, load);
}

/** `grams` is what is in, with what a stock brought of it. */
type Weight = Omit<State["weighed"][string], "name" | "of">;

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
    const { ice: _ice, ...rest } = item;
    const changed = { ...rest, ...weight };
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
