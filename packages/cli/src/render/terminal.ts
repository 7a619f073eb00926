import { styleText } from "node:util";
import type { Report } from "@noodlewright/core";
import type { Figure } from "@noodlewright/core/figure";
import { type Block, byLoudness, type Cell, shownGrouped, type Table, workings } from "@noodlewright/core/render";
import { type Column, gap, gridLines } from "./grid.ts";
import { textWidth } from "./text-width.ts";
import { wordEnds, wrapText } from "./wrap.ts";

interface Manner {
  readonly width: number;
  readonly colour: boolean;
}

/** Prints a report for people: headings, tables that fit the width, notes and cautions at the end. */
export function renderTerminal(report: Report, manner: Manner): string {
  const strong = (text: string): string => (manner.colour ? styleText("bold", text, { validateStream: false }) : text);
  const { heads, quiet } = byLoudness(report);
  const parts = wrapText(report.title, manner.width).map(strong);
  const headed = (heading: string) => ["", ...wrapText(heading, manner.width).map(strong)];
  for (const { heading, lines } of heads) parts.push(...headed(heading), ...bullets(lines, manner.width));
  for (const { heading, blocks } of report.sections) {
    parts.push(...headed(heading));
    for (const [index, block] of blocks.entries()) {
      if (index > 0 && block.kind === "table") parts.push("");
      parts.push(...blockLines(block, manner));
    }
  }
  if (quiet.length > 0) parts.push(...headed("Notes"), ...bullets(quiet, manner.width));
  if (report.cautions.length > 0) parts.push(...headed("Cautions"), ...bullets(report.cautions, manner.width));
  return `${parts.join("\n")}\n`;
}

function blockLines(block: Block, manner: Manner): readonly string[] {
  switch (block.kind) {
    case "table":
      return tableLines(block, manner.width);
    case "figures":
      return figureLines(block.figures, manner.width);
    case "text":
      return block.lines.flatMap((line) => wrapText(line, manner.width - 2).map((part) => `  ${part}`));
    case "picture":
      return [];
    case "working":
      return workings(block.figures).flatMap(({ label, lines }) => [
        "",
        ...wrapText(label, manner.width - 2).map((part) => `  ${part}`),
        ...lines.flatMap((line) => indented(line, manner.width)),
      ]);
  }
}

function indented(line: string, width: number): readonly string[] {
  return wrapText(line, width - 6).map((part, index) => `${index === 0 ? "    " : "      "}${part}`);
}

function bullets(lines: readonly string[], width: number): readonly string[] {
  return lines.flatMap((line) =>
    wrapText(line, width - 4).map((part, index) => `${index === 0 ? "  - " : "    "}${part}`),
  );
}

const indent = 2;

/** Number columns line up at the decimal point. */
function alignPoints(table: Table): Table {
  const places = table.columns.map((column, index) =>
    column.align === "left" ? 0 : Math.max(0, ...table.rows.map(({ cells }) => decimalsOf(cells[index]))),
  );
  const rows = table.rows.map((line) => ({
    ...line,
    cells: line.cells.map((cell, index) => {
      const missing = (places[index] ?? 0) - decimalsOf(cell);
      return cell.value === undefined || missing === 0 ? cell : { ...cell, text: cell.text + filler(cell, missing) };
    }),
  }));
  return { ...table, rows };
}

/** Figure spaces, which a table does not trim; one more where there is no point. */
function filler(cell: Cell, missing: number): string {
  return "\u2007".repeat(decimalsOf(cell) === 0 ? missing + 1 : missing);
}

function decimalsOf(cell: Cell | undefined): number {
  if (cell?.value === undefined) return 0;
  return /\.(\d+)/u.exec(cell.text)?.[1]?.length ?? 0;
}

function tableLines(unaligned: Table, width: number): readonly string[] {
  const table = alignPoints(unaligned);
  const room = width - indent;
  const columns = table.columns.map(({ label, align }, column) => {
    const texts = table.rows.map(({ cells }) => cells[column]?.text ?? "");
    return { align, texts: [label, ...texts], ...measured(label, texts, align, room) };
  });
  return sideBySide(columns, room).flatMap((part, index) => {
    const grid = fitWidths(part, room);
    const shown = part.map((column, at) => barsWithin(column, grid[at]?.width ?? column.width));
    const line = (tell: (texts: readonly string[], at: number) => string) => gridLines(shown.map(tell), grid);
    const row = (number: number) => line((texts) => texts[number] ?? "");
    const rule = line((_, at) => "─".repeat(grid[at]?.width ?? 0));
    const body = table.rows.flatMap(({ role }, at) => [...(role === "total" ? rule : []), ...row(at + 1)]);
    const lines = [...row(0), ...rule, ...body].map((one) => " ".repeat(indent) + one);
    return [...(index === 0 ? [] : [""]), ...lines.map((one) => one.replaceAll("\u2007", " ").trimEnd())];
  });
}

/** A column of a table with its texts, its heading first, as wide as they are, and how narrow it may get. */
interface Measured extends Column {
  readonly texts: readonly string[];
  readonly least: number;
}

/** The texts of a column; bars longer than it are all drawn to a smaller scale, so that they still tell which is longer. */
function barsWithin({ texts, width: natural }: Measured, width: number): readonly string[] {
  if (width >= natural || !texts.slice(1).every((text) => /^█*$/u.test(text))) return texts;
  return texts.map((text) => text.slice(0, Math.ceil((text.length * width) / natural)));
}

/** Numbers stay whole and words too, and where words fill more than a few lines they are hard to read. */
function measured(
  label: string,
  texts: readonly string[],
  align: Column["align"],
  room: number,
): Pick<Measured, "width" | "least"> {
  const widest = (of: readonly string[]): number => Math.max(1, ...of.map(textWidth));
  const cells = align === "left" ? Math.min(fewLetters, widest(texts)) : widest(texts);
  const words = (align === "left" ? [label, ...texts] : [label]).flatMap((text) => text.split(wordEnds));
  return { width: widest([label, ...texts]), least: Math.max(cells, Math.min(widest(words), Math.floor(room / 3))) };
}

/** Narrower than this no column of words gets. */
const fewLetters = 12;

/** All columns, or, of a table that is too wide, parts of them that all begin with what names the rows. */
function sideBySide(columns: readonly Measured[], room: number): readonly (readonly Measured[])[] {
  const holds = (part: readonly Measured[], most: number): boolean =>
    part.reduce((total, { least }) => total + least, gap * (part.length - 1)) <= most;
  if (holds(columns, room)) return [columns];
  const firstNumbers = columns.findIndex(({ align }) => align === "right");
  const leading = columns.slice(0, Math.max(1, firstNumbers));
  const names = holds(leading, room / 2) ? leading : columns.slice(0, 1);
  const parts: Measured[][] = [];
  for (const column of columns.slice(names.length)) {
    const last = parts.at(-1);
    if (last !== undefined && holds([...last, column], room)) last.push(column);
    else parts.push([...names, column]);
  }
  return parts;
}

/** Natural widths, the widest column that can give way narrowed until the table fits. */
function fitWidths(columns: readonly Measured[], room: number): readonly Column[] {
  const widths = columns.map(({ width }) => width);
  for (;;) {
    const excess = widths.reduce((total, one) => total + one, gap * (widths.length - 1)) - room;
    const slack = columns.map(({ least }, column) => ((widths[column] ?? 0) > least ? (widths[column] ?? 0) : 0));
    const most = Math.max(...slack);
    if (excess <= 0 || most === 0) return columns.map(({ align }, column) => ({ align, width: widths[column] ?? 0 }));
    widths[slack.indexOf(most)] = most - 1;
  }
}

function figureLines(figures: readonly Figure[], width: number): readonly string[] {
  const texts = figures.map((figure) => ({ label: figure.label, value: shownGrouped(figure), unit: figure.unit }));
  const longest = (of: (text: (typeof texts)[number]) => string): number =>
    Math.max(1, ...texts.map((text) => textWidth(of(text))));
  const value = longest((text) => text.value);
  const label = Math.min(
    longest((text) => text.label),
    width - value - longest((text) => text.unit) - indent - gap - 1,
  );
  return texts.flatMap((text) => {
    const [first = "", ...more] = wrapText(text.label, Math.max(12, label));
    const line = `  ${first.padEnd(label)}  ${text.value.padStart(value)} ${text.unit}`.trimEnd();
    return [line, ...more.map((part) => `    ${part}`)];
  });
}
