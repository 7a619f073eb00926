import { type Problem, problem } from "../../figure/problem.ts";
import { type Limits, outsideLimits } from "../inputs.ts";
import { readTimeOfDay } from "./clock.ts";

/** The stages of a load, in the order of the work. */
export type StageName = "weigh" | "mix" | "rest" | "compound" | "relax" | "roll" | "mature" | "cut" | "boil";

/** A stage that takes a machine, or a pair of hands listed as one, for whole minutes of a load. */
export interface WorkStage {
  readonly kind: "work";
  readonly name: StageName;
  readonly machine: string;
  readonly minutes: number;
}

/** A stage in which the load stands: at least and at most so many whole minutes. */
export interface WaitStage {
  readonly kind: "wait";
  readonly name: StageName;
  readonly least: number;
  readonly greatest?: number;
}

/** A stage of the day: work at a machine, or a wait. */
export type PlanStage = WorkStage | WaitStage;

/** Machines of one kind: mixers, sheeters, pots, hands. */
export interface MachineCount {
  readonly name: string;
  readonly count: number;
}

/** What a time plan is asked for. Times in whole minutes. */
export interface PlanRequest {
  /** Time of service, "12:15"; every load is done by then. */
  readonly serve: string;
  readonly loads: number;
  readonly stages: readonly PlanStage[];
  readonly machines: readonly MachineCount[];
  /** Longest a load may stand between two stages with no wait between them; no limit where it is left out. */
  readonly longestGap?: number;
  /** Longest a load that is done may stand before service; no limit where it is left out. */
  readonly longestHold?: number;
}

/** Finds what is wrong with a request before anything is planned. */
export function planRequestProblems(request: PlanRequest): readonly Problem[] {
  const { serve, loads, stages, machines } = request;
  const minutes = { unit: "min", whole: true as const, most: "10080" };
  const problems = outsideLimits([
    { path: ["loads"], value: loads, unit: "", least: "1", most: "200", whole: true },
    { path: ["longestGap"], value: request.longestGap, least: "0", ...minutes },
    { path: ["longestHold"], value: request.longestHold, least: "0", ...minutes },
    ...machines.map(({ count }, index): Limits => {
      return { path: ["machines", index, "count"], value: count, unit: "", least: "1", most: "100", whole: true };
    }),
    ...stages.flatMap((stage, index): readonly Limits[] =>
      stage.kind === "work"
        ? [{ path: ["stages", index, "minutes"], value: stage.minutes, least: "1", ...minutes }]
        : [
            { path: ["stages", index, "least"], value: stage.least, least: "0", ...minutes },
            { path: ["stages", index, "greatest"], value: stage.greatest, least: String(stage.least), ...minutes },
          ],
    ),
  ]);
  const closed = stages[0]?.kind === "work" && stages.at(-1)?.kind === "work";
  return [
    ...(readTimeOfDay(serve) === undefined ? [problem("plan.serve-time", ["serve"], { serve })] : []),
    ...problems,
    ...(closed ? [] : [problem("plan.open-ended", ["stages"], {})]),
    ...machineProblems(stages, machines),
  ];
}

function machineProblems(stages: readonly PlanStage[], machines: readonly MachineCount[]): readonly Problem[] {
  const names = machines.map((machine) => machine.name);
  const twice = names.filter((name, index) => names.indexOf(name) !== index);
  const missing = stages.flatMap((stage, index) =>
    stage.kind === "work" && !names.includes(stage.machine) ? [{ index, machine: stage.machine }] : [],
  );
  return [
    ...twice.map((name) => problem("plan.machine-twice", ["machines"], { name })),
    ...missing.map(({ index, machine }) =>
      problem("plan.machine-not-there", ["stages", index, "machine"], { machine, names }),
    ),
  ];
}
