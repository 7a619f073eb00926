import type { Figure } from "../figure/figure.ts";
import type { ScaleUnit } from "../number/units.ts";

/** One thing to buy. Masses in g. */
export interface ShoppingLine {
  readonly name: string;
  /** Unit the scale shows and its division. */
  readonly unit: ScaleUnit;
  readonly division: string;
  readonly need: Figure;
  readonly load: Figure;
  readonly onHand?: Figure;
  /** Packs to buy, and the pack as written. */
  readonly packs?: { readonly count: Figure; readonly text: string };
  /** Mass to buy. */
  readonly buy: Figure;
  /** What it costs; undefined without a price. */
  readonly pay?: Figure;
  readonly left: Figure;
}
