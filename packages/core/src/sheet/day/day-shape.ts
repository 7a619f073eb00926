import type { Operations } from "./operation.ts";
import { leastAfter, type Spacing } from "./spacing.ts";

/** A load at a stage that shares its machine, and the turn before it on the same unit. Loads count from 0. */
export interface Turn {
  readonly stage: number;
  readonly load: number;
  readonly after: Turn | undefined;
}

/** What the search goes by: stages with their machines, cut into parts that each hold one stage at a shared machine. */
export interface Day {
  readonly stages: Operations;
  readonly loads: number;
  readonly longestHold: number;
  readonly parts: readonly Part[];
  readonly shared: readonly SharedMachine[];
  /** Least minutes from the start of a stage to the end of the load. */
  readonly toEnd: readonly number[];
}

export interface Part {
  readonly stages: readonly number[];
  /** The stage at the shared machine; none where no machine is shared. */
  readonly turn: number | undefined;
}

export interface SharedMachine {
  readonly stages: readonly number[];
  /** Moments at which its units are free. */
  readonly free: readonly number[];
}

/** How far a day is put in order. */
export interface Begun {
  /** Loads placed of every part. */
  readonly placed: readonly number[];
  readonly spacing: Spacing;
  /** A span below which nothing that begins so ends. */
  readonly atLeast: number;
  /** The last turn on every unit of the shared machines. */
  readonly last: readonly (Turn | undefined)[];
  readonly turns: Turns | undefined;
}

export interface Turns {
  readonly turn: Turn;
  readonly before: Turns | undefined;
}

/** The moment of service, counted from backwards. */
export const START = -1;

/** Cuts the stages of a load, the last one first, into parts. */
export function dayOf(stages: Operations, loads: number, longestHold: number): Day {
  const machines = [...new Set(stages.map(({ stage }) => stage.machine))];
  let units = 0;
  const shared = machines.flatMap((name): readonly SharedMachine[] => {
    const its = stages.flatMap(({ stage }, at) => (stage.machine === name ? [at] : []));
    if (its.length < 2) return [];
    const free = Array.from({ length: stages[its[0] ?? 0]?.units ?? 1 }, (_, unit) => freeMoment(units + unit));
    units += free.length;
    return [{ stages: its, free }];
  });
  const turns = shared.flatMap(({ stages: its }) => its).sort((a, b) => a - b);
  const parts = turns.map((turn, index): Part => {
    const from = index === 0 ? 0 : turn;
    return { turn, stages: range(from, turns[index + 1] ?? stages.length) };
  });
  const toEnd = stages.map((_, at) =>
    stages.slice(at).reduce((total, { stage, least }, index) => {
      return total + stage.minutes + (at + index === stages.length - 1 ? 0 : least);
    }, 0),
  );
  return {
    stages,
    loads,
    longestHold,
    parts: parts.length > 0 ? parts : [{ turn: undefined, stages: range(0, stages.length) }],
    shared,
    toEnd,
  };
}

/** The whole numbers from one to below another. */
export function range(from: number, to: number): readonly number[] {
  return Array.from({ length: to - from }, (_, index) => from + index);
}

/** The moment at which a unit of a shared machine is free. */
export function freeMoment(unit: number): number {
  return START - 1 - unit;
}

/** The unit that is free at a moment. */
export function unitFreeAt(free: number): number {
  return START - 1 - free;
}

/** The moment at which a load begins a stage. */
export function moment({ stages }: Day, stage: number, load: number): number {
  return load * stages.length + stage;
}

/** How long after the start a moment is at the least. */
export function startOf(spacing: Spacing, of: number): number {
  return leastAfter(spacing, START, of);
}
