import { type Begun, type Day, moment, range, type SharedMachine, startOf } from "./day-shape.ts";
import { leastAfter, type Spacing } from "./spacing.ts";

/** Work that a shared machine still has to do, and the first moment at which it can begin; minutes. */
interface Waiting {
  readonly from: number;
  readonly work: number;
}

/**
 * A span that no day that begins so can fall below: that of the last load, each stage taken by itself, and of the work that the
 * shared machines still have to do.
 */
export function leastSpan(day: Day, begun: Pick<Begun, "placed" | "spacing">): number {
  const { stages, shared, loads, toEnd } = day;
  const placed = stages.map(
    (_, stage) => begun.placed[day.parts.findIndex((part) => part.stages.includes(stage))] ?? 0,
  );
  const firsts = firstStarts(day, placed, begun.spacing);
  const last = stages.reduce((sofar, { stage, units }, at) => {
    const left = loads - (placed[at] ?? 0);
    const own =
      left === 0
        ? startOf(begun.spacing, moment(day, at, loads - 1))
        : (firsts[at] ?? 0) + Math.floor((left - 1) / units) * stage.minutes;
    return Math.max(own, at === 0 ? 0 : sofar + fromTo(day, at - 1));
  }, 0);
  const byMachines = shared.flatMap((machine) => {
    const open = machine.stages.filter((stage) => (placed[stage] ?? 0) < loads);
    if (open.length === 0) return [];
    const waiting = open.flatMap((stage) => waitingAt(day, stage, placed, firsts[stage] ?? 0, begun.spacing));
    const after = Math.min(...open.map((stage) => (toEnd[stage] ?? 0) - (stages[stage]?.stage.minutes ?? 0)));
    return workDone(machine, waiting, begun.spacing) + after;
  });
  return Math.max(last + (stages.at(-1)?.stage.minutes ?? 0), ...byMachines);
}

/** From the start of a stage to the start of the next. */
function fromTo({ stages }: Day, stage: number): number {
  const its = stages[stage];
  return its === undefined ? 0 : its.stage.minutes + its.least;
}

/** The first moment at which the next load can begin each stage. */
function firstStarts(day: Day, placed: readonly number[], spacing: Spacing): readonly number[] {
  const firsts: number[] = [];
  for (const [at, { stage, units }] of day.stages.entries()) {
    const load = placed[at] ?? 0;
    const machine = day.shared.find(({ stages }) => stages.includes(at));
    const before = at === 0 ? 0 : fromTo(day, at - 1) + startBefore(day, at, load, placed, firsts, spacing);
    const own = load === 0 ? 0 : startOf(spacing, moment(day, at, load - 1));
    const unit =
      machine !== undefined
        ? Math.min(...machine.free.map((free) => startOf(spacing, free)))
        : load >= units
          ? startOf(spacing, moment(day, at, load - units)) + stage.minutes
          : 0;
    firsts.push(Math.max(before, own, unit));
  }
  return firsts;
}

function startBefore(
  day: Day,
  at: number,
  load: number,
  placed: readonly number[],
  firsts: readonly number[],
  spacing: Spacing,
): number {
  return (placed[at - 1] ?? 0) > load ? startOf(spacing, moment(day, at - 1, load)) : (firsts[at - 1] ?? 0);
}

function waitingAt(
  day: Day,
  stage: number,
  placed: readonly number[],
  first: number,
  spacing: Spacing,
): readonly Waiting[] {
  const minutes = day.stages[stage]?.stage.minutes ?? 0;
  const from = placed[stage] ?? 0;
  const underWay = stage === 0 ? from : Math.max(from, placed[stage - 1] ?? 0);
  return [
    ...range(from, underWay).map((load) => ({
      from: Math.max(first, startOf(spacing, moment(day, stage - 1, load)) + fromTo(day, stage - 1)),
      work: minutes,
    })),
    { from: first, work: (day.loads - underWay) * minutes },
  ];
}

/** When the units of a machine can have done all that waits, at the earliest. */
function workDone({ free }: SharedMachine, waiting: readonly Waiting[], spacing: Spacing): number {
  const latestFirst = [...waiting].sort((a, b) => b.from - a.from);
  let work = 0;
  let done = 0;
  for (const one of latestFirst) {
    work += one.work;
    const idle = free.reduce((total, unit) => total + Math.max(one.from, startOf(spacing, unit)), 0);
    done = Math.max(done, Math.ceil((idle + work) / free.length));
  }
  return done;
}

/**
 * Tells whether the shared machines can still take all loads under way before their waits run out: of all that is due by some
 * moment, no more work than the units have time for until then. Counted from the latest load at a stage, whenever that begins.
 */
export function canKeepUp(day: Day, placed: readonly number[], spacing: Spacing): boolean {
  return day.shared.every(({ stages, free }) => {
    const parts = day.parts.flatMap(({ turn = -1 }, part) => (stages.includes(turn) ? [{ turn, part }] : []));
    return parts.every(({ turn, part }) => {
      const latest = (placed[part] ?? 0) - 1;
      const from = moment(day, turn, latest);
      if (latest < 0 || !spacing.moments.includes(from)) return true;
      const due = parts.flatMap((one) => dueWork(day, one, placed, spacing, from)).sort((a, b) => a.end - b.end);
      const starts = free.map((unit) => leastAfter(spacing, from, unit));
      let work = 0;
      return due.every((one) => {
        work += one.minutes;
        return work <= starts.reduce((time, start) => time + Math.max(0, one.end - start), 0);
      });
    });
  });
}

function dueWork(
  { parts, stages }: Day,
  { turn, part }: { readonly turn: number; readonly part: number },
  placed: readonly number[],
  spacing: Spacing,
  from: number,
) {
  const [stage, before] = [stages[turn], stages[turn - 1]];
  if (part === 0 || parts[part] === undefined || stage === undefined || before === undefined) return [];
  const { minutes } = stage.stage;
  return range(placed[part] ?? 0, placed[part - 1] ?? 0).map((load) => {
    // The latest end, counted from that moment.
    const begun = -leastAfter(spacing, load * stages.length + turn - 1, from);
    return { minutes, end: begun + before.stage.minutes + before.greatest + minutes };
  });
}
