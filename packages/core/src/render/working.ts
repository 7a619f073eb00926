import { type Figure, shown } from "../figure/figure.ts";
import type { Graph } from "../figure/graph.ts";
import { answer, type Outcome, problem, refuse } from "../figure/problem.ts";
import { citation } from "../figure/source.ts";
import { writtenWorking } from "../figure/written-working.ts";
import { fixedText } from "../number/decimal.ts";

/** The working of a figure: what it is, and line by line the formula in names, in numbers, result, range, sources. */
export interface FigureWorking {
  readonly label: string;
  readonly lines: readonly string[];
}

/**
 * The working of figures, among which is all that they rest on.
 *
 * @example workings(Object.values(example("school-noodle").formula.graph))[0].label // => "mill strong flour"
 */
export function workings(figures: readonly Figure[]): readonly FigureWorking[] {
  const graph = Object.fromEntries(figures.map((figure) => [figure.id, figure]));
  return figures.map((figure) => ({ label: figure.label, lines: workingLines(figure, graph) }));
}

/**
 * The working of one figure of a result.
 *
 * @param result - what was answered, with its graph
 * Problems: `figure.unknown`, for an id that the graph does not know.
 *
 * @example explain(askFormula(example("school-noodle")).value, "water.added").value.lines[1] // => "= 34.998 + 0.002"
 */
export function explain({ graph }: { readonly graph: Graph }, id: string): Outcome<FigureWorking> {
  const figure = Object.hasOwn(graph, id) ? graph[id] : undefined;
  if (figure === undefined) return refuse(problem("figure.unknown", [id], { id }));
  return answer({ label: figure.label, lines: workingLines(figure, graph) });
}

function workingLines(figure: Figure, graph: Graph): readonly string[] {
  const { working } = figure;
  const sources = figure.sources.map(citation).join("; ");
  const source = sources === "" ? [] : [`source: ${sources}`];
  const rest = [...rangeLine(figure), ...source];
  const result = `= ${withMinus(shown(figure))}`;
  if (working.kind !== "formula") return [`${result} (${working.by})`, ...rest];
  const written = writtenWorking(figure, graph);
  const steps = written === undefined ? [] : [...new Set([written.names, written.numbers])];
  return [...steps.map((step) => `= ${step}`), result, ...rest];
}

/** A number below zero with the sign that formulas have. */
function withMinus(text: string): string {
  return text.replace(/^-/u, "−");
}

function rangeLine({ range, places, unit }: Figure): readonly string[] {
  if (range === undefined) return [];
  const { low, high, why } = range;
  const of = unit === "" ? "" : ` ${unit}`;
  return [`from ${withMinus(fixedText(low, places))} to ${withMinus(fixedText(high, places))}${of}: ${why}`];
}
