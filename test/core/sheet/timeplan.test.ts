import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Booking } from "../../../packages/core/src/sheet/bookings.ts";
import { latestTimes, operationsOf } from "../../../packages/core/src/sheet/load-times.ts";
import type { PlanRequest, PlanStage } from "../../../packages/core/src/sheet/plan-request.ts";
import { type PlannedStage, type TimePlan, timePlan } from "../../../packages/core/src/sheet/timeplan.ts";
import { answered, codesOf } from "./answered.ts";

/** The school kitchen: one 10 kg mixer, one sheeter that also cuts, two pots. */
const school: PlanRequest = {
  serve: "12:15",
  loads: 5,
  machines: [
    { name: "scale", count: 1 },
    { name: "mixer", count: 1 },
    { name: "sheeter", count: 1 },
    { name: "pot", count: 2 },
  ],
  stages: [
    { kind: "work", name: "weigh", machine: "scale", minutes: 10 },
    { kind: "work", name: "mix", machine: "mixer", minutes: 15 },
    { kind: "wait", name: "rest", least: 20, greatest: 30 },
    { kind: "work", name: "compound", machine: "sheeter", minutes: 8 },
    { kind: "work", name: "roll", machine: "sheeter", minutes: 12 },
    { kind: "wait", name: "mature", least: 30, greatest: 120 },
    { kind: "work", name: "cut", machine: "sheeter", minutes: 6 },
    { kind: "work", name: "boil", machine: "pot", minutes: 20 },
  ],
  longestGap: 10,
};

function minutesOf({ start, end }: PlannedStage): number {
  return end.minute - start.minute;
}

/** Checks everything a plan promises; returns how many stages took a machine. */
function check(plan: TimePlan, request: PlanRequest): number {
  const taken: { readonly machine: string; readonly start: number; readonly end: number }[] = [];
  for (const { stages, hold } of plan.loads) {
    expect(stages.map(({ name }) => name)).toEqual(request.stages.map(({ name }) => name));
    for (const [index, stage] of stages.entries()) {
      const asked = request.stages[index];
      const next = stages[index + 1];
      if (asked?.kind === "work") {
        expect(minutesOf(stage)).toBe(asked.minutes);
        taken.push({ machine: `${stage.machine} ${stage.unit}`, start: stage.start.minute, end: stage.end.minute });
      } else if (asked !== undefined) {
        expect(minutesOf(stage)).toBeGreaterThanOrEqual(asked.least);
        expect(minutesOf(stage)).toBeLessThanOrEqual(asked.greatest ?? Number.POSITIVE_INFINITY);
      }
      if (next === undefined) continue;
      const gap = next.start.minute - stage.end.minute;
      expect(gap).toBeGreaterThanOrEqual(0);
      const bothWork = asked?.kind === "work" && request.stages[index + 1]?.kind === "work";
      expect(gap).toBeLessThanOrEqual(bothWork ? (request.longestGap ?? Number.POSITIVE_INFINITY) : 0);
    }
    expect(Number(hold.value)).toBe(plan.serve.minute - (stages.at(-1)?.end.minute ?? 0));
    expect(Number(hold.value)).toBeGreaterThanOrEqual(0);
  }
  for (const [index, one] of taken.entries()) {
    for (const other of taken.slice(index + 1)) {
      if (one.machine === other.machine) expect(one.end <= other.start || other.end <= one.start).toBe(true);
    }
  }
  const units = request.machines.flatMap(({ name, count }) =>
    Array.from({ length: count }, (_, i) => `${name} ${i + 1}`),
  );
  for (const { machine } of taken) expect(units).toContain(machine);
  return taken.length;
}

const machineNames = ["mixer", "sheeter", "pot"] as const;
const work: fc.Arbitrary<PlanStage> = fc.record({
  kind: fc.constant("work" as const),
  name: fc.constantFrom("mix", "roll", "cut", "boil"),
  machine: fc.constantFrom(...machineNames),
  minutes: fc.integer({ min: 1, max: 20 }),
});
const wait: fc.Arbitrary<PlanStage> = fc
  .record({ least: fc.integer({ min: 0, max: 20 }), more: fc.option(fc.integer({ min: 0, max: 15 })) })
  .map(({ least, more }) => ({
    kind: "wait",
    name: "rest",
    least,
    ...(more === null ? {} : { greatest: least + more }),
  }));
const stages = fc
  .tuple(work, fc.array(fc.oneof(work, wait), { maxLength: 5 }), work)
  .map(([first, between, last]): readonly PlanStage[] => [first, ...between, last]);
const machines = fc
  .tuple(...machineNames.map((name) => fc.record({ name: fc.constant(name), count: fc.integer({ min: 1, max: 3 }) })))
  .map((all) => [...all]);

describe("time plan", () => {
  it("uses no machine twice at once and keeps every wait within its limits", () => {
    fc.assert(
      fc.property(
        stages,
        machines,
        fc.integer({ min: 1, max: 8 }),
        fc.option(fc.integer({ min: 0, max: 20 })),
        (order, kinds, loads, gap) => {
          const request = {
            serve: "12:15",
            loads,
            stages: order,
            machines: kinds,
            ...(gap === null ? {} : { longestGap: gap }),
          };
          const plan = answered(timePlan(request));
          expect(check(plan, request)).toBe(loads * order.filter(({ kind }) => kind === "work").length);
        },
      ),
      { numRuns: 200 },
    );
  });

  it("plans the school's five loads for a quarter past twelve", () => {
    const plan = answered(timePlan(school));
    check(plan, school);
    expect(plan.serve).toEqual({ minute: 735, text: "12:15" });
    // The last load goes straight through: 20 boiled, 6 cut, 30 matured, 20 rolled, 20 rested, 15 mixed, 10 weighed.
    expect(plan.loads.at(-1)?.stages[0]?.start.text).toBe("10:14");
    // 8 + 12 + 6 minutes at one sheeter against 20 / 2 at the pots.
    expect(plan.bottleneck.machine).toBe("sheeter");
    expect(plan.bottleneck.minutesPerLoad.value).toBe("26");
    expect(plan.longestHold.value).toBe(plan.loads[0]?.hold.value);
    const starts = plan.loads.map(({ stages: all }) => all[0]?.start.minute ?? 0);
    expect(plan.start.minute).toBe(Math.min(...starts));
  });

  it("goes back over midnight", () => {
    const plan = answered(timePlan({ ...school, serve: "00:30", loads: 1 }));
    expect(plan.start.text).toBe("22:29 the day before");
  });

  it("answers two hundred loads", () => {
    expect(answered(timePlan({ ...school, loads: 200 })).loads).toHaveLength(200);
  });

  it.each([
    ["plan.serve-time", { ...school, serve: "12.15" }],
    ["plan.serve-time", { ...school, serve: "24:00" }],
    ["plan.open-ended", { ...school, stages: school.stages.slice(0, 3) }],
    ["plan.machine-not-there", { ...school, machines: school.machines.slice(1) }],
    ["plan.machine-twice", { ...school, machines: [...school.machines, { name: "pot", count: 1 }] }],
    ["plan.stands-too-long", { ...school, longestHold: 10 }],
    ["sheet.out-of-range", { ...school, loads: 1.5 }],
  ] as const)("%s", (code, request) => {
    expect(codesOf(timePlan(request))).toContain(code);
  });
});

describe("the latest times of a load", () => {
  const busy = fc.array(
    fc.tuple(fc.constantFrom(...machineNames), fc.integer({ min: -20, max: 30 }), fc.integer({ min: 1, max: 8 })),
    {
      maxLength: 6,
    },
  );
  const short = fc
    .tuple(
      fc.integer({ min: 1, max: 5 }),
      fc.integer({ min: 0, max: 4 }),
      fc.integer({ min: 0, max: 4 }),
      fc.integer({ min: 1, max: 5 }),
    )
    .map(([mix, least, more, roll]): readonly PlanStage[] => [
      { kind: "work", name: "mix", machine: "mixer", minutes: mix },
      { kind: "wait", name: "rest", least, greatest: least + more },
      { kind: "work", name: "roll", machine: "sheeter", minutes: roll },
      { kind: "work", name: "boil", machine: "pot", minutes: 3 },
    ]);

  it("are the latest of all that fit, tried minute by minute", () => {
    fc.assert(
      fc.property(short, busy, fc.integer({ min: 0, max: 6 }), (order, taken, longestGap) => {
        const booked = new Map<string, Booking[]>();
        for (const [machine, start, minutes] of taken) {
          booked.set(machine, [...(booked.get(machine) ?? []), { unit: 0, start, end: start + minutes }]);
        }
        const request = {
          serve: "00:30",
          loads: 1,
          stages: order,
          machines: machineNames.map((name) => ({ name, count: 1 })),
          longestGap,
        };
        const operations = operationsOf(request);
        const isFree = (machine: string, start: number, end: number) =>
          (booked.get(machine) ?? []).every((other) => end <= other.start || other.end <= start);
        const [mix, roll, boil] = operations;
        if (mix === undefined || roll === undefined || boil === undefined)
          throw new Error("three operations are wanted");
        let best: readonly number[] | undefined;
        for (let last = 30; last > -80 && best === undefined; last -= 1) {
          if (!isFree("pot", last - 3, last)) continue;
          for (let middle = last - 3; middle >= last - 3 - longestGap && best === undefined; middle -= 1) {
            const rolled = middle - roll.stage.minutes;
            if (!isFree("sheeter", rolled, middle)) continue;
            for (let first = rolled - mix.least; first >= rolled - mix.greatest && best === undefined; first -= 1) {
              if (isFree("mixer", first - mix.stage.minutes, first)) best = [first, middle, last];
            }
          }
        }
        expect(latestTimes(operations, booked, 30).map(({ end }) => end)).toEqual(best);
      }),
      { numRuns: 300 },
    );
  });
});
