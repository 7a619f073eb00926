import { citation, type Figure, fixedText, shown } from "@noodlewright/core";

/** The working of a figure, line by line: formula in names, formula in numbers, result, range, sources. */
export function workingLines(figure: Figure): readonly string[] {
  const { working } = figure;
  const sources = figure.sources.map(citation).join("; ");
  const source = sources === "" ? [] : [`source: ${sources}`];
  const rest = [...rangeLine(figure), ...source];
  if (working.kind !== "formula") return [`= ${shown(figure)} (${working.by})`, ...rest];
  const steps = working.formula === working.numbers ? [working.formula] : [working.formula, working.numbers];
  return [...steps.map((step) => `= ${step}`), `= ${shown(figure)}`, ...rest];
}

function rangeLine({ range, places, unit }: Figure): readonly string[] {
  if (range === undefined) return [];
  const { low, high, why } = range;
  const of = unit === "" ? "" : ` ${unit}`;
  return [`from ${fixedText(low, places)} to ${fixedText(high, places)}${of}: ${why}`];
}
