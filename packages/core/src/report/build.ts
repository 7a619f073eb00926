import type { Figure } from "../figure/figure.ts";
import { type Graph, graphOf } from "../figure/graph.ts";
import { inSystem, type UnitSystem } from "../figure/in-system.ts";
import type { Note } from "../figure/problem.ts";
import { toldIn } from "../figure/told.ts";
import type { Picture } from "./pictures/svg.ts";
import type { Block, Cell, Column, Report, Section, Table, Telling } from "./schema.ts";

/** A column of words, flush left. */
export function wordColumn(id: string, label: string): Column {
  return { id, label, align: "left" };
}

/** A column of numbers, flush right. */
export function numberColumn(id: string, label: string): Column {
  return { id, label, align: "right" };
}

type Row = Table["rows"][number];

/** A row of a table, of words and of cells. */
export function row(cells: readonly (Cell | string)[], role: Row["role"] = "item"): Row {
  return { role, cells: cells.map((cell) => (typeof cell === "string" ? { text: cell } : cell)) };
}

/** A table. */
export function table(id: string, columns: readonly Column[], rows: readonly Row[]): Table {
  return { kind: "table", id, columns, rows };
}

/**
 * A table with a row for each of some things, by columns: what heads each, and what it tells of a thing, in words or in a cell.
 *
 * @param last - rows below those
 */
export function listing<Thing>(
  id: string,
  things: readonly Thing[],
  columns: readonly (readonly [column: Column, tell: (thing: Thing) => Cell | string])[],
  ...last: readonly Row[]
): Table {
  const heads = columns.map(([column]) => column);
  const rows = things.map((thing) => row(columns.map(([, tell]) => tell(thing))));
  return table(id, heads, [...rows, ...last]);
}

/** What a section is made of: blocks, and lines of text as they are; nothing where there is nothing to say. */
export type Part = Block | readonly string[] | undefined;

/** A section; those without anything to say are left out by `report`. */
export function section(id: string, heading: string, ...parts: readonly Part[]): Section {
  const present = parts.filter((part) => part !== undefined);
  const blocks = present.map((part): Block => ("kind" in part ? part : { kind: "text", lines: part }));
  return { id, heading, blocks: blocks.filter((block) => !isEmpty(block)) };
}

function isEmpty(block: Block): boolean {
  switch (block.kind) {
    case "table":
      return block.rows.length === 0;
    case "text":
      return block.lines.length === 0;
    case "figures":
    case "working":
      return block.figures.length === 0;
    case "picture":
      return false;
  }
}

/** A picture as a block; nothing where there is none. */
export function pictureBlock(picture: Picture | undefined): Block | undefined {
  return picture && { kind: "picture", ...picture };
}

/** Figures as a block, as far as there are any, in the units of a system. */
export function figureBlock(figures: readonly (Figure | undefined)[], units: UnitSystem): Block {
  return { kind: "figures", figures: figures.flatMap((figure) => (figure ? [inSystem(figure, units)] : [])) };
}

/** Puts a report together; every figure it shows or rests on is kept by its id. */
export function report(
  parts: {
    readonly command: string;
    readonly title: string;
    readonly main: string;
    readonly sections: readonly Section[];
    readonly figures?: readonly Figure[];
    /** The results that the figures come from. */
    readonly from?: readonly { readonly graph: Graph }[];
    readonly cautions?: readonly string[];
  } & Partial<Telling>,
): Report {
  const { from = [], units = "metric", notes = [] } = parts;
  return {
    noodlewright: "report",
    version: 2,
    command: parts.command,
    title: parts.title,
    main: parts.main,
    sections: parts.sections.filter(({ blocks }) => blocks.length > 0),
    figures: graphOf(parts.figures ?? [], ...from.map(({ graph }) => graph)),
    notes: unique(notes.map((one) => toldNote(one, units))),
    cautions: [...new Set(parts.cautions)],
  };
}

/** A note with its words. @example toldNote({ code: "words.unexplained", path: [], facts: { name: "udon", nearest: false } }, "metric").text // => "\"udon\" is not explained here" */
export function toldNote(one: Note, units: UnitSystem): Report["notes"][number] {
  const { code, facts, loud } = one;
  return { code, facts, text: toldIn(units)(one), ...(loud && { loud }) };
}

function unique(notes: Report["notes"]): Report["notes"] {
  return notes.filter((note, index) => notes.findIndex(({ text }) => text === note.text) === index);
}

/** What a working in other units than the answer is told in says first. */
const workedIn =
  "Each figure stands here in the unit that it was worked out in, which is not always the one that it is told in elsewhere.";

function workingSection(figures: readonly Figure[], units: UnitSystem): Section {
  const told: readonly Block[] = units === "metric" ? [] : [{ kind: "text", lines: [workedIn] }];
  return { id: "working", heading: "Working", blocks: [...told, { kind: "working", figures }] };
}

/**
 * The same report with the working of all its figures at the end.
 *
 * @param units - that the answer is told in
 * @example withWorking(askFormula(example("school-noodle")).report()).sections.at(-1).id // => "working"
 */
export function withWorking(plain: Report, units: UnitSystem = "metric"): Report {
  const figures = Object.values(plain.figures);
  if (figures.length === 0) return plain;
  return {
    ...plain,
    sections: [...plain.sections, workingSection(figures, units)],
  };
}

/**
 * A report of the working of one figure and of all it rests on; undefined where there is no such figure.
 *
 * @param units - that the answer is told in
 * @example onlyFigure(askFormula(example("school-noodle")).report(), "water.added").figures["water.added"].value // => "35"
 */
export function onlyFigure(plain: Report, id: string, units: UnitSystem = "metric"): Report | undefined {
  const figure = Object.hasOwn(plain.figures, id) ? plain.figures[id] : undefined;
  if (figure === undefined) return undefined;
  const kept = graphOf([figure], plain.figures);
  return {
    ...plain,
    sections: [workingSection(Object.values(kept), units)],
    figures: kept,
    notes: [],
    cautions: [],
  };
}
