import type { PlanRequest } from "@noodlewright/core/sheet";

interface Step {
  readonly machine: string;
  readonly minutes: number;
  readonly least: number;
  readonly greatest: number;
}

/** The shortest day, tried minute by minute; loads may overtake each other. Only for a few short stages. */
export function shortestByTrial(request: PlanRequest): number {
  for (let span = 1; ; span += 1) {
    if (fits(request, span)) return span;
  }
}

function fits(request: PlanRequest, span: number): boolean {
  const steps = stepsOf(request);
  const taken = new Map(request.machines.map(({ name }) => [name, Array.from({ length: span }, () => 0)]));
  const units = new Map(request.machines.map(({ name, count }) => [name, count]));
  const place = (load: number, at: number, from: number, to: number, first: number): boolean => {
    const step = steps[at];
    if (step === undefined) {
      const done = from;
      if (span - done > (request.longestHold ?? Number.POSITIVE_INFINITY)) return false;
      return load + 1 === request.loads || place(load + 1, 0, first, span, first);
    }
    const minutes = taken.get(step.machine) ?? [];
    for (let start = from; start <= Math.min(to, span - step.minutes); start += 1) {
      const its = minutes.slice(start, start + step.minutes);
      if (its.some((busy) => busy >= (units.get(step.machine) ?? 0))) continue;
      for (let minute = start; minute < start + step.minutes; minute += 1) minutes[minute] = (minutes[minute] ?? 0) + 1;
      const end = start + step.minutes;
      // Loads are alike: the next one begins no earlier than this one.
      const found = place(load, at + 1, end + step.least, end + step.greatest, at === 0 ? start : first);
      for (let minute = start; minute < end; minute += 1) minutes[minute] = (minutes[minute] ?? 0) - 1;
      if (found) return true;
    }
    return false;
  };
  return place(0, 0, 0, span, 0);
}

function stepsOf({ stages, longestGap = Number.POSITIVE_INFINITY }: PlanRequest): readonly Step[] {
  const steps: Step[] = [];
  for (const [index, stage] of stages.entries()) {
    if (stage.kind === "wait") continue;
    const next = stages[index + 1];
    const wait =
      next?.kind === "wait"
        ? { least: next.least, greatest: next.greatest ?? Number.POSITIVE_INFINITY }
        : { least: 0, greatest: next === undefined ? 0 : longestGap };
    steps.push({ machine: stage.machine, minutes: stage.minutes, ...wait });
  }
  return steps;
}
