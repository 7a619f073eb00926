import type { Figure } from "../../figure/figure.ts";
import { type Problem, problem } from "../../figure/problem.ts";
import type { DecimalText } from "../../number/decimal.ts";
import { type Given, outsideLimits } from "../inputs.ts";
import { type CutterSize, sizeLimits } from "../passes/machine.ts";

/** A load of dough that is to become sheets. */
export interface SheetRequest {
  /** Dough of one load, g. */
  readonly dough: Given;
  /** g/mL, measured or estimated. */
  readonly density: Figure;
  /** Final thickness, mm. */
  readonly thickness: Given;
  /** Width of the sheet as it leaves the rolls, mm. */
  readonly width: DecimalText;
  /** Dough left in the mixer and on the rolls, % of the load. */
  readonly losses?: Given;
  /** Longest sheet that the bench or the reel takes, mm. */
  readonly longestSheet?: DecimalText;
}

/** A load of dough that is to become strands. */
export interface CutRequest extends SheetRequest {
  readonly cutter: CutterSize;
  /** Width the cutter cuts over, mm; the sheet's where it is left out. */
  readonly workingWidth?: DecimalText;
  /** Raw portion, g. Alone it sets the cut length, so that one cut across the sheet is one portion. */
  readonly portion?: Given;
  /** Length of the strands, mm. Alone it makes one cut across the sheet one portion. */
  readonly strandLength?: DecimalText;
  /** Cut off each side of the sheet, mm. */
  readonly edgeTrim?: DecimalText;
  /** Cut off each end of a sheet, mm. */
  readonly endTrim?: DecimalText;
}

/** Finds what is wrong with a request for sheets before anything is worked out. */
export function sheetRequestProblems(request: SheetRequest): readonly Problem[] {
  return outsideLimits([
    { path: ["dough"], value: request.dough, unit: "g", least: "0.001", most: "10000000" },
    { path: ["density"], value: request.density.value, unit: "g/mL", above: "0", most: "2" },
    { path: ["thickness"], value: request.thickness, unit: "mm", above: "0", most: "100" },
    { path: ["width"], value: request.width, unit: "mm", above: "0", most: "3000" },
    { path: ["losses"], value: request.losses, unit: "%", least: "0", below: "100" },
    { path: ["longestSheet"], value: request.longestSheet, unit: "mm", above: "0" },
  ]);
}

/** A raw portion where nobody states one. */
export const usualPortion = "110 g";

/** Finds what is wrong with a request for strands before anything is worked out. */
export function cutRequestProblems(request: CutRequest): readonly Problem[] {
  const limits = outsideLimits([
    sizeLimits(request.cutter, ["cutter"]),
    { path: ["workingWidth"], value: request.workingWidth, unit: "mm", above: "0", most: "3000" },
    { path: ["portion"], value: request.portion, unit: "g", least: "0.001" },
    { path: ["strandLength"], value: request.strandLength, unit: "mm", least: "1" },
    { path: ["edgeTrim"], value: request.edgeTrim, unit: "mm", least: "0" },
    { path: ["endTrim"], value: request.endTrim, unit: "mm", least: "0" },
  ]);
  const problems = [...sheetRequestProblems(request), ...limits];
  if (request.portion !== undefined || request.strandLength !== undefined) return problems;
  return [...problems, problem("geometry.no-cut", ["portion"], { meant: usualPortion })];
}
