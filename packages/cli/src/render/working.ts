import { citation, type Figure, shown } from "@noodlewright/core";

/** The working of a figure, line by line: formula in names, formula in numbers, result, sources. */
export function workingLines(figure: Figure): readonly string[] {
  const { working } = figure;
  const sources = figure.sources.map(citation).join("; ");
  const source = sources === "" ? [] : [`source: ${sources}`];
  if (working.kind !== "formula") return [`= ${shown(figure)} (${working.by})`, ...source];
  const steps = working.formula === working.numbers ? [working.formula] : [working.formula, working.numbers];
  return [...steps.map((step) => `= ${step}`), `= ${shown(figure)}`, ...source];
}
