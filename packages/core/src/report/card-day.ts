import type { DayPlan } from "../sheet/day-plan.ts";
import type { StageName } from "../sheet/plan-request.ts";
import { section } from "./build.ts";
import type { Block, Report, Section, Table } from "./schema.ts";

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

/** What the columns of minutes mean; one that is 0 for every load is left out. */
const meanings: Readonly<Record<string, string>> = {
  standing: "stands: between stages where no rest is planned",
  hold: "waits: finished, before service",
};

/** The times of the loads under a few words about the day. */
export function daySection(plan: Report, day: DayPlan): Section {
  const blocks = plan.sections.find(({ id }) => id === "loads")?.blocks ?? [];
  const tables = blocks.filter((block) => block.kind === "table").map(withoutIdleColumns);
  const shown = tables.flatMap(({ columns }) => columns.flatMap(({ id }) => meanings[id] ?? []));
  const explained: Block = { kind: "text", lines: shown.length === 0 ? [] : [`${shown.join("; ")}.`] };
  return section("loads", "The day", { kind: "text", lines: [dayLine(day)] }, ...tables, explained);
}

/** With one load nothing sets a pace; a pace is that of the work, since the same work is done on many machines. */
function dayLine({ time }: DayPlan): string {
  const { start, serve, bottleneck, longestHold, loads } = time;
  const several = loads.length > 1;
  const work = loads[0]?.stages.filter(({ machine }) => machine === bottleneck.machine).map(({ name }) => doing[name]);
  const first = several ? "The load that is done first" : "The load";
  return [
    `Start at ${start.text}, serve at ${serve.text}.`,
    ...(several && work ? [`The pace is set by ${inWords(work)}.`] : []),
    ...(longestHold.value === "0" ? [] : [`${first} waits ${longestHold.value} min for service.`]),
  ].join(" ");
}

function inWords(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

function withoutIdleColumns(whole: Table): Table {
  const { columns, rows } = whole;
  const kept = columns.flatMap(({ id }, at) =>
    id in meanings && rows.every(({ cells }) => cells[at]?.value === "0") ? [] : [at],
  );
  const pick = <T>(list: readonly T[]): readonly T[] => list.filter((_, at) => kept.includes(at));
  return { ...whole, columns: pick(columns), rows: rows.map((one) => ({ ...one, cells: pick(one.cells) })) };
}
