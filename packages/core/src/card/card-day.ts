import { inSystem, shownGrouped, type UnitSystem } from "../figure/in-system.ts";
import { inWords } from "../figure/said.ts";
import { numberColumn, row, section, wordColumn } from "../report/build.ts";
import { loadTable, marksOf, potWater } from "../report/plan-report.ts";
import type { Cell, Section, Table } from "../report/schema.ts";
import { measureCell, words } from "../report/show.ts";
import type { DayPlan } from "../sheet/day/day-plan.ts";
import type { StageName } from "../sheet/day/plan-request.ts";

const doing: Readonly<Record<StageName, string>> = {
  weigh: "weighing",
  mix: "mixing",
  rest: "resting",
  compound: "compounding",
  relax: "resting sheets",
  roll: "rolling",
  mature: "maturing",
  cut: "cutting",
  boil: "boiling",
};

/** What the rows of minutes mean; one that is 0 for every load is left out. */
const meanings: Readonly<Record<string, string>> = {
  standing: "stands: between stages where no rest is planned",
  hold: "waits: finished, before service",
};

/** Most loads whose times stand beside each other, large enough to be read from a step away. */
const loadsBeside = 7;

/** The times of the loads, one column a load, under a few words about the day. */
export function daySection(day: DayPlan, units: UnitSystem): Section {
  const tables = turned(loadTable(day));
  const shown = new Set(tables.flatMap(({ rows }) => rows.flatMap(({ id }) => meanings[id] ?? [])));
  const said = [...marksOf(day), ...shown];
  const explained = said.length === 0 ? [] : [`${said.join("; ")}.`];
  return section(
    "loads",
    "The day",
    [...dayLines(day), ...potLines(day, units)],
    ...tables.map(({ rows, ...one }) => ({ ...one, rows: rows.map(({ cells }) => row(cells)) })),
    explained,
  );
}

/** What the pots are filled with and take. */
function potLines({ pot }: DayPlan, units: UnitSystem): readonly string[] {
  if (pot === undefined) return [];
  const water = measureCell(inSystem(potWater(pot), units)).text;
  return [`A pot: ${water} of water. Baskets of a load: ${shownGrouped(pot.baskets)}.`];
}

/** With one load nothing sets a pace, and its times say when it starts; a pace is that of the work, since the same work is done on many machines. */
function dayLines({ time }: DayPlan): readonly string[] {
  const { start, serve, bottleneck, longestHold, loads } = time;
  const waits = longestHold.value === "0" ? [] : [`waits ${longestHold.value} min for service.`];
  if (loads.length < 2) return waits.map((line) => `The load ${line}`);
  const work = loads[0]?.stages.filter(({ machine }) => machine === bottleneck.machine).map(({ name }) => doing[name]);
  const pace = work ? [`The pace is set by ${inWords(work)}.`] : [];
  const first = waits.map((line) => `The load that is done first ${line}`);
  return [[`Start at ${start.text}, serve at ${serve.text}.`, ...pace, ...first].join(" ")];
}

interface Turned extends Omit<Table, "rows"> {
  readonly rows: readonly { readonly id: string; readonly cells: readonly Cell[] }[];
}

/** One column a load and one row a stage, in as many tables as the loads need. */
function turned({ id, columns, rows }: Table): readonly Turned[] {
  const busy = columns.flatMap((column, at) =>
    at === 0 || (column.id in meanings && rows.every(({ cells }) => cells[at]?.value === "0")) ? [] : [{ column, at }],
  );
  const count = Math.ceil(rows.length / loadsBeside);
  const beside = Math.ceil(rows.length / count);
  return Array.from({ length: count }, (_, index) => {
    const loads = rows.slice(index * beside, (index + 1) * beside);
    const heads = loads.map(({ cells }) => `load ${cells[0]?.text ?? ""}`);
    return {
      kind: "table",
      id: index === 0 ? id : `${id}-${index + 1}`,
      columns: [wordColumn("stage", "begins at"), ...heads.map((head) => numberColumn(head.replace(" ", "-"), head))],
      rows: busy.map(({ column, at }) => ({
        id: column.id,
        cells: [words(column.label), ...loads.map(({ cells }) => cells[at] ?? words(""))],
      })),
    };
  });
}
