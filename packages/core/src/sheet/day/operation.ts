import type { PlanRequest, WaitStage, WorkStage } from "./plan-request.ts";

/** A stage at a machine, with what may stand between it and the next one. */
export interface Operation {
  readonly stage: WorkStage;
  readonly units: number;
  /** Waits after it, before the next operation. */
  readonly waits: readonly WaitStage[];
  readonly least: number;
  readonly greatest: number;
}

/** Those of a load, in the order of the work. */
export type Operations = readonly Operation[];

/** Groups the stages into operations. */
export function operationsOf({ stages, machines, longestGap }: PlanRequest): Operations {
  return stages.flatMap((stage, index) => {
    if (stage.kind === "wait") return [];
    const next = stages.findIndex((later, position) => position > index && later.kind === "work");
    const waits = stages.slice(index + 1, next < 0 ? undefined : next).filter((wait) => wait.kind === "wait");
    const units = machines.find((machine) => machine.name === stage.machine)?.count ?? 1;
    const least = waits.reduce((total, wait) => total + wait.least, 0);
    const open = longestGap ?? Number.POSITIVE_INFINITY;
    const greatest =
      waits.length === 0 ? open : waits.reduce((total, wait) => total + (wait.greatest ?? Number.POSITIVE_INFINITY), 0);
    return [{ stage, units, waits, least, greatest }];
  });
}
