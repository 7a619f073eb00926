import type { Figure } from "../../figure/figure.ts";
import { type Problem, problem } from "../../figure/problem.ts";
import { type DecimalText, dec } from "../../number/decimal.ts";
import { type Given, outsideLimits } from "../inputs.ts";
import { type Compounding, compoundingLimits, compoundingProblems } from "./compounding.ts";
import { type Gaps, gapProblems, speedLimits } from "./machine.ts";
import type { GapList } from "./steps-for-gaps.ts";

/** What a pass schedule is asked for. Thicknesses in mm. */
export interface PassRequest {
  readonly gaps: Gaps | GapList;
  /** Thickness of the dough or rough sheet before the first pass; left out where compounding gives it. */
  readonly firstThickness?: DecimalText;
  readonly finalThickness: DecimalText;
  readonly compounding?: Compounding;
  /** Gap of the rolls that compound, where the machine has its own, mm. */
  readonly compoundingGap?: DecimalText;
  /** Largest share of the thickness that a pass may take off, %; one third where it is left out. */
  readonly largestReduction?: DecimalText;
  /** Thickness of the sheet by the gap it came through, measured by the kitchen; 1 where it is left out. */
  readonly springBack?: DecimalText;
  /** How far the last fixed setting may lie from the final thickness, mm; 0.1 where it is left out. */
  readonly finalTolerance?: DecimalText;
  /** The sheet, for its length: mass in g, density in g/mL, width in mm. */
  readonly sheet?: { readonly mass: Given; readonly density: Figure; readonly width: DecimalText };
  /** Surface speed of the rolls, m/min, for the running time: of the last stand of a trip, or of every stand. */
  readonly rollSpeed?: DecimalText | readonly DecimalText[];
  /** Pairs of rolls that a sheet runs through in one trip. */
  readonly stands?: number;
}

/** Finds what is wrong with a request before anything is planned. */
export function passRequestProblems(request: PassRequest): readonly Problem[] {
  const { gaps, sheet } = request;
  return [
    ...outsideLimits([
      { path: ["firstThickness"], value: request.firstThickness, unit: "mm", above: "0", most: "500" },
      { path: ["finalThickness"], value: request.finalThickness, unit: "mm", above: "0", most: "100" },
      { path: ["largestReduction"], value: request.largestReduction, unit: "%", least: "1", most: "90" },
      { path: ["springBack"], value: request.springBack, unit: "", least: "0.5", most: "3" },
      { path: ["finalTolerance"], value: request.finalTolerance, unit: "mm", least: "0", most: "5" },
      ...speedLimits(request.rollSpeed, ["rollSpeed"]),
      { path: ["stands"], value: request.stands, unit: "", least: "1", most: "20", whole: true },
      { path: ["sheet", "mass"], value: sheet?.mass, unit: "g", above: "0" },
      { path: ["sheet", "density"], value: sheet?.density.value, unit: "g/mL", above: "0", most: "2" },
      { path: ["sheet", "width"], value: sheet?.width, unit: "mm", above: "0", most: "3000" },
      ...(request.compounding === undefined ? [] : compoundingLimits(request.compounding)),
      ...(gaps.kind === "list"
        ? gaps.gaps.map((value, index) => ({ path: ["gaps", "gaps", index], value, unit: "mm", above: "0" }))
        : []),
    ]),
    ...firstProblems(request),
    ...(gaps.kind === "list" ? [] : gapProblems(gaps, ["gaps"])),
    ...(gaps.kind === "list" || request.compounding === undefined
      ? []
      : compoundingProblems(request.compounding, gaps, request.compoundingGap)),
  ];
}

/** A dough of which the widest gap takes off a fifth, mm, to a tenth. */
export function usualFirst(gaps: PassRequest["gaps"]): DecimalText {
  const open =
    gaps.kind === "free" ? [gaps.greatest] : gaps.kind === "list" ? gaps.gaps : gaps.settings.map(({ gap }) => gap);
  const widest = open.map((gap) => dec(gap)).reduce((one, other) => (one.gt(other) ? one : other), dec(0));
  return widest.times("1.25").toDecimalPlaces(1).toFixed();
}

function firstProblems({ firstThickness, compounding, gaps }: PassRequest): readonly Problem[] {
  if ((firstThickness === undefined) !== (compounding === undefined)) return [];
  const path = ["firstThickness"];
  if (compounding !== undefined) return [problem("passes.first-thickness", path, { stated: "both" })];
  return [problem("passes.first-thickness", path, { stated: "neither", meant: `${usualFirst(gaps)} mm` })];
}
