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
  switch (manner.format) {
    case "csv": {
      const { renderCsv } = await import("@noodlewright/core/render");
      return renderCsv(report, manner.table);
    }
    case "markdown": {
      const { renderMarkdown } = await import("@noodlewright/core/render");
      return { ok: true, text: renderMarkdown(report) };
    }
    case "html": {
      const { renderHtml } = await import("@noodlewright/core/render");
      return { ok: true, text: renderHtml(report) };
    }
    case "svg": {
      const { renderSvg } = await import("@noodlewright/core/render");
      return renderSvg(report, manner.picture);
    }
    default:
      return { ok: true, text: renderTerminal(printableReport(report), manner) };
  }
}
