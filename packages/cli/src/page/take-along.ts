import { type Report, told } from "@noodlewright/core";
import { fixedText } from "@noodlewright/core/figure";
import { type Cell, printable, renderCsv, type Table } from "@noodlewright/core/render";
import { addedUp } from "@noodlewright/core/sheet";
import { yamlLines } from "@noodlewright/core/spec";
import * as z from "zod/mini";
import type { PageData } from "./page-data.ts";
import { type State, stateSchema, weighedKey } from "./state.ts";
import { asShown, type Item, itemsOfLoad, type Today } from "./today.ts";
import { words } from "./words.ts";

/** What a saved file holds. */
const savedSchema = z.strictObject({
  noodlewright: z.literal("bench"),
  version: z.literal(1),
  key: z.string(),
  state: stateSchema,
});

/** What was entered as a file that the page opens again. */
export function savedText({ key }: PageData, state: State): string {
  return `${JSON.stringify({ noodlewright: "bench", version: 1, key, state }, undefined, 2)}\n`;
}

export type Opening = { readonly ok: true; readonly state: State } | { readonly ok: false; readonly why: string };

/** Reads a saved file. */
export function openSaved({ key }: PageData, text: string): Opening {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return { ok: false, why: words.take.wrongFile };
  }
  const reading = savedSchema.safeParse(data);
  if (!reading.success) return { ok: false, why: words.take.wrongFile };
  if (reading.data.key !== key) return { ok: false, why: words.take.otherSpec };
  return { ok: true, state: reading.data.state };
}

/** The spec as it is today, as a file that the command reads. */
export function specYaml({ spec }: Today): string {
  return `${Object.entries(spec ?? {})
    .flatMap(([key, value]) => yamlLines(key, value, 0))
    .join("\n")}\n`;
}

/** What a record is of, beside what was entered. */
interface Occasion {
  readonly data: PageData;
  readonly state: State;
  readonly today: Today;
  readonly now: Date;
}

const cell = (text: string | undefined): Cell => ({ text: printable(text ?? "") });
const number = (text: string): Cell => ({ text, value: text });

function table(id: string, heads: readonly string[], rows: readonly (readonly Cell[])[]): Table {
  return {
    kind: "table",
    id,
    columns: heads.map((label, index) => {
      const numeric = rows.some((cells) => cells[index]?.value !== undefined);
      return { id: `column-${index}`, label, align: numeric ? "right" : "left" };
    }),
    rows: rows.map((cells) => ({ role: "item", cells })),
  };
}

/** Two digits for a day and a time of this device, as ISO 8601 writes them. */
export function dayOf(at: Date): string {
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/** A time of day of this device. */
export function timeOf(at: Date): string {
  return `${two(at.getHours())}:${two(at.getMinutes())}`;
}

function two(value: number): string {
  return String(value).padStart(2, "0");
}

/** Numbers of the loads of a batch. */
export function loadsOf({ batch }: Today): number {
  return batch === undefined ? 1 : Number(batch.value.loads.count.value);
}

/** Loads at which anything was weighed or written down. */
function touchedLoads({ state, today }: Occasion): readonly number[] {
  const all = Array.from({ length: loadsOf(today) }, (_, index) => index + 1);
  const touched = all.filter(
    (load) =>
      today.items.some(({ id }) => state.weighed[weighedKey(load, id)] !== undefined) ||
      Object.values(state.doughs[load] ?? {}).some((one) => one !== ""),
  );
  return touched.length === 0 ? all.slice(0, 1) : touched;
}

/** The mass in the bowl of a load, g. */
function inBowl({ state, today }: Occasion, load: number): string {
  const masses = today.items.flatMap(({ id, kind }) =>
    kind === "dusting" ? [] : [state.weighed[weighedKey(load, id)]?.grams ?? "0"],
  );
  return fixedText(addedUp(masses), 2);
}

function differences({ state }: Occasion): readonly string[] {
  return state.entries.map(({ path, text, unit }) =>
    `${path.map((step) => (typeof step === "number" ? step + 1 : step)).join(" ")}: ${text} ${unit === "number" ? "" : unit}`.trim(),
  );
}

const checksumOf = ({ data }: Occasion): string => data.files[0]?.checksum ?? "";

/** Every dough as a row, for a spreadsheet. */
export function doughRows(occasion: Occasion): string {
  const { state, today, now } = occasion;
  const name = today.noodle?.formula.name ?? "";
  const said = differences(occasion).join("; ");
  const rows = touchedLoads(occasion).map((load): readonly Cell[] => {
    const { temperature, thickness, cooked, score, note, initials } = state.doughs[load] ?? {};
    return [
      cell(dayOf(now)),
      cell(name),
      cell(checksumOf(occasion)),
      number(String(load)),
      number(fixedText(today.batch?.value.loadTotal.value ?? "0", 2)),
      number(inBowl(occasion, load)),
      ...[temperature, thickness, cooked, score].map(cell),
      cell(note),
      cell(initials),
      cell(said),
    ];
  });
  const { record, notes } = words;
  const heads = [
    record.date,
    record.noodle,
    record.spec,
    record.load,
    record.listed,
    record.inBowl,
    notes.temperature,
    notes.thickness,
    notes.cooked,
    notes.score,
    notes.note,
    notes.initials,
    record.differs,
  ];
  const printed = renderCsv(reportOf(occasion, [{ heading: "", blocks: [table("doughs", heads, rows)] }]), "doughs");
  return printed.ok ? printed.text : told(printed.problem).found;
}

/** The batch record: what went into each load, when, of which lot, and what became of it. */
export function batchRecord(occasion: Occasion): Report {
  const { data, state, today, now } = occasion;
  const { record, notes } = words;
  const loads = touchedLoads(occasion).map((load) => {
    const rows = itemsOfLoad(today, state, load).map((item) => weighedRow(item, state, load));
    const unit = today.items[0]?.unit ?? "g";
    const heads = [record.ingredient, record.wanted(unit), record.weighed(unit), record.lot, record.time];
    const { temperature, thickness, cooked, score, note, initials } = state.doughs[load] ?? {};
    const written: readonly (readonly [string, string | undefined])[] = [
      [notes.temperature, temperature],
      [notes.thickness, thickness],
      [notes.cooked, cooked],
      [notes.score, score],
      [notes.note, note],
      [notes.initials, initials],
    ];
    const lines = written.flatMap(([label, text]) => (text === undefined || text === "" ? [] : [`${label}: ${text}`]));
    return {
      heading: record.weights(load),
      blocks: [table(`load-${load}`, heads, rows), { kind: "text" as const, lines: lines.map(printable) }],
    };
  });
  const files = data.files.map(({ name, checksum }) => `${name} ${checksum}`).join(", ");
  const changed = differences(occasion);
  const about = [
    `${dayOf(now)}, ${timeOf(now)}`,
    record.checksum(files),
    ...(data.said === "" ? [] : [words.changed(data.said)]),
  ];
  return reportOf(occasion, [
    { heading: record.date, blocks: [{ kind: "text", lines: about.map(printable) }] },
    ...(changed.length === 0
      ? []
      : [{ heading: record.differs, blocks: [{ kind: "text" as const, lines: changed.map(printable) }] }]),
    ...loads,
  ]);
}

function weighedRow(item: Item, { weighed, lots }: State, load: number): readonly Cell[] {
  const entry = weighed[weighedKey(load, item.id)];
  return [
    cell(item.name),
    { text: asShown(item), value: item.mass.value },
    entry === undefined ? cell("–") : { text: asShown(item, entry.grams), value: entry.grams },
    cell(lots[item.id]),
    cell(entry === undefined ? "" : timeOf(new Date(entry.at))),
  ];
}

interface Part {
  readonly heading: string;
  readonly blocks: Report["sections"][number]["blocks"];
}

function reportOf({ today }: Occasion, parts: readonly Part[]): Report {
  return {
    noodlewright: "report",
    version: 2,
    command: "page",
    title: words.record.title(printable(today.noodle?.formula.name ?? "")),
    main: "doughs",
    sections: parts.map((part, index) => ({ id: `part-${index}`, ...part })),
    figures: {},
    notes: [],
    cautions: [],
  };
}
