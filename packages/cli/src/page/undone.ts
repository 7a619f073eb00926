import { type Path, pathText } from "@noodlewright/core/figure";
import { entryAt, loadOf, type State } from "./state.ts";
import { words } from "./words.ts";

/** Most of what an undo took back that is told one by one. */
const mostTold = 3;

/** What an undo took back, in words. @param placeOf - names a place of the spec */
export function undoneText(from: State, to: State, placeOf: (path: Path) => string): string {
  const { undone, today } = words;
  const loadIn = (key: string): string => key.split("/")[0] ?? "";
  const weights = changed(from.weighed, to.weighed).map((key) =>
    undone.weight((from.weighed[key] ?? to.weighed[key])?.name ?? "", loadIn(key)),
  );
  const paths = new Map([...from.entries, ...to.entries].map(({ path }) => [pathText(path), path]));
  const entries = [...paths.values()].filter((path) => !isSame(entryAt(from, path), entryAt(to, path)));
  const timers = from.timers.filter((one) => !to.timers.some((other) => isSame(one, other)));
  const all = [
    ...weights,
    ...entries.map(placeOf),
    ...(from.keepWet === to.keepWet ? [] : [today.keepWet]),
    ...changed(from.mended, to.mended).map((load) => undone.mend(load)),
    ...changed(from.doughs, to.doughs).map((load) => undone.dough(load)),
    ...timers.map((timer) => undone.timer(timer.label, loadOf(timer), timer.ended !== undefined)),
    // A lot goes with the weight it is of.
    ...(weights.length > 0 ? [] : changed(from.lots, to.lots).map((key) => undone.lot(loadIn(key)))),
    ...(from.load === to.load ? [] : [undone.turn(to.load)]),
  ];
  return undone.told(all.slice(0, mostTold), all.length - mostTold);
}

/** Keys under which two records hold something else. */
function changed<T>(from: Readonly<Record<string, T>>, to: Readonly<Record<string, T>>): readonly string[] {
  return [...new Set([...Object.keys(from), ...Object.keys(to)])].filter((key) => !isSame(from[key], to[key]));
}

function isSame(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
