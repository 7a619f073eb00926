import { type Figure, worked } from "../figure/figure.ts";
import { workedAnew } from "../figure/recalculate.ts";
import { massBalance } from "../figure/source.ts";
import { hasCarbonate } from "../formula/alkali.ts";
import type { Formula } from "../formula/formula.ts";
import type { FormulaLine } from "../formula/line.ts";

/** One ingredient and what a load really gets of it, g. */
export interface Delivered {
  readonly line: FormulaLine;
  readonly load: Figure;
}

/** The lines of the formula that a load is by its weights, on 100 of its flour. */
function linesAsWeighed(delivered: readonly Delivered[], scope = "weighed"): readonly FormulaLine[] {
  const flour = delivered.filter(({ line }) => line.role === "flour").map(({ load }) => load);
  return delivered.map(({ line, load }): FormulaLine => {
    const naming = { id: `${scope}.${line.parts.id}`, label: line.name, unit: "% of flour", places: line.parts.places };
    const from = { load, flour };
    return { ...line, parts: worked(naming, "100 * load / sum(flour)", from, massBalance) };
  });
}

/**
 * What a figure of the formula is in a load by its weights, worked out by the formula's own graph; nothing for the carbonates
 * of a load that gets none.
 */
export function asWeighed(
  { graph, alkali }: Formula,
  delivered: readonly Delivered[],
  scope?: string,
): (asked: Figure) => Figure | undefined {
  const lines = linesAsWeighed(delivered, scope);
  const anew = workedAnew(
    graph,
    new Map(delivered.map(({ line }, index) => [line.parts.id, lines[index]?.parts ?? line.parts])),
    scope ?? "weighed",
  );
  const carbonate = lines.some(hasCarbonate);
  return (asked) => (asked.id === alkali?.potassiumShare?.id && !carbonate ? undefined : anew(asked.id));
}
