import { type Booking, latestFree } from "./bookings.ts";
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

/** Groups the stages into operations. */
export function operationsOf({ stages, machines, longestGap }: PlanRequest): readonly Operation[] {
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

/**
 * Finds the latest times at which a load can go through its operations and be done by a bound, beside what is booked.
 *
 * It books every operation as late as it can be, from the last to the first. Where a load would then stand too long before an
 * operation, that operation is moved earlier and all is done again. Times only ever move earlier, and each stands where it
 * would be too late without the move, so what is found is the latest of all that fits.
 */
export function latestTimes(
  operations: readonly Operation[],
  booked: ReadonlyMap<string, readonly Booking[]>,
  bound: number,
): readonly Booking[] {
  const latestEnds = operations.map(() => bound);
  for (;;) {
    const slots = placed(operations, booked, latestEnds);
    const early = operations.findIndex((operation, index) => {
      const [slot, next] = [slots[index], slots[index + 1]];
      return slot !== undefined && next !== undefined && next.start - slot.end > operation.greatest;
    });
    const [slot, late, next] = [slots[early], operations[early], operations[early + 1]];
    if (slot === undefined || late === undefined || next === undefined) return slots;
    latestEnds[early + 1] = slot.end + late.greatest + next.stage.minutes;
  }
}

function placed(
  operations: readonly Operation[],
  booked: ReadonlyMap<string, readonly Booking[]>,
  latestEnds: readonly number[],
): readonly Booking[] {
  const slots: Booking[] = [];
  let bound = Number.POSITIVE_INFINITY;
  for (const [fromLast, { stage, units, least }] of [...operations].reverse().entries()) {
    const own = latestEnds[operations.length - 1 - fromLast] ?? bound;
    const slot = latestFree(booked.get(stage.machine) ?? [], units, stage.minutes, Math.min(own, bound - least));
    slots.unshift(slot);
    bound = slot.start;
  }
  return slots;
}
