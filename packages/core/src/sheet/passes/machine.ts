import { type Path, type Problem, problem } from "../../figure/problem.ts";
import { type DecimalText, dec } from "../../number/decimal.ts";
import { type Limits, outsideLimits } from "../inputs.ts";

/** One place a dial clicks into, one pair of rolls of a line, or one pair of guide sticks: its name and its gap in mm. */
export interface Setting {
  readonly name: string;
  readonly gap: DecimalText;
}

/** How the distance between the rolls is set: freely within limits, or at fixed places measured by the kitchen. */
export type Gaps =
  | { readonly kind: "free"; readonly least: DecimalText; readonly greatest: DecimalText }
  | { readonly kind: "dial" | "line" | "sticks"; readonly settings: readonly Setting[] };

/** A cutter by number (strands per 30 mm of width) or by the width of its strand in mm; a knife is a cutter by width. */
export type CutterSize =
  | { readonly kind: "number"; readonly number: number }
  | { readonly kind: "width"; readonly width: DecimalText };

/** A cutter and the width in mm that it cuts over; without a width it takes what the rolls give. */
export interface Cutter {
  readonly size: CutterSize;
  readonly workingWidth?: DecimalText;
}

/** The rolls of a sheeter, or a rolling pin. */
export interface Rolls {
  /** Width of sheet they take, mm. */
  readonly width: DecimalText;
  readonly gaps: Gaps;
  /** Gap of the rolls that compound, where there are such, mm. */
  readonly compoundingGap?: DecimalText;
  /** Surface speed, m/min: of the last stand that a sheet runs through, or of every stand, first to last. */
  readonly speed?: DecimalText | readonly DecimalText[];
  /** Pairs of rolls a sheet runs through in one trip; 1 where it is left out. */
  readonly stands?: number;
}

/** What a kitchen rolls and cuts with. */
export interface Machine {
  readonly name: string;
  readonly rolls: Rolls;
  readonly cutters: readonly Cutter[];
  /** Longest sheet that the bench or the reel takes, mm. */
  readonly longestSheet?: DecimalText;
}

/** More than any dial has; it keeps the exact search short. */
const MOST_SETTINGS = 60;

/**
 * Looks for what cannot be right in the description of a machine.
 *
 * Problems: `sheet.out-of-range`, `machine.gaps-reversed`, `machine.no-settings`, `machine.too-many-settings`, `machine.same-setting`.
 *
 * @example machineProblems({ name: "bench sheeter", rolls: { width: "0", gaps: { kind: "free", least: "0.3", greatest: "12" } }, cutters: [] }).length // => 1
 */
export function machineProblems(machine: Machine): readonly Problem[] {
  const { rolls, cutters, longestSheet } = machine;
  return [
    ...outsideLimits([
      { path: ["rolls", "width"], value: rolls.width, unit: "mm", above: "0", most: "3000" },
      ...speedLimits(rolls.speed, ["rolls", "speed"]),
      { path: ["rolls", "stands"], value: rolls.stands, unit: "", least: "1", most: "20", whole: true },
      { path: ["longestSheet"], value: longestSheet, unit: "mm", above: "0" },
      ...cutters.flatMap(cutterLimits),
    ]),
    ...gapProblems(rolls.gaps, ["rolls", "gaps"]),
  ];
}

/** What the speed of the rolls has to keep to. */
export function speedLimits(speed: Rolls["speed"], path: Path): readonly Limits[] {
  const speeds = typeof speed === "object" ? speed : [speed];
  return speeds.map((value) => ({ path, value, unit: "m/min", above: "0", most: "200" }));
}

function cutterLimits(cutter: Cutter, index: number): readonly Limits[] {
  const path = ["cutters", index];
  return [
    sizeLimits(cutter.size, [...path, "size"]),
    { path: [...path, "workingWidth"], value: cutter.workingWidth, unit: "mm", above: "0", most: "3000" },
  ];
}

/** What the size of a cutter has to keep to. */
export function sizeLimits(size: CutterSize, path: Path): Limits {
  return size.kind === "number"
    ? { path: [...path, "number"], value: size.number, unit: "", least: "1", most: "60", whole: true }
    : { path: [...path, "width"], value: size.width, unit: "mm", above: "0", most: "300" };
}

/** Looks for what cannot be right in the gaps of a machine. */
export function gapProblems(gaps: Gaps, path: Path): readonly Problem[] {
  if (gaps.kind === "free") {
    const limits = outsideLimits([
      { path: [...path, "least"], value: gaps.least, unit: "mm", least: "0" },
      { path: [...path, "greatest"], value: gaps.greatest, unit: "mm", above: "0", most: "200" },
    ]);
    if (limits.length > 0 || dec(gaps.least).lt(gaps.greatest)) return limits;
    return [problem("machine.gaps-reversed", path, { least: gaps.least, greatest: gaps.greatest })];
  }
  if (gaps.settings.length > MOST_SETTINGS) {
    return [problem("machine.too-many-settings", path, { settings: gaps.settings.length, most: MOST_SETTINGS })];
  }
  if (gaps.settings.length === 0) return [problem("machine.no-settings", path, {})];
  const limit = { unit: "mm", above: "0", most: "200" };
  const limits = outsideLimits(
    gaps.settings.map(({ gap: value }, index) => ({ path: [...path, "settings", index, "gap"], value, ...limit })),
  );
  const twice = gaps.settings.filter(({ name }, index) =>
    gaps.settings.slice(0, index).some((earlier) => earlier.name === name),
  );
  return [...limits, ...twice.map(({ name }) => problem("machine.same-setting", path, { name }))];
}
