import type { Problem, Report } from "@noodlewright/core";
import { printableJson, printableReport } from "./printable.ts";

/** How a report is to be printed. */
export interface Manner {
  readonly format: string;
  readonly table: string | undefined;
  readonly picture: string | undefined;
  readonly width: number;
  readonly colour: boolean;
}

export type Rendering =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problem: Problem };

/** Prints a report in the form asked for. Each form is loaded when it is needed. */
export async function renderReport(report: Report, manner: Manner): Promise<Rendering> {
  if (manner.format === "json") return { ok: true, text: printableJson(report) };
  const clean = printableReport(report);
  switch (manner.format) {
    case "csv": {
      const { renderCsv } = await import("./csv.ts");
      return renderCsv(clean, manner.table);
    }
    case "markdown": {
      const { renderMarkdown } = await import("./markdown.ts");
      return { ok: true, text: renderMarkdown(clean) };
    }
    case "html": {
      const { renderHtml } = await import("./html.ts");
      return { ok: true, text: renderHtml(clean) };
    }
    case "svg": {
      const { renderSvg } = await import("./svg.ts");
      return renderSvg(clean, manner.picture);
    }
    default: {
      const { renderTerminal } = await import("./terminal.ts");
      return { ok: true, text: renderTerminal(clean, manner) };
    }
  }
}
