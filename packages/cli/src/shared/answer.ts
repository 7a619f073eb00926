import type { Report, UnitSystem } from "@noodlewright/core";
import { nearestNames } from "@noodlewright/core/chemistry";
import { onlyFigure, withWords, withWorking } from "@noodlewright/core/render";
import type { PlacedProblem } from "../input/placed-problem.ts";
import { type AnyProblem, ownProblem } from "../input/problem.ts";
import { type ExitStatus, exit, type Io } from "../io.ts";
import { withHints } from "../render/hints.ts";
import { renderReport } from "../render/render.ts";
import type { Asked } from "./command.ts";

/** Prints a report in the form that was asked for. */
export async function printReport(report: Report, asked: Asked, io: Io): Promise<ExitStatus> {
  const idle = (
    [
      ["table", "csv"],
      ["picture", "svg"],
    ] as const
  ).filter(([flag, form]) => asked.text(flag) !== undefined && asked.text("format") !== form);
  if (idle.length > 0) {
    const problems = idle.map(([flag, form]) => ({ ...ownProblem("flag.other-form", { form }), flag: `--${flag}` }));
    return printProblems(problems, asked, io);
  }
  const wanted = asked.text("figure");
  const full = wanted === undefined ? withHints(report) : onlyFigure(report, wanted, unitsOf(asked));
  if (full === undefined) return printProblems([unknownFigure(wanted ?? "", report)], asked, io);
  const format = asked.text("format") ?? "table";
  const worked = asked.on("working") && wanted === undefined ? withWorking(full, unitsOf(asked)) : full;
  const explained = asked.on("words") && format !== "json" ? withWords(worked) : worked;
  const rendering = await renderReport(explained, {
    format,
    table: asked.text("table"),
    picture: asked.text("picture"),
    width: io.width,
    colour: io.colour(),
  });
  if (!rendering.ok) return printProblems([rendering.problem], asked, io);
  io.out(rendering.text);
  return exit.done;
}

/**
 * Prints problems: as JSON on standard output where JSON was asked for, else in words on standard error.
 *
 * @param verdict - what was done in spite of them; unless told, nothing
 */
export async function printProblems(
  problems: readonly PlacedProblem[],
  asked: Asked,
  io: Io,
  verdict?: string,
): Promise<ExitStatus> {
  const { inWords, problemsJson, renderProblems } = await import("../render/problems.ts");
  if (asked.text("format") === "json") io.out(problemsJson(problems, unitsOf(asked)));
  else
    io.err(renderProblems(problems, { width: io.width, colour: io.colourOfErrors(), verdict, units: unitsOf(asked) }));
  return problems.every((problem) => inWords(problem).kind === "no-answer") ? exit.noAnswer : exit.wrongInput;
}

/** The units asked for. */
export function unitsOf(asked: Asked): UnitSystem {
  return asked.text("units") === "us" ? "us" : "metric";
}

function unknownFigure(id: string, report: Report): AnyProblem {
  const ids = Object.keys(report.figures);
  return ownProblem("figure.not-there", { id, count: String(ids.length), nearest: nearestNames(id, ids) });
}
