import { type PlannedStage, type PlanRequest, type PlanStage, type TimePlan, timePlan } from "@noodlewright/core/sheet";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { always } from "../../../always.ts";
import { answered, codesOf, toldOf } from "../../told-of.ts";
import { shortestByTrial } from "../day-brute-force.ts";
import { DaySolver } from "../day-solver.ts";

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
    always(
      25,
      [stages, machines, fc.integer({ min: 1, max: 5 }), fc.option(fc.integer({ min: 0, max: 20 }))],
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

  it("says what is not ruled out where stages take turns at several machines of a kind in too many ways", () => {
    const many = { ...school, loads: 12, machines: school.machines.map((kind) => ({ ...kind, count: 2 })) };
    const outcome = timePlan(many);
    expect(check(answered(outcome), many)).toBe(12 * 6);
    expect(outcome.ok && outcome.notes.map(({ code }) => code)).toEqual(["plan.not-proved"]);
  });

  it("adds up how long a load stands between stages, worked out by hand", () => {
    const plan = answered(
      timePlan({
        serve: "12:15",
        loads: 2,
        machines: ["mixer", "sheeter", "slitter"].map((name) => ({ name, count: 1 })),
        stages: [
          { kind: "work", name: "mix", machine: "mixer", minutes: 12 },
          { kind: "work", name: "roll", machine: "sheeter", minutes: 10 },
          { kind: "work", name: "cut", machine: "slitter", minutes: 4 },
        ],
      }),
    );
    const times = plan.loads.map(({ stages: all }) => all.map(({ start, end }) => `${start.text} ${end.text}`));
    // the second load goes straight through; the first gives way to it at every machine: 2 min before the rolls, 6 after
    expect(times).toEqual([
      ["11:37 11:49", "11:51 12:01", "12:07 12:11"],
      ["11:49 12:01", "12:01 12:11", "12:11 12:15"],
    ]);
    expect(plan.loads.map(({ standing }) => standing.value)).toEqual(["8", "0"]);
    expect(plan.loads.map(({ hold }) => hold.value)).toEqual(["4", "0"]);
    expect(plan.loads.map(({ stages: all }) => all.map(({ unit }) => unit))).toEqual([
      [1, 1, 1],
      [1, 1, 1],
    ]);
    expect([plan.start.text, plan.longestHold.value]).toEqual(["11:37", "4"]);
    expect(plan.paces.map(({ machine, minutesPerLoad }) => `${machine} ${minutesPerLoad.value}`)).toEqual([
      "mixer 12",
      "sheeter 10",
      "slitter 4",
    ]);
  });

  it("does not count a stated wait as standing, and gives the rest of it to the first wait that may take it", () => {
    const planOf = (mixing: number) =>
      answered(
        timePlan({
          serve: "12:15",
          loads: 2,
          machines: ["mixer", "slitter"].map((name) => ({ name, count: 1 })),
          stages: [
            { kind: "work", name: "mix", machine: "mixer", minutes: mixing },
            { kind: "wait", name: "rest", least: 10, greatest: 13 },
            { kind: "wait", name: "mature", least: 20, greatest: 60 },
            { kind: "work", name: "cut", machine: "slitter", minutes: 5 },
          ],
        }),
      );
    // the first cut ends as the second begins, 12:10; nothing has to stand
    expect(planOf(5).loads.map(({ standing }) => standing.value)).toEqual(["0", "0"]);
    const slow = planOf(12);
    // second: cut 12:10, mature 11:50, rest 11:40, mix 11:28; first: mixed by 11:28, cut from 12:05, 37 min for 10 + 20: rest 13
    expect(slow.loads[0]?.stages.map(({ start }) => start.text)).toEqual(["11:16", "11:28", "11:41", "12:05"]);
    expect(slow.loads.map(({ standing }) => standing.value)).toEqual(["0", "0"]);
  });

  it("says how long the first load would stand in the latest order there is", () => {
    // four rollings of 10 min at one sheeter: the first is done 30 min before service
    const outcome = timePlan({
      serve: "12:15",
      loads: 4,
      longestHold: 20,
      machines: [{ name: "sheeter", count: 1 }],
      stages: [{ kind: "work", name: "roll", machine: "sheeter", minutes: 10 }],
    });
    const [problem] = toldOf(outcome);
    expect([problem?.found, problem?.expected]).toEqual([
      "no order of work that keeps the wait short enough: in the one that begins latest the first load stands 30 min before service",
      "at most 20 min",
    ]);
  });

  it("goes back over midnight", () => {
    const plan = answered(timePlan({ ...school, serve: "00:30", loads: 1 }));
    expect(plan.start.text).toBe("22:29 the day before");
  });

  it("answers two hundred loads", () => {
    expect(spanOf({ ...school, loads: 200 })).toBeGreaterThan(200 * 26);
  });
});

function spanOf(request: PlanRequest): number {
  const outcome = timePlan(request);
  expect(outcome.ok && outcome.notes).toEqual([]);
  const plan = answered(outcome);
  check(plan, request);
  return plan.serve.minute - plan.start.minute;
}

describe("the day begins as late as it can", () => {
  const minutes = fc.integer({ min: 1, max: 3 });
  const wait = fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 2 }));
  const turns = fc.tuple(
    fc.tuple(minutes, minutes, minutes),
    wait,
    fc.constantFrom(
      ["mixer", "sheeter", "sheeter"],
      ["sheeter", "mixer", "sheeter"],
      ["sheeter", "sheeter", "sheeter"],
    ),
    fc.constantFrom(1, 2),
    fc.integer({ min: 1, max: 3 }),
    fc.constantFrom(undefined, 0, 2),
  );

  it("by trial of every minute, loads overtaking or not", () => {
    always(
      60,
      [turns],
      ([[mix, roll, cut], [least, more], [first = "", second = "", third = ""], count, loads, gap]) => {
        const request: PlanRequest = {
          serve: "12:15",
          loads,
          machines: ["mixer", "sheeter"].map((name) => ({ name, count })),
          stages: [
            { kind: "work", name: "mix", machine: first, minutes: mix },
            { kind: "wait", name: "rest", least, greatest: least + more },
            { kind: "work", name: "roll", machine: second, minutes: roll },
            { kind: "work", name: "cut", machine: third, minutes: cut },
          ],
          ...(gap !== undefined && { longestGap: gap }),
        };
        expect(spanOf(request)).toBe(shortestByTrial(request));
      },
    );
  });

  it("keeps to the longest hold wherever an order does, by trial", () => {
    const request = (longestHold: number): PlanRequest => ({
      serve: "12:15",
      loads: 3,
      longestHold,
      machines: [{ name: "sheeter", count: 1 }],
      stages: [
        { kind: "work", name: "roll", machine: "sheeter", minutes: 3 },
        { kind: "wait", name: "mature", least: 2, greatest: 9 },
        { kind: "work", name: "cut", machine: "sheeter", minutes: 2 },
      ],
    });
    // Three cuts of 2 min one after the other: the first load waits for the two others.
    expect(spanOf(request(4))).toBe(shortestByTrial(request(4)));
    expect(codesOf(timePlan(request(3)))).toEqual(["plan.stands-too-long"]);
  });

  describe("by an independent solver", () => {
    let solver: DaySolver;
    beforeAll(async () => {
      solver = await DaySolver.load();
    });

    it("when the stages of four loads take turns at the sheeter", () => {
      const request: PlanRequest = { ...school, loads: 4 };
      expect(spanOf(request)).toBe(solver.shortest(request));
    });

    it("on a large day, a machine for every stage", () => {
      const request: PlanRequest = {
        ...school,
        loads: 80,
        machines: [...school.machines, { name: "compounder", count: 2 }, { name: "slitter", count: 1 }],
        stages: school.stages.map((stage) => {
          const own = { compound: "compounder", cut: "slitter" };
          return stage.kind === "work" && (stage.name === "compound" || stage.name === "cut")
            ? { ...stage, machine: own[stage.name] }
            : stage;
        }),
      };
      expect(spanOf(request)).toBe(solver.shortest(request));
    });
  });
});
