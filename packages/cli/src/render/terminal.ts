import { styleText } from "node:util";
import type { Report } from "@noodlewright/core";
import type { Figure } from "@noodlewright/core/figure";
import {
  type Block,
  byLoudness,
  type Cell,
  firstOfAll,
  shownGrouped,
  type Table,
  workings,
} from "@noodlewright/core/render";
import { gap, gridLines } from "./grid.ts";
import { textWidth } from "./text-width.ts";
import { wrapText } from "./wrap.ts";

interface Manner {
  readonly width: number;
  readonly colour: boolean;
}

/** Prints a report for people: headings, tables that fit the width, notes and cautions at the end. */
export function renderTerminal(report: Report, manner: Manner): string {
  const strong = (text: string): string => (manner.colour ? styleText("bold", text, { validateStream: false }) : text);
  const { loud, quiet } = byLoudness(report);
  const parts = [strong(report.title)];
  if (loud.length > 0) parts.push("", strong(firstOfAll), ...bullets(loud, manner.width));
  for (const { heading, blocks } of report.sections) {
    parts.push("", strong(heading));
    for (const [index, block] of blocks.entries()) {
      if (index > 0 && block.kind === "table") parts.push("");
      parts.push(...blockLines(block, manner));
    }
  }
  if (quiet.length > 0) parts.push("", strong("Notes"), ...bullets(quiet, manner.width));
  if (report.cautions.length > 0) parts.push("", strong("Cautions"), ...bullets(report.cautions, manner.width));
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
        `  ${label}`,
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
  const texts = [
    table.columns.map(({ label }) => label),
    ...table.rows.map(({ cells }) => cells.map(({ text }) => text)),
  ];
  const widths = fitWidths(
    texts,
    table.columns.map(({ align }) => align === "left"),
    width - indent,
  );
  const columns = table.columns.map(({ align }, column) => ({ align, width: widths[column] ?? width }));
  const row = (cells: readonly string[]): readonly string[] => gridLines(cells, columns);
  const rule = row(widths.map((column) => "─".repeat(column)));
  const body = table.rows.flatMap(({ role, cells }) => [
    ...(role === "total" ? rule : []),
    ...row(cells.map(({ text }) => text)),
  ]);
  return [...row(table.columns.map(({ label }) => label)), ...rule, ...body].map((line) =>
    `${" ".repeat(indent)}${line}`.replaceAll("\u2007", " ").trimEnd(),
  );
}

/** Natural widths, the widest columns of words narrowed until the table fits. */
function fitWidths(texts: readonly (readonly string[])[], wordy: readonly boolean[], width: number): readonly number[] {
  const widths = wordy.map((_, column) => Math.max(1, ...texts.map((line) => textWidth(line[column] ?? ""))));
  const room = width - gap * (widths.length - 1);
  const least = 12;
  for (;;) {
    const excess = widths.reduce((total, one) => total + one, 0) - room;
    if (excess <= 0) return widths;
    const widest = widths.reduce(
      (best, one, column) => (wordy[column] === true && one > (widths[best] ?? 0) ? column : best),
      wordy.indexOf(true),
    );
    const current = widths[widest];
    if (current === undefined || current <= least) return narrowAll(widths, floors(texts, wordy), excess);
    widths[widest] = current - 1;
  }
}

/** Narrowest that a column may get: numbers stay whole. */
function floors(texts: readonly (readonly string[])[], wordy: readonly boolean[]): readonly number[] {
  const [, ...rows] = texts;
  return wordy.map((words, column) => (words ? 4 : Math.max(4, ...rows.map((line) => textWidth(line[column] ?? "")))));
}

/** Where words alone cannot give way, the headings of the numbers wrap too. */
function narrowAll(widths: number[], least: readonly number[], excess: number): readonly number[] {
  for (let step = 0; step < excess; step += 1) {
    const slack = widths.map((one, column) => (one > (least[column] ?? one) ? one : 0));
    const widest = slack.indexOf(Math.max(...slack));
    if (slack[widest] === 0) return widths;
    widths[widest] = (widths[widest] ?? 0) - 1;
  }
  return widths;
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
