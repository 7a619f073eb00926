import type { Figure } from "../figure/figure.ts";
import type { Path } from "../figure/path.ts";
import type { KitchenMaterial } from "../materials/own.ts";
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
