import { type Figure, given, renamed, worked } from "../../figure/figure.ts";
import { commonPractice, definition, massBalance } from "../../figure/source.ts";
import type { DecimalText } from "../../number/decimal.ts";
import { asked, askedFigure, askedOr, type Given, type Usual } from "../inputs.ts";
import type { CutterSize } from "../passes/machine.ts";
import type { CutRequest, SheetRequest } from "./cut-request.ts";
import { cutterNumber } from "./cutter.ts";

export const grams = { unit: "g", places: 1 };
export const count = { unit: "", places: 0 };
export const thicknessNaming = { id: "sheet.thickness", label: "final thickness", unit: "mm", places: 2 };
export const wholeMillimetres = { unit: "mm", places: 0 };

/** Masses of the account are whole micrograms, rounded down, so that it closes exactly. */
const microgram = (formula: string) => `floor((${formula}) * 1000000) / 1000000`;
const none: Usual = { value: "0", source: { ...commonPractice, cite: "none until the kitchen has weighed its own" } };

/** A mass that was asked for under a name of its own, to the microgram. */
export function loadMass(id: string, label: string, name: string, given: Given): Figure {
  const mass = askedFigure({ id: name, label, ...grams }, given);
  return worked({ id, label, ...grams }, microgram("mass"), { mass }, definition);
}

/** What a load leaves in the mixer and on the rolls, g, to the microgram. */
export function lossFigure(dough: Figure, losses: Given | undefined): Figure {
  const share = askedOr({ id: "loss.mixing", label: "losses", unit: "%", places: 1 }, losses, none);
  const naming = { id: "account.losses", label: "left in mixer and on rolls", ...grams };
  return worked(naming, microgram("dough * share / 100"), { dough, share }, massBalance);
}

/** Length of all the dough of a load in one sheet. */
export function wholeLength(sheets: Figure, { density, thickness }: SheetRequest, width: Figure): Figure {
  const naming = { id: "load.sheet-length", label: "length of the whole load as one sheet", ...wholeMillimetres };
  const from = { mass: sheets, density, width, thickness: askedFigure(thicknessNaming, thickness) };
  return worked(naming, "mass * 1000 / (density * width * thickness)", from, definition);
}

/** Sheets of a load: as few as keep to the longest one; one where none is given. */
export function sheetCount(whole: Figure, longest: DecimalText | undefined): Figure {
  const naming = { id: "load.sheets", label: "sheets of a load", ...count };
  if (longest === undefined) return given(naming, 1, "no longest sheet given", definition);
  const longestSheet = asked({ id: "sheet.longest", label: "longest sheet", ...wholeMillimetres }, longest);
  return worked(naming, "ceil(whole / longest)", { whole, longest: longestSheet }, definition);
}

/** Whole strands across the sheet, between its trimmed edges and within the cutter. */
export function acrossFigure(request: CutRequest, width: Figure, strand: Figure): Figure {
  const { cutter, edgeTrim, workingWidth: working = width } = request;
  const edge = askedOr({ id: "sheet.edge-trim", label: "trim of an edge", unit: "mm", places: 1 }, edgeTrim, none);
  const naming = { id: "strands.across", label: "strands across", ...count, bounds: { least: "1" } };
  const from = { width, edge, working };
  if (cutter.kind === "width") {
    return worked(naming, "max(0, floor(min(width - 2 * edge, working) / strand))", { ...from, strand }, definition);
  }
  const formula = "max(0, floor(min(width - 2 * edge, working) * number / 30))";
  return worked(naming, formula, { ...from, number: cutter.number }, cutterNumber);
}

/** The strips beside the outermost strands. */
export function edgeFigure(
  sheets: Figure,
  cutter: CutterSize,
  { across, width, strand }: Readonly<Record<"across" | "width" | "strand", Figure>>,
): Figure {
  const naming = { id: "account.edge-trim", label: "edge trim", ...grams };
  if (cutter.kind === "width") {
    const formula = microgram("sheets * (width - across * strand) / width");
    return worked(naming, formula, { sheets, across, width, strand }, massBalance);
  }
  const formula = microgram("sheets * (width * number - across * 30) / (width * number)");
  return worked(naming, formula, { sheets, across, width, number: cutter.number }, massBalance);
}

/** Both ends of every sheet; the whole sheet where the ends meet. */
export function endFigure(sheets: Figure, edges: Figure, length: Figure, endTrim: DecimalText | undefined): Figure {
  const end = askedOr({ id: "sheet.end-trim", label: "trim of an end", unit: "mm", places: 0 }, endTrim, none);
  const naming = { id: "account.end-trim", label: "end trim", ...grams };
  const from = { sheets, edges, end, length };
  return worked(naming, microgram("(sheets - edges) * min(1, 2 * end / length)"), from, massBalance);
}

/** One cut across the sheet: its mass and length; and the portion. */
export interface Cut {
  readonly cut: Figure;
  readonly cutLength: Figure;
  readonly portion: Figure;
}

/** The cut across the sheet that makes a portion, or that a strand length gives. */
export function cutFigures(request: CutRequest, across: Figure, metre: Figure): Cut {
  const stated = request.portion;
  const portion = stated === undefined ? stated : loadMass("portion.mass", "raw portion", "sheet.portion", stated);
  const lengthNaming = { id: "cut.length", label: "cut length", ...wholeMillimetres };
  if (portion !== undefined && request.strandLength === undefined) {
    const formula = "portion / (across * metre) * 1000";
    const cutLength = worked(lengthNaming, formula, { portion, across, metre }, definition);
    return { cut: portion, cutLength, portion };
  }
  const cutLength = asked(lengthNaming, request.strandLength ?? "0");
  const naming = { id: "cut.mass", label: "mass of one cut across the sheet", ...grams };
  const from = { across, metre, length: cutLength };
  const cut = worked(naming, microgram("across * metre * length / 1000"), from, massBalance);
  return { cut, cutLength, portion: portion ?? renamed(cut, "portion.mass", "raw portion") };
}
