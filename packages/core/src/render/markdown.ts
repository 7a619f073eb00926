import type { Block, Report, Table } from "../report/schema.ts";
import { figuresTable } from "./figures-table.ts";
import { byLoudness } from "./loud.ts";
import { printableReport } from "./printable.ts";
import { workings } from "./working.ts";

/**
 * Prints a report as Markdown, with what the words contain kept from being read as markup.
 *
 * @example renderMarkdown(askFormula(example("school-noodle")).report()).split("\n")[0] // => "# School noodle"
 */
export function renderMarkdown(whole: Report): string {
  const report = printableReport(whole);
  const { heads, quiet } = byLoudness(report);
  const parts = [`# ${escaped(report.title)}`];
  for (const { heading, lines } of heads) parts.push(`## ${heading}`, list(lines));
  for (const { heading, blocks } of report.sections) {
    parts.push(`## ${escaped(heading)}`, ...blocks.map(blockText));
  }
  if (quiet.length > 0) parts.push("## Notes", list(quiet));
  if (report.cautions.length > 0) parts.push("## Cautions", list(report.cautions));
  return `${parts.join("\n\n")}\n`;
}

function blockText(block: Block): string {
  switch (block.kind) {
    case "table":
      return tableText(block);
    case "figures":
      return tableText(figuresTable(block.figures));
    case "text":
      return block.lines.map(escaped).join("\n\n");
    case "picture":
      return `*${escaped(block.title)}: ${escaped(block.description)}*`;
    case "working":
      return workings(block.figures)
        .map(({ label, lines }) => `- ${escaped(label)}\n${lines.map((line) => `  - ${escaped(line)}`).join("\n")}`)
        .join("\n");
  }
}

function tableText(table: Table): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  const strong = (text: string, role: string): string => (role === "total" && text !== "" ? `**${text}**` : text);
  return [
    line(table.columns.map(({ label }) => escaped(label))),
    line(table.columns.map(({ align }) => (align === "right" ? "--:" : ":--"))),
    ...table.rows.map(({ role, cells }) => line(cells.map(({ text }) => strong(escaped(text), role)))),
  ].join("\n");
}

function list(lines: readonly string[]): string {
  return lines.map((line) => `- ${escaped(line)}`).join("\n");
}

function escaped(text: string): string {
  return text.replace(/[\\`*_{}[\]<>|#~&]/gu, "\\$&").replace(/\r?\n/gu, " ");
}
