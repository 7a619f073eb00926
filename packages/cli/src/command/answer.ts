import { type Report, withWorking } from "@noodlewright/core";
import type { PlacedProblem } from "../input/document.ts";
import { type ExitStatus, exit, type Io } from "../io.ts";
import { renderReport } from "../render/render.ts";
import type { Asked } from "./command.ts";

/** Prints a report in the form that was asked for. */
export async function printReport(report: Report, asked: Asked, io: Io): Promise<ExitStatus> {
  const full = asked.on("working") ? withWorking(report) : report;
  const rendering = await renderReport(full, {
    format: asked.text("format") ?? "table",
    table: asked.text("table"),
    width: io.width,
    colour: io.colour(),
  });
  if (!rendering.ok) return printProblems([rendering.problem], asked, io);
  io.out(rendering.text);
  return exit.done;
}

/** Prints problems: as JSON on standard output where JSON was asked for, else in words on standard error. */
export async function printProblems(problems: readonly PlacedProblem[], asked: Asked, io: Io): Promise<ExitStatus> {
  const { problemsJson, renderProblems } = await import("../render/problems.ts");
  if (asked.text("format") === "json") io.out(problemsJson(problems));
  else io.err(renderProblems(problems, { width: io.width, colour: io.colourOfErrors() }));
  return problems.every(({ kind }) => kind === "no-answer") ? exit.noAnswer : exit.wrongInput;
}
