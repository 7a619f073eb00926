import type { Figure } from "../figure/figure.ts";
import type { Path } from "../figure/path.ts";
import type { KitchenMaterial } from "../materials/own.ts";
import { dec } from "../number/decimal.ts";
import type { Role } from "./entries.ts";

/** One ingredient of the formula on 100 parts of flour as weighed. */
export interface FormulaLine {
  /** `flour.1`, `alkali.2`, `salt`, `ingredient.1`, `water`. */
  readonly id: string;
  readonly role: Role;
  readonly name: string;
  /** Where the spec says so. */
  readonly path: Path;
  readonly material: KitchenMaterial;
  /** % of flour. */
  readonly parts: Figure;
}

/** Every line of a formula, that for dusting the last. */
export function everyLine(formula: {
  readonly lines: readonly FormulaLine[];
  readonly dusting?: FormulaLine;
}): readonly FormulaLine[] {
  return [...formula.lines, ...(formula.dusting ? [formula.dusting] : [])];
}

/** The lines of which there is any, and the water: what is written at 0 % is neither weighed nor bought. */
export function inUse(lines: readonly FormulaLine[]): readonly FormulaLine[] {
  return lines.filter(({ role, parts }) => role === "water" || !dec(parts.value).isZero());
}
