import { canKeepUp, leastSpan } from "./day-bounds.ts";
import {
  type Begun,
  type Day,
  dayOf,
  freeMoment,
  moment,
  range,
  START,
  startOf,
  type Turn,
  unitFreeAt,
} from "./day-shape.ts";
import type { Operations } from "./operation.ts";
import { type Distance, isLooser, leastAfter, onlyMoments, type Spacing, withMoment } from "./spacing.ts";

/**
 * The order in which loads follow each other at the machines that several stages share.
 *
 * All loads are alike, so that they may keep their order at every stage: of two that overtake each other the names can be
 * exchanged. At a machine with one stage the order is thus known; what has to be found is how the stages take turns at a shared
 * one. Everything here runs backwards from service: the first load is the last of the day, the first stage the last one.
 */
interface DayOrder {
  /** The turns at the shared machines. */
  readonly turns: readonly Turn[];
  /** Minutes from the start of the day to service. */
  readonly span: number;
  /** A span below which there is none; that of the order where it was proved to be the shortest. */
  readonly atLeast: number;
}

/** Where the search for the proof is broken off, in distances between moments looked at: about a second. */
const MOST_LOOKED_AT = 600_000;

/**
 * Finds the order with the shortest span: days begun are continued where the shortest span is still possible, and dropped where
 * another that has come as far leaves more room. Where that takes too long, the best of a limited number is taken.
 *
 * @param stages - of a load, the last one first
 * @returns nothing where no order keeps to the longest hold
 */
export function shortestDay(stages: Operations, loads: number, longestHold: number): DayOrder | undefined {
  const day = dayOf(stages, loads, longestHold);
  const open = new Queue();
  open.add(begin(day));
  const seen = new Map<string, readonly Begun[]>();
  const steps = loads * day.parts.length;
  for (let lookedAt = 0; ; ) {
    const best = open.take();
    if (best === undefined) return undefined;
    if (stepsOf(best) === steps) return orderOf(best, best.atLeast);
    if (lookedAt > MOST_LOOKED_AT) return nearlyShortest(day, best.atLeast);
    for (const { next: one } of continued(day, best)) {
      const key = one.placed.join();
      const others = seen.get(key) ?? [];
      lookedAt += effortOf(one) + others.length * one.spacing.moments.length;
      if (others.some(({ spacing }) => isLooser(spacing, one.spacing))) continue;
      seen.set(key, [...others.filter(({ spacing }) => !isLooser(one.spacing, spacing)), one]);
      open.add(one);
    }
  }
}

/** Days begun, those with the shortest possible span first; of these the farthest, and of these the last that came. */
class Queue {
  readonly #spans = new Map<number, Begun[][]>();

  add(begun: Begun): void {
    const steps = this.#spans.get(begun.atLeast) ?? [];
    this.#spans.set(begun.atLeast, steps);
    const at = stepsOf(begun);
    while (steps.length <= at) steps.push([]);
    steps[at]?.push(begun);
  }

  take(): Begun | undefined {
    for (;;) {
      const span = Math.min(...this.#spans.keys());
      const steps = this.#spans.get(span);
      if (steps === undefined) return undefined;
      const last = steps.at(-1)?.pop();
      if (last !== undefined) return last;
      if (steps.length > 0) steps.pop();
      else this.#spans.delete(span);
    }
  }
}

/** Goes step by step with the days of the shortest possible spans. */
function nearlyShortest(day: Day, atLeast: number): DayOrder | undefined {
  let begun: readonly Begun[] = [begin(day)];
  const steps = day.loads * day.parts.length;
  for (let step = 1; step <= steps; step += 1) {
    const ways = begun.flatMap((one) => continued(day, one));
    ways.sort((a, b) => a.next.atLeast - b.next.atLeast || a.start - b.start);
    const next = ways.map((one) => one.next);
    begun = kept(day, step, next, MOST_LOOKED_AT / steps / day.parts.length);
  }
  const [best] = begun;
  return best && orderOf(best, atLeast);
}

/** The first ones that are worth the effort; among them one that goes load after load, since that always fits. */
function kept(day: Day, step: number, begun: readonly Begun[], effort: number): readonly Begun[] {
  const chosen: Begun[] = [];
  let left = effort;
  for (const one of begun) {
    const isWorse = chosen.some(({ placed, spacing }) => isSame(placed, one.placed) && isLooser(spacing, one.spacing));
    if (isWorse || left < 0) continue;
    chosen.push(one);
    left -= effortOf(one);
  }
  const loadAfterLoad = day.parts.map((_, part) => Math.ceil((step - part) / day.parts.length));
  const safe = begun.find(({ placed }) => isSame(placed, loadAfterLoad));
  return safe === undefined || chosen.includes(safe) ? chosen : [...chosen, safe];
}

function isSame(one: readonly number[], other: readonly number[]): boolean {
  return one.every((loads, part) => loads === other[part]);
}

function effortOf({ spacing }: Begun): number {
  return spacing.moments.length ** 2;
}

function stepsOf({ placed }: Begun): number {
  return placed.reduce((total, loads) => total + loads, 0);
}

function orderOf({ turns, atLeast: span }: Begun, atLeast: number): DayOrder {
  const list: Turn[] = [];
  for (let one = turns; one !== undefined; one = one.before) list.unshift(one.turn);
  return { turns: list, span, atLeast };
}

function begin(day: Day): Begun {
  const free = day.shared.flatMap((machine) => machine.free);
  const start: Spacing = { moments: [START], least: [[0]] };
  const spacing = free.reduce((known, unit) => withMoment(known, unit, [[START, 0]]) ?? known, start);
  const begun = {
    placed: day.parts.map(() => 0),
    spacing,
    atLeast: 0,
    last: free.map(() => undefined),
    turns: undefined,
  };
  return { ...begun, atLeast: leastSpan(day, begun) };
}

/** A day begun with one part more, and the first moment at which that part can begin. */
interface Continued {
  readonly next: Begun;
  readonly start: number;
}

/** All the ways to place one more part, the one that can begin first last; of those that begin together the oldest load's. */
function continued(day: Day, begun: Begun): readonly Continued[] {
  const ways = day.parts.flatMap(({ turn }, part) => {
    const load = begun.placed[part] ?? 0;
    if (load >= (part === 0 ? day.loads : (begun.placed[part - 1] ?? 0))) return [];
    return unitsFor(day, begun, turn).flatMap((unit) => {
      const next = place(day, begun, part, load, unit);
      return next === undefined ? [] : [{ next, start: startOf(next.spacing, moment(day, turn ?? 0, load)) }];
    });
  });
  return ways.sort((a, b) => b.start - a.start);
}

/** Units that differ; -1 where there is no choice. */
function unitsFor(day: Day, { spacing }: Begun, turn: number | undefined): readonly number[] {
  const free = day.shared.find(({ stages }) => stages.includes(turn ?? -1))?.free;
  if (free === undefined) return [START];
  return free.filter((unit, at) => {
    const before = free[at - 1];
    return before === undefined || !spacing.moments.every((from) => sameAfter(spacing, from, before, unit));
  });
}

function sameAfter(spacing: Spacing, from: number, one: number, other: number): boolean {
  return from === one || from === other || leastAfter(spacing, from, one) === leastAfter(spacing, from, other);
}

function place(day: Day, begun: Begun, part: number, load: number, unit: number): Begun | undefined {
  const { stages = [], turn } = day.parts[part] ?? {};
  let spacing: Spacing | undefined = begun.spacing;
  for (const stage of stages) {
    spacing = spacing && withStage(day, spacing, stage, load, unit);
  }
  if (spacing === undefined) return undefined;
  const placed = begun.placed.map((loads, at) => (at === part ? loads + 1 : loads));
  const units = unitsByTime(day, spacing);
  const known = onlyMoments(spacing, [
    ...needed(day, placed),
    ...units.map((free, at) => [free, freeMoment(at)] as const),
  ]);
  if (!canKeepUp(day, placed, known)) return undefined;
  const now: Turn | undefined =
    turn === undefined ? undefined : { stage: turn, load, after: begun.last[unitFreeAt(unit)] };
  const last = units.map((free) => (free === unit ? now : begun.last[unitFreeAt(free)]));
  const turns = now === undefined ? begun.turns : { turn: now, before: begun.turns };
  const next = { placed, spacing: known, atLeast: begun.atLeast, last, turns };
  return { ...next, atLeast: Math.max(begun.atLeast, leastSpan(day, next)) };
}

function withStage(day: Day, spacing: Spacing, stage: number, load: number, unit: number): Spacing | undefined {
  const { stages, longestHold } = day;
  const its = stages[stage];
  if (its === undefined) return undefined;
  const isShared = day.shared.some((machine) => machine.stages.includes(stage));
  const here = moment(day, stage, load);
  const previous = stages[stage - 1];
  const after: Distance[] = [[START, 0]];
  const before: Distance[] = [];
  if (previous === undefined) before.push([START, -longestHold]);
  else {
    after.push([moment(day, stage - 1, load), previous.stage.minutes + previous.least]);
    before.push([moment(day, stage - 1, load), -previous.stage.minutes - previous.greatest]);
  }
  if (load > 0) after.push([moment(day, stage, load - 1), 0]);
  if (isShared) after.push([unit, 0]);
  else if (load >= its.units) after.push([moment(day, stage, load - its.units), its.stage.minutes]);
  const placed = withMoment(spacing, here, after, before);
  if (placed === undefined || !isShared) return placed;
  const others = placed.moments.filter((other) => other !== unit).map((other) => [other, other] as const);
  return withMoment(onlyMoments(placed, others), unit, [[here, its.stage.minutes]]);
}

/** The units of each shared machine, the first that is free first: so named they can be exchanged. */
function unitsByTime({ shared }: Day, spacing: Spacing): readonly number[] {
  return shared.flatMap(({ free }) => [...free].sort((a, b) => startOf(spacing, a) - startOf(spacing, b)));
}

/** The moments that something still to come touches: the start, the latest loads of every stage, the loads under way. */
function needed(day: Day, placed: readonly number[]): readonly (readonly [number, number])[] {
  const { stages, parts, loads } = day;
  const touched = parts.flatMap((part, at) => {
    const count = placed[at] ?? 0;
    const last = part.stages.at(-1) ?? 0;
    const underWay = range(placed[at + 1] ?? count, count).map((load) => moment(day, last, load));
    const latest = part.stages.flatMap((stage) => {
      const back = stage === part.turn ? 1 : (stages[stage]?.units ?? 1);
      const isDone = count === loads && stage !== stages.length - 1;
      return isDone ? [] : range(Math.max(0, count - back), count).map((load) => moment(day, stage, load));
    });
    return [...underWay, ...latest];
  });
  return [START, ...[...new Set(touched)].sort((a, b) => a - b)].map((one) => [one, one] as const);
}
