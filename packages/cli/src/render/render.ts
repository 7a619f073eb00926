import type { Problem, Report } from "@noodlewright/core";

/** How a report is to be printed. */
export interface Manner {
  readonly format: string;
  readonly table: string | undefined;
  readonly width: number;
  readonly colour: boolean;
}

export type Rendering =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problem: Problem };

/** Prints a report in the form asked for. Each form is loaded when it is needed. */
export async function renderReport(report: Report, manner: Manner): Promise<Rendering> {
  switch (manner.format) {
    case "json":
      return { ok: true, text: `${JSON.stringify(report, undefined, 2)}\n` };
    case "csv": {
      const { renderCsv } = await import("./csv.ts");
      return renderCsv(report, manner.table);
    }
    case "markdown": {
      const { renderMarkdown } = await import("./markdown.ts");
      return { ok: true, text: renderMarkdown(report) };
    }
    default: {
      const { renderTerminal } = await import("./terminal.ts");
      return { ok: true, text: renderTerminal(report, manner) };
    }
  }
}
