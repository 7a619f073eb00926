import { exact, type Figure, worked } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { answer, type Outcome, type Problem, problem, refuse } from "../../figure/problem.ts";
import { definition, massBalance } from "../../figure/source.ts";
import { type Decimal, type DecimalText, dec, fixedText } from "../../number/decimal.ts";
import { asked, askedFigure, outsideLimits } from "../inputs.ts";
import { type CutRequest, cutRequestProblems, type SheetRequest, sheetRequestProblems } from "./cut-request.ts";
import { widthFigure } from "./cutter.ts";
import {
  acrossFigure,
  count,
  cutFigures,
  edgeFigure,
  endFigure,
  grams,
  loadMass,
  lossFigure,
  sheetCount,
  thicknessNaming,
  wholeLength,
  wholeMillimetres,
} from "./sheet-parts.ts";

/** What becomes of a load. In grams; `dough` is exactly the sum of the others. */
export interface Account {
  readonly dough: Figure;
  readonly losses: Figure;
  readonly edgeTrim: Figure;
  readonly endTrim: Figure;
  readonly strands: Figure;
  readonly leftover: Figure;
}

/** Sheets of one load. */
export interface Sheets {
  readonly sheetsPerLoad: Figure;
  readonly sheetMass: Figure;
  readonly sheetLength: Figure;
}

/** Sheets, strands and portions of one load. */
export interface CutPlan extends Sheets {
  readonly strandWidth: Figure;
  readonly strandsAcross: Figure;
  readonly massPerMetre: Figure;
  readonly cutLength: Figure;
  readonly portion: Figure;
  readonly strandsPerPortion: Figure;
  readonly portionsPerSheet: Figure;
  readonly portionsPerLoad: Figure;
  readonly account: Account;
}

/**
 * Works out the sheet, the strands and the portions that a load of dough gives, and accounts for every gram of it.
 *
 * Problems: `sheet.out-of-range`, `geometry.no-cut`, `geometry.too-narrow`, `geometry.too-short`.
 * Losses and trims are 0 where they are left out, since no published figure for them was read.
 *
 * @example shown(cutPlan({ dough: "1370", density: givenDensity("1.24"), thickness: "1.5", width: "300", cutter: { kind: "number", number: 20 }, portion: "130" }).value.strandsPerPortion) // => "200"
 */
export function cutPlan(request: CutRequest): Outcome<Published<CutPlan>> {
  const problems = cutRequestProblems(request);
  if (problems.length > 0) return refuse(...problems);
  const width = widthAsked(request);
  const strandWidth = widthFigure(request.cutter);
  const strandsAcross = acrossFigure(request, width, strandWidth);
  if (exact(strandsAcross).isZero()) {
    const widths = { width: request.width, strandWidth: fixedText(strandWidth.value, 2) };
    return refuse(problem("geometry.too-narrow", ["width"], widths));
  }
  const { dough, losses, sheets, ofLoad } = sheeted(request, width);
  const { sheetsPerLoad, sheetLength } = ofLoad;
  const edgeTrim = edgeFigure(sheets, request.cutter, { across: strandsAcross, width, strand: strandWidth });
  const endTrim = endFigure(sheets, edgeTrim, sheetLength, request.endTrim);
  const inStrands = worked(
    { id: "account.in-strands", label: "dough that passes the cutter", ...grams },
    "sheets - edges - ends",
    { sheets, edges: edgeTrim, ends: endTrim },
    massBalance,
  );
  const massPerMetre = worked(
    { id: "strand.mass-per-metre", label: "mass of strand by length", unit: "g/m", places: 2 },
    "density * width * thickness",
    { density: request.density, width: strandWidth, thickness: askedFigure(thicknessNaming, request.thickness) },
    definition,
  );
  const { cut, cutLength, portion } = cutFigures(request, strandsAcross, massPerMetre);
  const cutsPerSheet = worked(
    { id: "sheet.cuts", label: "cuts of a sheet", ...count },
    "floor(strands / (sheets * cut))",
    { strands: inStrands, sheets: sheetsPerLoad, cut },
    definition,
  );
  const portionsPerLoad = worked(
    { id: "load.portions", label: "portions of a load", ...count, bounds: { least: "1" } },
    "floor(sheets * cuts * cut / portion)",
    { sheets: sheetsPerLoad, cuts: cutsPerSheet, cut, portion },
    definition,
  );
  if (exact(portionsPerLoad).isZero())
    return refuse(tooShort(cutLength, lengthInStrands(sheetLength, request), portion, inStrands));
  const strandsNaming = { id: "account.strands", label: "strands in portions", ...grams };
  const strands = worked(strandsNaming, "portions * portion", { portions: portionsPerLoad, portion }, massBalance);
  const leftover = worked(
    { id: "account.leftover", label: "left over", ...grams },
    "dough - losses - edges - ends - strands",
    { dough, losses, edges: edgeTrim, ends: endTrim, strands },
    massBalance,
  );
  return publish({
    strandWidth,
    strandsAcross,
    massPerMetre,
    ...ofLoad,
    cutLength,
    portion,
    strandsPerPortion: worked(
      { id: "portion.strands", label: "strands in a portion", ...count },
      "portion / (metre * length / 1000)",
      { portion, metre: massPerMetre, length: cutLength },
      definition,
    ),
    portionsPerSheet: worked(
      { id: "sheet.portions", label: "portions of a sheet", ...count },
      "floor(cuts * cut / portion)",
      { cuts: cutsPerSheet, cut, portion },
      definition,
    ),
    portionsPerLoad,
    account: { dough, losses, edgeTrim, endTrim, strands, leftover },
  });
}

/** The sheets of a load, whatever they are cut into. Problems: `sheet.out-of-range`. */
export function sheetsOf(request: SheetRequest): Outcome<Sheets> {
  const problems = sheetRequestProblems(request);
  return problems.length > 0 ? refuse(...problems) : answer(sheeted(request, widthAsked(request)).ofLoad);
}

function widthAsked({ width }: SheetRequest): Figure {
  return asked({ id: "sheet.width", label: "sheet width", ...wholeMillimetres }, width);
}

/** What of a load gets into its sheets, and the sheets. */
function sheeted(request: SheetRequest, width: Figure) {
  const dough = loadMass("account.dough", "dough of a load", "load.dough", request.dough);
  const losses = lossFigure(dough, request.losses);
  const sheetsNaming = { id: "account.sheets", label: "dough in sheets", ...grams };
  const sheets = worked(sheetsNaming, "dough - losses", { dough, losses }, massBalance);
  const whole = wholeLength(sheets, request, width);
  const sheetsPerLoad = sheetCount(whole, request.longestSheet);
  const sheetLengthNaming = { id: "sheet.length", label: "sheet length", ...wholeMillimetres };
  const sheetLength = worked(sheetLengthNaming, "whole / sheets", { whole, sheets: sheetsPerLoad }, definition);
  const sheetMassNaming = { id: "sheet.mass", label: "mass of a sheet", ...grams, places: 0 };
  const sheetMass = worked(sheetMassNaming, "dough / sheets", { dough: sheets, sheets: sheetsPerLoad }, massBalance);
  return { dough, losses, sheets, ofLoad: { sheetsPerLoad, sheetMass, sheetLength } };
}

/** What of the length of a sheet is cut, between its trimmed ends, mm. */
export function lengthInStrands(sheetLength: Figure, { endTrim }: Pick<CutRequest, "endTrim">): Decimal {
  return exact(sheetLength).minus(dec(endTrim ?? 0).times(2));
}

function tooShort(cutLength: Figure, length: Decimal, portion: Figure, inStrands: Figure): Problem {
  const short = exact(cutLength).gt(length) && length.gte(1);
  return problem(
    "geometry.too-short",
    ["dough"],
    short
      ? { cut: fixedText(cutLength.value, 0), sheet: fixedText(length, 0), longest: fixedText(length.floor(), 0) }
      : { dough: fixedText(inStrands.value, 1), portion: fixedText(portion.value, 1) },
  );
}

/**
 * Tells how many loads a number of portions takes.
 *
 * @param portions - wanted, above 0
 * @param perLoad - what one load gives, as `cutPlan` finds it
 * Problems: `sheet.out-of-range`.
 *
 * @example shown(loadsFor("320", "72").value) // => "5"
 */
export function loadsFor(portions: DecimalText, perLoad: DecimalText): Outcome<Published<Figure>> {
  const problems = outsideLimits([
    { path: ["portions"], value: portions, unit: "", above: "0" },
    { path: ["perLoad"], value: perLoad, unit: "", above: "0" },
  ]);
  if (problems.length > 0) return refuse(...problems);
  const from = {
    wanted: asked({ id: "batch.portions", label: "portions wanted", ...count }, portions),
    perLoad: asked({ id: "load.portions", label: "portions of a load", ...count }, perLoad),
  };
  const naming = { id: "batch.loads", label: "loads of a batch", ...count };
  return publish(worked(naming, "ceil(wanted / perLoad)", from, definition));
}
