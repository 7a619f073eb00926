import { exact, type Figure, found, worked } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { note, type Outcome, type Problem, problem, refuse } from "../../figure/problem.ts";
import { definition } from "../../figure/source.ts";
import { asked } from "../inputs.ts";
import { type Moment, momentAt, readTimeOfDay } from "./clock.ts";
import { type LatestTimes, latestTimes, unitsOf } from "./load-times.ts";
import { type Operation, type Operations, operationsOf } from "./operation.ts";
import { type MachineCount, type PlanRequest, planRequestProblems, type StageName } from "./plan-request.ts";

/** A stage of a load in time. A wait has no machine. */
export interface PlannedStage {
  readonly name: StageName;
  readonly machine?: string;
  /** Which of the machines of its kind, from 1. */
  readonly unit?: number;
  readonly start: Moment;
  readonly end: Moment;
}

/** A load in time, first to last stage. */
export interface PlannedLoad {
  readonly load: number;
  readonly stages: readonly PlannedStage[];
  /** How long it stands between stages that have no wait between them, min. */
  readonly standing: Figure;
  /** How long it is done before service, min. */
  readonly hold: Figure;
}

/** How long the machines of a kind are taken by a load, shared between them. */
export interface Pace {
  readonly machine: string;
  readonly count: number;
  readonly minutesPerLoad: Figure;
}

/** A day's plan. */
export interface TimePlan {
  readonly serve: Moment;
  readonly start: Moment;
  readonly loads: readonly PlannedLoad[];
  /** The kinds of machine with the minutes that each needs for a load, the slowest first. */
  readonly paces: readonly Pace[];
  /** The kind of machine that sets the pace. */
  readonly bottleneck: Pace;
  /** How long the load that is done first stands before service, min. */
  readonly longestHold: Figure;
}

/**
 * Plans the stages of every load backwards from service: the day begins as late as its machines and waits allow, and in the order
 * of work that this takes every stage is as late as it can be.
 *
 * No machine is used twice at once; every wait keeps to its limits. A wait that is longer than it need be is shown as it is. Whole
 * minutes. Where several stages share a machine and trying all orders would take too long, a note says by how much the day might
 * begin later.
 * Problems: `sheet.out-of-range`, `plan.serve-time`, `plan.open-ended`, `plan.machine-twice`, `plan.machine-not-there`,
 * `plan.stands-too-long`.
 *
 * @example timePlan({ serve: "12:15", loads: 5, stages: [{ kind: "work", name: "boil", machine: "pot", minutes: 20 }], machines: [{ name: "pot", count: 2 }] }).value.start.text // => "11:15"
 */
export function timePlan(request: PlanRequest): Outcome<Published<TimePlan>> {
  const problems = planRequestProblems(request);
  const serve = readTimeOfDay(request.serve);
  if (problems.length > 0 || serve === undefined) return refuse(...problems);
  const operations = operationsOf(request);
  const latest = latestTimes(operations, request.loads, request.longestHold ?? Number.POSITIVE_INFINITY);
  if (latest === undefined) return refuse(standsTooLong(request, operations));
  const times = bookingsOf(operations, latest, serve);
  const loads = times.map((slots, index) => plannedLoad(index + 1, slots, operations, serve));
  const paces = pacesOf(operations, request.machines);
  const [bottleneck] = paces;
  if (bottleneck === undefined) throw new RangeError("a plan without machines was let through");
  const longestHold = holdFigure("plan.longest-hold", "longest wait of a load that is done", serve, times[0]);
  const start = Math.min(...times.map((slots) => slots[0]?.start ?? serve));
  return publish(
    { serve: momentAt(serve), start: momentAt(start), loads, paces, bottleneck, longestHold },
    latest.unproved === 0 ? [] : [note("plan.not-proved", ["stages"], { minutes: latest.unproved })],
  );
}

/** A stage on a unit of its machine, whole minutes from midnight. */
interface Booking {
  readonly unit: number;
  readonly start: number;
  readonly end: number;
}

function bookingsOf(operations: Operations, { starts }: LatestTimes, serve: number): readonly (readonly Booking[])[] {
  const units = unitsOf(operations, starts);
  return starts.map((load, index) =>
    load.map((before, stage) => {
      const start = serve + before;
      return { unit: units[index]?.[stage] ?? 0, start, end: start + (operations[stage]?.stage.minutes ?? 0) };
    }),
  );
}

function plannedLoad(load: number, slots: readonly Booking[], operations: Operations, serve: number): PlannedLoad {
  const stages = operations.flatMap(({ stage, waits }, index): readonly PlannedStage[] => {
    const slot = slots[index];
    if (slot === undefined) return [];
    const { name, machine } = stage;
    const work = { name, machine, unit: slot.unit + 1, start: momentAt(slot.start), end: momentAt(slot.end) };
    return [work, ...plannedWaits(waits, slot.end, slots[index + 1]?.start ?? slot.end)];
  });
  return {
    load,
    stages,
    standing: standingFigure(load, slots, operations),
    hold: holdFigure(`load-${load}.hold`, `load ${load} done before service`, serve, slots),
  };
}

function standingFigure(load: number, slots: readonly Booking[], operations: Operations): Figure {
  const gaps = operations.flatMap(({ stage, waits }, index) => {
    const [slot, next] = [slots[index], slots[index + 1]];
    if (slot === undefined || next === undefined || waits.length > 0) return [];
    const id = `load-${load}.gap-${index + 1}`;
    const between = { id, label: `load ${load} standing after ${stage.name}`, unit: "min", places: 0 };
    return [found(between, next.start - slot.end, "the time between two stages in the plan", undefined, definition)];
  });
  const naming = { id: `load-${load}.standing`, label: `load ${load} standing between stages`, unit: "min", places: 0 };
  if (gaps.length === 0) return found(naming, 0, "every stage is followed by a wait", undefined, definition);
  return worked(naming, "sum(gaps)", { gaps }, definition);
}

/** The time between two operations, shared out: each wait its least, the rest to the first that may take it. */
function plannedWaits(waits: Operation["waits"], from: number, to: number): readonly PlannedStage[] {
  let start = from;
  let spare = to - from - waits.reduce((total, wait) => total + wait.least, 0);
  return waits.map(({ name, least, greatest = Number.POSITIVE_INFINITY }) => {
    const more = Math.min(spare, greatest - least);
    const end = start + least + more;
    const planned = { name, start: momentAt(start), end: momentAt(end) };
    start = end;
    spare -= more;
    return planned;
  });
}

function holdFigure(id: string, label: string, serve: number, slots: readonly Booking[] | undefined): Figure {
  const done = slots?.at(-1)?.end ?? serve;
  const formula = "serve - done";
  return worked({ id, label, unit: "min", places: 0 }, formula, { serve, done }, definition);
}

function pacesOf(operations: Operations, machines: readonly MachineCount[]): readonly Pace[] {
  return machines
    .map(({ name, count }) => ({ machine: name, count, minutesPerLoad: paceOf(operations, name, count) }))
    .sort((a, b) => exact(b.minutesPerLoad).comparedTo(exact(a.minutesPerLoad)));
}

function paceOf(operations: Operations, machine: string, count: number): Figure {
  const naming = { id: `pace.${machine}`, label: `minutes of a load at the ${machine}`, unit: "min", places: 1 };
  const stages = operations.flatMap(({ stage }, index) =>
    stage.machine === machine ? [{ ...stage, id: `stage-${index + 1}.minutes` }] : [],
  );
  if (stages.length === 0) return found(naming, 0, "not used by any stage", undefined, definition);
  const minutes = stages.map(({ id, name, minutes: value }) =>
    asked({ id, label: name, unit: "min", places: 0 }, value),
  );
  return worked(naming, "sum(minutes) / count", { minutes, count }, definition);
}

function standsTooLong({ loads, longestHold, machines }: PlanRequest, operations: Operations): Problem {
  const starts = latestTimes(operations, loads, Number.POSITIVE_INFINITY)?.starts[0] ?? [];
  const hold = -(starts.at(-1) ?? 0) - (operations.at(-1)?.stage.minutes ?? 0);
  const machine = pacesOf(operations, machines)[0]?.machine ?? "";
  return problem("plan.stands-too-long", ["longestHold"], { stands: hold, longest: longestHold ?? 0, machine });
}
