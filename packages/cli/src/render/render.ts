import type { Report } from "@noodlewright/core";
import { printableJson, printableReport, type Rendering } from "@noodlewright/core/render";
import { renderTerminal } from "./terminal.ts";

/** How a report is to be printed. */
export interface Manner {
  readonly format: string;
  readonly table: string | undefined;
  readonly picture: string | undefined;
  readonly width: number;
  readonly colour: boolean;
}

/** Prints a report in the form asked for. The rarer forms are loaded when they are asked for. */
export async function renderReport(report: Report, manner: Manner): Promise<Rendering> {
  if (manner.format === "json") return { ok: true, text: printableJson(report) };
  if (manner.format === "table") return { ok: true, text: renderTerminal(printableReport(report), manner) };
  const { renderCsv, renderHtml, renderMarkdown, renderSvg } = await import("@noodlewright/core/render");
  if (manner.format === "csv") return renderCsv(report, manner.table);
  if (manner.format === "svg") return renderSvg(report, manner.picture);
  return { ok: true, text: manner.format === "html" ? renderHtml(report) : renderMarkdown(report) };
}
