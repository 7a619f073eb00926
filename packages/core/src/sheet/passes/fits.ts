import { type Problem, problem } from "../../figure/problem.ts";
import { type DecimalText, dec, fixedText } from "../../number/decimal.ts";
import type { Cutter, CutterSize, Machine } from "./machine.ts";

/** A sheet as it is planned, to be tried on a machine. Lengths in mm. */
export interface PlannedSheet {
  readonly width: DecimalText;
  readonly length: DecimalText;
  /** Where the sheet is to be cut. */
  readonly cutter?: CutterSize;
}

/**
 * Tells what of a planned sheet does not fit a machine, and what to change to what.
 *
 * Problems: `fits.rolls-too-narrow`, `fits.cutter-not-there`, `fits.cutter-too-narrow`, `fits.sheet-too-long`.
 *
 * @example fitProblems({ width: "300", length: "4000", cutter: { kind: "number", number: 20 } }, { name: "bench sheeter", rolls: { width: "300", gaps: { kind: "free", least: "0.3", greatest: "12" } }, cutters: [{ size: { kind: "number", number: 20 } }], longestSheet: "3000" }).length // => 1
 */
export function fitProblems(sheet: PlannedSheet, machine: Machine): readonly Problem[] {
  const [{ width }, rolls] = [sheet, machine.rolls.width];
  return [
    ...(dec(width).gt(rolls) ? [problem("fits.rolls-too-narrow", ["width"], { width, rolls })] : []),
    ...cutterProblems(sheet, machine.cutters),
    ...lengthProblems(sheet, machine),
  ];
}

function cutterProblems({ width, cutter }: PlannedSheet, cutters: readonly Cutter[]): readonly Problem[] {
  if (cutter === undefined || cutters.length === 0) return [];
  const same = cutters.filter((known) => sizeText(known.size) === sizeText(cutter));
  if (same.length === 0) return [notThere(cutter, cutters)];
  if (same.some(({ workingWidth }) => workingWidth === undefined || dec(width).lte(workingWidth))) return [];
  const widths = same.flatMap(({ workingWidth }) => (workingWidth === undefined ? [] : [dec(workingWidth)]));
  const widest = widths.reduce((best, value) => (value.gt(best) ? value : best), dec(0));
  const strips = dec(width).div(widest).ceil();
  const each = fixedText(dec(width).div(strips), 0);
  const facts = { width, widest: widest.toString(), cutter: sizeText(cutter), strips: strips.toString(), each };
  return [problem("fits.cutter-too-narrow", ["width"], facts)];
}

function notThere(cutter: CutterSize, cutters: readonly Cutter[]): Problem {
  const byDistance = [...cutters].sort((a, b) => distance(a.size, cutter).comparedTo(distance(b.size, cutter)));
  const [nearest] = byDistance;
  return problem("fits.cutter-not-there", ["cutter"], {
    cutter: sizeText(cutter),
    cutters: cutters.map(({ size }) => sizeText(size)),
    ...(nearest && {
      nearest: sizeText(nearest.size),
      width: fixedText(widthOf(nearest.size), 2),
      meant: sizeWritten(nearest.size),
    }),
  });
}

function distance(one: CutterSize, other: CutterSize) {
  return widthOf(one).minus(widthOf(other)).abs();
}

function widthOf(size: CutterSize) {
  return size.kind === "number" ? dec(30).div(size.number) : dec(size.width);
}

/** The size of a cutter as a spec states it. */
export function sizeWritten(size: CutterSize): string | number {
  return size.kind === "number" ? size.number : sizeText(size);
}

function sizeText(size: CutterSize): string {
  return size.kind === "number" ? `no. ${size.number}` : `${dec(size.width).toString()} mm`;
}

function lengthProblems({ length }: PlannedSheet, { longestSheet }: Machine): readonly Problem[] {
  if (longestSheet === undefined || dec(length).lte(longestSheet)) return [];
  const sheets = dec(length).div(longestSheet).ceil();
  const each = fixedText(dec(length).div(sheets), 0);
  const facts = { length: fixedText(length, 0), longestSheet, sheets: sheets.toString(), each };
  return [problem("fits.sheet-too-long", ["length"], facts)];
}
