import { problem } from "../figure/problem.ts";
import type { Cell, Report, Table } from "../report/schema.ts";
import { figuresTable } from "./figures-table.ts";
import { printableReport } from "./printable.ts";
import type { Rendering } from "./rendering.ts";

/**
 * Prints one table of a report as CSV (RFC 4180): exact numbers, ungrouped, with the units in the headings. A report without
 * a table gives its figures, named `figures`.
 *
 * @example renderCsv(askFormula(example("school-noodle")).report()).text.split("\n")[1] // => "mill strong flour,85.00,62.04,11.56\r"
 */
export function renderCsv(whole: Report, name: string | undefined): Rendering {
  const report = printableReport(whole);
  const blocks = report.sections.flatMap((section) => section.blocks);
  const figures = blocks.flatMap((block) => (block.kind === "figures" ? block.figures : []));
  const own = blocks.filter((block) => block.kind === "table");
  const tables = own.length === 0 && figures.length > 0 ? [figuresTable(figures)] : own;
  const wanted = name ?? (own.length === 0 ? "figures" : report.main);
  const table = tables.find(({ id }) => id === wanted);
  const names = tables.map(({ id }) => id);
  if (table === undefined) return { ok: false, problem: problem("table.unknown", [], { name: wanted, names }) };
  const isTime = table.columns.map((_, index) => table.rows.some(({ cells }) => cells[index]?.time !== undefined));
  const lines = [
    table.columns.flatMap(({ id, label }, index) => [
      words(label || id),
      ...(isTime[index] ? [`${label}, min from midnight`] : []),
    ]),
    ...table.rows.map(({ cells }) =>
      cells.flatMap((cell, index) => (isTime[index] ? timeFields(cell) : [field(cell, table.columns[index])])),
    ),
  ];
  return { ok: true, text: lines.map((line) => `${line.map(quoted).join(",")}\r\n`).join("") };
}

/** A time of day twice: as ISO 8601 writes it, and in minutes from midnight of the day of service, which tell the day before. */
function timeFields({ time }: Cell): readonly string[] {
  return [time?.iso ?? "", time === undefined ? "" : String(time.minute)];
}

/** Nothing where a column of numbers has none. */
function field(cell: Cell, column: Table["columns"][number] | undefined): string {
  return column?.align === "right" && cell.value === undefined && cell.text === "–" ? "" : plainText(cell);
}

/** Numbers as they are shown, less the grouping of digits and the typographic minus, so that spreadsheets read them. */
function plainText(cell: Cell): string {
  if (cell.value === undefined) return words(cell.text);
  return cell.text.replace(/(?<=\d) (?=\d{3}\b)/gu, "").replace(/^−/u, "-");
}

/** Words as they are, less what a spreadsheet would take for a formula, in some of its languages in wide letters, too. */
function words(text: string): string {
  return /^\s*[=+\-@＝＋－＠]/u.test(text) ? `'${text}` : text;
}

/** Quotes a field where it must be. */
function quoted(text: string): string {
  return /[",\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
