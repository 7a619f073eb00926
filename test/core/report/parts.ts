import type { Report } from "@noodlewright/core";
import type { Cell, Table } from "@noodlewright/core/render";

const blocksOf = ({ sections }: Report) => sections.flatMap(({ blocks }) => blocks);

/** Every table of a report. */
export function tablesOf(report: Report): readonly Table[] {
  return blocksOf(report).filter((block) => block.kind === "table");
}

/** Every cell of every table. */
export function cellsOf(report: Report): readonly Cell[] {
  return tablesOf(report).flatMap(({ rows }) => rows.flatMap(({ cells }) => cells));
}

/** The table of a name. */
export function tableOf(report: Report, id: string): Table {
  const table = tablesOf(report).find((one) => one.id === id);
  if (table === undefined) throw new Error(`no table "${id}"`);
  return table;
}

/** The rows of a table as texts. */
export function textsOf(report: Report, id: string): readonly (readonly string[])[] {
  return tableOf(report, id).rows.map(({ cells }) => cells.map(({ text }) => text));
}

/** Every line of text, of one section or of all. */
export function linesOf(report: Report, section?: string): readonly string[] {
  const sections = report.sections.filter(({ id }) => section === undefined || id === section);
  return blocksOf({ ...report, sections }).flatMap((block) => (block.kind === "text" ? block.lines : []));
}

/** A report of one table and nothing else. */
export function reportOf(
  columns: readonly (readonly [label: string, align: "left" | "right"])[],
  row: readonly string[],
): Report {
  const table: Table = {
    kind: "table",
    id: "only",
    columns: columns.map(([label, align], index) => ({ id: `column-${index}`, label, align })),
    rows: [{ role: "item", cells: row.map((text) => ({ text })) }],
  };
  const about = { noodlewright: "report", version: 2, command: "compare", title: "two", main: "only" } as const;
  return {
    ...about,
    sections: [{ id: "only", heading: "Only", blocks: [table] }],
    figures: {},
    notes: [],
    cautions: [],
  };
}
