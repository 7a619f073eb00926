import { type Report, told } from "@noodlewright/core";
import { fixedText } from "@noodlewright/core/figure";
import { type Cell, printable, renderCsv, type Table } from "@noodlewright/core/render";
import { yamlLines } from "@noodlewright/core/spec";
import type { Answers, Item } from "./answers.ts";
import { dayOf, onDay, secondOf, timeOf } from "./clock.ts";
import { differences } from "./differences.ts";
import { asShown, asWeighed, doughOf, itemsOfLoad, listOfLoad, mendOf, touchedLoads, weighedOf } from "./items.ts";
import { type noted, readNoted } from "./numbers.ts";
import { degrees, noteLabel, type PageData } from "./page-data.ts";
import { type State, startOf, stepsOf, weighedKey, weightsOf } from "./state.ts";
import { words } from "./words.ts";

/** The spec as it is today, as a file that the command reads. */
export function specYaml(spec: unknown): string {
  return `${Object.entries(spec ?? {})
    .flatMap(([key, value]) => yamlLines(key, value, 0))
    .join("\n")}\n`;
}

/** What a record is of, beside what was entered. */
interface Occasion {
  readonly data: PageData;
  readonly state: State;
  readonly today: Answers;
  readonly now: Date;
}

const cell = (text: string | undefined): Cell => ({ text: printable(text ?? "") });
const number = (text: string): Cell => ({ text, value: text });

/** What is written down of a dough: numbers, then words. */
const measured = ["temperature", "thickness", "cooked", "score"] as const;
const inWords = ["note", "initials"] as const;

/** A number that was noted, with a point; what is none stays as it was written. */
function notedCell(key: keyof typeof noted, typed = "", data: PageData): Cell {
  const reading = readNoted(key, typed, degrees(data));
  return reading.ok ? number(reading.number) : cell(typed);
}

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

const itemsOf = ({ loads }: Answers): readonly Item[] => loads?.items ?? [];

/** Loads of which there is something to tell; the first where there is nothing. */
function loadsTold({ state }: Occasion): readonly number[] {
  const touched = touchedLoads(state);
  return touched.length === 0 ? [1] : touched;
}

/** What differed from the spec when a load was weighed, with the time of each change between; today where nothing was. */
function differed({ data, state, today }: Occasion, load: number): readonly string[] {
  const { record } = words;
  const weights = weightsOf(state, load).map(({ at, differs = [record.differsUnknown] }) => ({ at, differs }));
  const [first = { differs: differences(data.spec, today.spec, state) }, ...later] = weights.filter(
    ({ differs }, index) => differs.join("; ") !== weights[index - 1]?.differs.join("; "),
  );
  return [
    ...first.differs,
    ...later.map(({ at, differs }) => record.differsFrom(timeOf(new Date(at)), differs.join(", "))),
  ];
}

/** The amounts that were found when a load was weighed; those of today where nothing was. */
function foundFor({ state, today }: Occasion, load: number): readonly string[] {
  const weights = weightsOf(state, load);
  return weights.length === 0 ? today.found : [...new Set(weights.flatMap(({ found = [] }) => found))];
}

/** The day on which the first of a load was weighed or timed; that of today where nothing was. */
function dayOfLoad({ state, now }: Occasion, load: number): string {
  const moments = [...weightsOf(state, load).map(({ at }) => at), ...stepsOf(state, load).map(startOf)];
  return dayOf(moments.length === 0 ? now : new Date(Math.min(...moments)));
}

const checksumOf = ({ data }: Occasion): string => data.files[0]?.checksum ?? "";

/** Every dough as a row, for a spreadsheet. */
export function doughRows(occasion: Occasion): string {
  const { data, state, today } = occasion;
  const { record } = words;
  const timed = [...new Set(loadsTold(occasion).flatMap((load) => stepsOf(state, load).map(({ label }) => label)))];
  const rows = loadsTold(occasion).map((load): readonly (readonly [string, Cell])[] => {
    const day = dayOfLoad(occasion, load);
    const dough = state.doughs[load] ?? {};
    const mass = (items: readonly Item[]): Cell => number(fixedText(doughOf(items), 2));
    const moment = (at: number | undefined): Cell => cell(at === undefined ? "" : onDay(day, at, secondOf));
    return [
      [record.date, cell(day)],
      [record.noodle, cell(today.name)],
      [record.spec, cell(checksumOf(occasion))],
      [record.load, number(String(load))],
      [record.listed, mass(itemsOfLoad(itemsOf(today), state, load))],
      [record.inBowl, mass(weighedOf(state, load))],
      ...measured.map((key) => [noteLabel(key, data), notedCell(key, dough[key], data)] as const),
      ...inWords.map((key) => [noteLabel(key, data), cell(dough[key])] as const),
      [record.differs, cell(differed(occasion, load).join("; "))],
      [record.mended, cell(mendedText(occasion, load))],
      ...timed.flatMap((label) => {
        const steps = stepsOf(state, load).filter((one) => one.label === label);
        const [first] = steps;
        return [
          [record.stepBegan(label), moment(first && startOf(first))] as const,
          [record.stepEnded(label), moment(steps.at(-1)?.ended)] as const,
        ];
      }),
    ];
  });
  const heads = rows[0]?.map(([head]) => head) ?? [];
  const cells = rows.map((row) => row.map(([, one]) => one));
  const doughs = table("doughs", heads, cells);
  const printed = renderCsv(reportOf(occasion, [{ heading: "", blocks: [doughs] }]), "doughs");
  return printed.ok ? printed.text : told(printed.problem).found;
}

/** The batch record: what went into each load, when, of which lot, and what became of it. */
export function batchRecord(occasion: Occasion): Report {
  const { data, state, today, now } = occasion;
  const { record } = words;
  const days = [...new Set(loadsTold(occasion).map((load) => dayOfLoad(occasion, load)))];
  const loads = loadsTold(occasion).map((load) => {
    const day = dayOfLoad(occasion, load);
    const listed = listOfLoad(itemsOf(today), state, load);
    const told = [...listed, ...weighedOf(state, load).filter(({ id }) => listed.every((item) => item.id !== id))];
    const mend = mendOf(itemsOf(today), state, load);
    const mended = mend === "holds" ? itemsOfLoad(itemsOf(today), state, load) : [];
    const rows = told.map((item, index) => {
      return weighedRow(item, mend === "holds" ? (mended[index] ?? item) : undefined, state, load, day);
    });
    const unit = told[0]?.unit ?? "g";
    const heads = [
      record.ingredient,
      record.wanted(unit),
      ...(mend === "holds" ? [record.mendedTo(unit)] : []),
      record.weighed(unit),
      record.lot,
      record.time,
    ];
    const dough = state.doughs[load] ?? {};
    const lines = [
      ...differed(occasion, load).map((text) => `${record.differs}: ${text}`),
      ...foundFor(occasion, load),
      ...{ none: [], holds: [words.weigh.mended], void: [record.mendVoid] }[mend],
      ...[...measured, ...inWords].flatMap((key) => (dough[key] ? [`${noteLabel(key, data)}: ${dough[key]}`] : [])),
    ];
    return {
      heading: days.length > 1 ? `${record.weights(load)}, ${day}` : record.weights(load),
      blocks: [
        table(`load-${load}`, heads, rows),
        ...stepsTable(state, load, day),
        { kind: "text" as const, lines: lines.map(printable) },
      ],
    };
  });
  const files = data.files.map(({ name, checksum }) => `${name} ${checksum}`).join(", ");
  const about = [
    days.join(", "),
    record.exported(`${dayOf(now)}, ${timeOf(now)}`),
    record.checksum(files),
    ...(data.said === "" ? [] : [words.changed(data.said)]),
  ];
  return reportOf(occasion, [
    { heading: record.date, blocks: [{ kind: "text", lines: about.map(printable) }] },
    ...loads,
  ]);
}

/** When what was timed of a load began and ended. */
function stepsTable(state: State, load: number, day: string): readonly Table[] {
  const { record, roll } = words;
  const rows = stepsOf(state, load).map((step) => [
    cell(roll.lasts(step.label, step.minutes)),
    cell(onDay(day, startOf(step), secondOf)),
    cell(step.ended === undefined ? roll.runs : onDay(day, step.ended, secondOf)),
  ]);
  return rows.length === 0 ? [] : [table(`steps-${load}`, [record.step, roll.began, roll.ended], rows)];
}

/** What a load was mended to, in a line. */
function mendedText({ state, today }: Occasion, load: number): string {
  const listed = itemsOf(today);
  const mend = mendOf(listed, state, load);
  if (mend === "void") return words.record.mendVoid;
  if (mend === "none") return "";
  return itemsOfLoad(listed, state, load)
    .filter(({ id }) => state.mended[load]?.[id] !== undefined)
    .map((item) => `${item.name} ${asWeighed(item)}`)
    .join("; ");
}

function weighedRow(
  item: Item,
  mended: Item | undefined,
  { weighed, lots }: State,
  load: number,
  day: string,
): readonly Cell[] {
  const key = weighedKey(load, item.id);
  const entry = weighed[key];
  const mass = (one: Item, grams: string): Cell => ({ text: asShown(one, grams), value: grams });
  return [
    cell(entry === undefined || entry.name === item.name ? item.name : words.record.other(item.name, entry.name)),
    // A weight keeps the list that it was weighed by.
    mass(item, mended && mended !== item ? item.grams : (entry?.of?.grams ?? item.grams)),
    ...(mended ? [mass(mended, mended.grams)] : []),
    entry === undefined ? cell("–") : mass(mended ?? item, entry.grams),
    cell(lots[key]),
    cell(entry === undefined ? "" : onDay(day, entry.at, timeOf)),
  ];
}

type Part = Pick<Report["sections"][number], "heading" | "blocks">;

function reportOf({ today }: Occasion, parts: readonly Part[]): Report {
  return {
    noodlewright: "report",
    version: 2,
    command: "page",
    title: words.record.title(printable(today.name)),
    main: "doughs",
    sections: parts.map((part, index) => ({ id: `part-${index}`, ...part })),
    figures: {},
    notes: [],
    cautions: [],
  };
}
