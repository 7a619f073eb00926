import { shortestDay } from "./day-order.ts";
import type { Turn } from "./day-shape.ts";
import type { Operation, Operations } from "./operation.ts";

/** When every load begins each operation, the first load of the day first; minutes before service. */
export interface LatestTimes {
  readonly starts: readonly (readonly number[])[];
  /** By how many minutes a day that begins later than this one could not be ruled out; 0 where it is proved. */
  readonly unproved: number;
}

/**
 * Finds the latest times at which all loads can go through their operations: the day begins as late as it can, and in the order of
 * work that this takes every stage of every load is as late as it can be.
 *
 * @returns nothing where the first load would have to wait longer than allowed once it is done
 */
export function latestTimes(operations: Operations, loads: number, longestHold: number): LatestTimes | undefined {
  const backwards = operations
    .map((operation, index): Operation => {
      const { waits, least, greatest } = operations[index - 1] ?? { waits: [], least: 0, greatest: 0 };
      return { ...operation, waits, least, greatest };
    })
    .reverse();
  const order = shortestDay(backwards, loads, longestHold);
  if (order === undefined) return undefined;
  const ends = earliest(linksOf(backwards, loads, order.turns), loads * backwards.length);
  const starts = Array.from({ length: loads }, (_, load) =>
    operations.map(({ stage }, at) => {
      const backwardsStart = ends[(loads - 1 - load) * operations.length + operations.length - 1 - at] ?? 0;
      return -backwardsStart - stage.minutes;
    }),
  );
  return { starts, unproved: order.span - order.atLeast };
}

/** One moment comes at least so many minutes after another. */
interface Link {
  readonly from: number;
  readonly to: number;
  readonly minutes: number;
}

function linksOf(stages: Operations, loads: number, turns: readonly Turn[]): readonly Link[] {
  const moment = (stage: number, load: number): number => load * stages.length + stage;
  const shared = new Set(turns.map(({ stage }) => stage));
  const ofLoads = Array.from({ length: loads }, (_, load) =>
    stages.flatMap(({ stage: { minutes }, units, least, greatest }, at): readonly Link[] => {
      const here = moment(at, load);
      const isLast = at === stages.length - 1;
      return [
        ...(isLast ? [] : [{ from: here, to: here + 1, minutes: minutes + least }]),
        ...(isLast || greatest === Number.POSITIVE_INFINITY
          ? []
          : [{ from: here + 1, to: here, minutes: -minutes - greatest }]),
        ...(load === 0 ? [] : [{ from: moment(at, load - 1), to: here, minutes: 0 }]),
        ...(load < units || shared.has(at) ? [] : [{ from: moment(at, load - units), to: here, minutes }]),
      ];
    }),
  ).flat();
  const ofTurns = turns.flatMap(({ stage, load, after }): readonly Link[] => {
    if (after === undefined) return [];
    const minutes = stages[after.stage]?.stage.minutes ?? 0;
    return [{ from: moment(after.stage, after.load), to: moment(stage, load), minutes }];
  });
  return [...ofLoads, ...ofTurns];
}

/** The earliest times that keep all distances; they are known to exist. */
function earliest(links: readonly Link[], moments: number): readonly number[] {
  const times = Array.from({ length: moments }, () => 0);
  for (let moved = true; moved; ) {
    moved = false;
    for (const { from, to, minutes } of links) {
      const least = (times[from] ?? 0) + minutes;
      if (least <= (times[to] ?? 0)) continue;
      times[to] = least;
      moved = true;
    }
  }
  return times;
}

/** Shares out the units of a machine between stages that do not overlap on more of them than there are. */
export function unitsOf(operations: Operations, starts: LatestTimes["starts"]): readonly (readonly number[])[] {
  const units = starts.map((load) => load.map(() => 0));
  const freeAt = new Map<string, number[]>();
  const inTime = starts
    .flatMap((load, at) => load.map((start, stage) => ({ load: at, stage, start })))
    .sort((a, b) => a.start - b.start);
  for (const { load, stage, start } of inTime) {
    const operation = operations[stage];
    if (operation === undefined) continue;
    const free = freeAt.get(operation.stage.machine) ?? Array.from({ length: operation.units }, () => start);
    const unit = free.findIndex((from) => from <= start);
    free[unit] = start + operation.stage.minutes;
    freeAt.set(operation.stage.machine, free);
    const row = units[load];
    if (row !== undefined) row[stage] = unit;
  }
  return units;
}
