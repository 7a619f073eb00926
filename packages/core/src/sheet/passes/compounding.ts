import { type Figure, worked } from "../../figure/figure.ts";
import { type Problem, problem } from "../../figure/problem.ts";
import { definition } from "../../figure/source.ts";
import { type DecimalText, dec } from "../../number/decimal.ts";
import { asked, type Limits } from "../inputs.ts";
import type { Gaps } from "./machine.ts";
import { type PassStep, stepAt } from "./pass-step.ts";

/**
 * How the crumb becomes one sheet: it goes through the gap once, then layers are laid on each other and go through it again.
 */
export interface Compounding {
  /** mm. */
  readonly gap: DecimalText;
  /** How many times the sheet is folded, or sheets are joined, and rolled again. */
  readonly folds: number;
  /** Layers laid on each other each time; 2 where it is left out. */
  readonly layers?: number;
}

/** A pass of compounding. */
export interface CompoundStep extends PassStep {
  readonly kind: "rough" | "compound";
  readonly layers: number;
  readonly reduction?: Figure;
}

/** What compounding has to keep to. */
export function compoundingLimits({ gap, folds, layers }: Compounding): readonly Limits[] {
  return [
    { path: ["compounding", "gap"], value: gap, unit: "mm", above: "0", most: "100" },
    { path: ["compounding", "folds"], value: folds, unit: "", least: "0", most: "20", whole: true },
    { path: ["compounding", "layers"], value: layers, unit: "", least: "2", most: "4", whole: true },
  ];
}

/** Finds a compounding gap that the rolls cannot be set to. */
export function compoundingProblems({ gap }: Compounding, gaps: Gaps, own?: DecimalText): readonly Problem[] {
  if (own !== undefined && dec(own).eq(gap)) return [];
  const there =
    gaps.kind === "free"
      ? dec(gap).gte(gaps.least) && dec(gap).lte(gaps.greatest)
      : gaps.settings.some((setting) => dec(setting.gap).eq(gap));
  if (there) return [];
  const facts = { gap, gaps, ...(own !== undefined && { own }) };
  return [problem("compounding.gap-not-there", ["compounding", "gap"], facts)];
}

/**
 * Lists the passes of compounding. Layers pressed into one are no reduction in the sense of the limit: the published method
 * with a first gap of 2.75 mm folds in two and rolls again at that same gap.
 */
export function compoundingSteps(compounding: Compounding, springBack: Figure): readonly CompoundStep[] {
  const layers = compounding.layers ?? 2;
  const naming = { id: "compounding.gap", label: "gap of compounding", unit: "mm", places: 2 };
  const gap = asked(naming, compounding.gap);
  const rough: CompoundStep = { kind: "rough", layers: 1, ...stepAt(1, gap, springBack) };
  const folds = Array.from({ length: compounding.folds }, (_, index): CompoundStep => {
    const step = stepAt(index + 2, gap, springBack);
    return { kind: "compound", layers, ...step, reduction: pressed(index + 2, step.thickness, layers) };
  });
  return [rough, ...folds];
}

function pressed(pass: number, thickness: Figure, layers: number): Figure {
  const naming = { id: `pass-${pass}.reduction`, label: "reduction of the layers", unit: "%", places: 1 };
  return worked(naming, "(1 - thickness / (layers * thickness)) * 100", { thickness, layers }, definition);
}
