import type { Batch } from "../batch/batch.ts";
import type { Figure } from "../figure/figure.ts";
import { inUnit } from "../figure/in-system.ts";
import { note } from "../figure/problem.ts";
import { told } from "../figure/told.ts";
import type { Formula } from "../formula/formula.ts";
import { sheetCautions } from "../sheet/cautions.ts";
import { daysBefore, type Moment } from "../sheet/day/clock.ts";
import type { DayPlan, PotPlan } from "../sheet/day/day-plan.ts";
import type { PlannedStage } from "../sheet/day/timeplan.ts";
import { figureBlock, listing, numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import type { Cell, Report, Table, Telling } from "./schema.ts";
import { figureCell, timeCell, words } from "./show.ts";

/** Tells a day: when each load begins each stage, which machine sets the pace, how long loads stand, what the pots do. */
export function planReport(
  formula: Formula,
  batch: Batch,
  plan: DayPlan,
  { notes, units = "metric" }: Telling,
): Report {
  const { pot } = plan;
  const dusting = batch.dusting ? [batch.dusting.load, batch.dusting.batch] : [];
  return report({
    command: "plan",
    title: formula.name,
    main: "loads",
    sections: [
      section("day", "The day", dayLines(plan)),
      section("loads", "Loads, by the time each stage begins", loadTable(plan), [
        `${[...marksOf(plan), meanings].join("; ")}.`,
      ]),
      section("units", "Which of the machines", unitTable(plan)),
      section("machines", "Machines", machineTable(plan)),
      section(
        "pot",
        "A pot and a basket",
        pot && figureBlock([pot.baskets, potWater(pot), pot.drop, pot.recovery], units),
      ),
      section("dusting", "Dusting starch", figureBlock(dusting, units)),
    ],
    figures: [...Object.values(plan.graph), ...dusting],
    from: [plan, batch, formula],
    units,
    notes: [...notes, ...(batch.dusting ? [] : [noDusting])],
    cautions: [
      ...formulaCautions(formula),
      ...sheetCautions(["rolls", "cutter", "dust", "pot", "standing-dough", "packed"]).map(told),
    ],
  });
}

const meanings = "stands: between stages where no rest is planned; waits: finished, before service";

const noDusting = note("plan.no-dusting", ["dusting"], {});

function dayLines({ time, loads }: DayPlan): readonly string[] {
  const { start, serve, bottleneck, longestHold } = time;
  const one = loads.value === "1";
  return [
    `Start at ${start.text}, serve at ${serve.text}: ${one ? "1 load" : `${loads.value} loads`}.`,
    ...(one ? [] : [`The ${bottleneck.machine} sets the pace.`]),
    ...(one && longestHold.value === "0"
      ? []
      : [`${one ? "It" : "The load that is done first"} waits ${longestHold.value} min for service.`]),
  ];
}

/** Pot water is filled in by volume: cold, 1 kg of it is 1 L. */
export function potWater({ water }: PotPlan): Figure {
  return { ...inUnit(water, "kg", 0), unit: "L" };
}

/** A time with a mark for each day that it is before that of service. */
function markedTime(moment: Moment): Cell {
  return { ...timeCell(moment), text: `${moment.text.slice(0, 5)}${mark.repeat(daysBefore(moment))}` };
}

const mark = "*";

/** What the marks mean that stand beside times of a plan. */
export function marksOf({ time }: DayPlan): readonly string[] {
  const days = new Set(time.loads.flatMap(({ stages }) => stages.map(({ start }) => daysBefore(start))));
  return [...days]
    .filter((count) => count > 0)
    .toSorted((a, b) => a - b)
    .map((count) => `${mark.repeat(count)}: ${count === 1 ? "the day before" : `${count} days before`}`);
}

/** When each load begins each stage. */
export function loadTable({ time }: DayPlan): Table {
  const stages = time.loads[0]?.stages ?? [];
  return table(
    "loads",
    [
      wordColumn("load", "load"),
      ...stages.map(({ name }) => wordColumn(name, name)),
      wordColumn("done", "done"),
      numberColumn("standing", "stands, min"),
      numberColumn("hold", "waits, min"),
    ],
    time.loads.map((load) =>
      row([
        String(load.load),
        ...load.stages.map(({ start }) => markedTime(start)),
        ...load.stages.slice(-1).map(({ end }) => markedTime(end)),
        figureCell(load.standing),
        figureCell(load.hold),
      ]),
    ),
  );
}

/** Which of the machines of a kind takes each load, where there are several; apart from the times, which need the width. */
function unitTable({ time }: DayPlan): Table {
  const several = new Set(time.paces.filter(({ count }) => count > 1).map(({ machine }) => machine));
  const isNumbered = ({ machine }: PlannedStage) => machine !== undefined && several.has(machine);
  const stages = (time.loads[0]?.stages ?? []).filter(isNumbered);
  return table(
    "units",
    [wordColumn("load", "load"), ...stages.map(({ name, machine }) => wordColumn(name, `${name}: ${machine}`))],
    stages.length === 0
      ? []
      : time.loads.map(({ load, stages: its }) =>
          row([String(load), ...its.filter(isNumbered).map(({ unit }) => words(String(unit)))]),
        ),
  );
}

function machineTable({ time }: DayPlan): Table {
  return listing("machines", time.paces, [
    [wordColumn("machine", "machine"), ({ machine }) => machine],
    [wordColumn("number", "number"), ({ count }) => String(count)],
    [numberColumn("minutes", "min for a load"), ({ minutesPerLoad }) => figureCell(minutesPerLoad)],
  ]);
}
