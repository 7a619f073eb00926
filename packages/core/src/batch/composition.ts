import type { Figure } from "../figure/figure.ts";
import type { FormulaLine } from "../formula/line.ts";
import type { Content } from "../materials/nutrients.ts";
import { foodContents } from "./composition-food.ts";
import { mineralContents } from "./composition-minerals.ts";

/** What 100 g of an ingredient holds; what nobody states is left out. Each in the unit of its nutrient. */
export interface Contents extends Readonly<Partial<Record<Content, Figure | undefined>>> {
  readonly line: FormulaLine;
  /** The nitrogen factor is not stated and was taken as the usual one. */
  readonly factorAssumed: boolean;
}

/**
 * What 100 g of an ingredient holds: salts by chemistry, all else as the table or the kitchen states it.
 *
 * Carbohydrate is by difference where it is not stated, and where the kitchen's figures replaced others of a table row, so
 * that all still adds up to 100 g. Zeros are said where they are so by nature: salts and water hold no protein.
 */
export function contentsOf(line: FormulaLine): Contents {
  const { material } = line;
  const bySalts = material.composition !== undefined || material.kind === "water";
  return { line, ...(bySalts ? mineralContents(line) : foodContents(line)) };
}
