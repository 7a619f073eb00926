import { type Figure, worked } from "../figure/figure.ts";
import { massBalance } from "../figure/source.ts";
import { type AlkaliFigures, sumAlkali } from "../formula/alkali.ts";
import { type Blend, mixFlours } from "../formula/blend.ts";
import type { FormulaLine } from "../formula/lines.ts";
import { type WaterBalance, waterWith } from "../formula/water.ts";

/** One ingredient and what a load really gets of it, g. */
export interface Delivered {
  readonly line: FormulaLine;
  readonly load: Figure;
}

/** The formula that a load is by its weights. */
export interface AsWeighed {
  readonly lines: readonly FormulaLine[];
  readonly blend: Blend;
  readonly water: WaterBalance;
  readonly alkali?: AlkaliFigures;
}

/** Works out the formula that a load is by its weights: on 100 of its flour, by the formulas of the formula itself. */
export function asWeighed(delivered: readonly Delivered[]): AsWeighed {
  const flour = delivered.filter(({ line }) => line.role === "flour").map(({ load }) => load);
  const lines = delivered.map(({ line, load }): FormulaLine => {
    const naming = { id: `${line.id}.weighed-parts`, label: line.name, unit: "% of flour", places: line.parts.places };
    const from = { load, flour };
    return { ...line, parts: worked({ ...naming, formula: "100 * load / sum(flour)", from, sources: [massBalance] }) };
  });
  const of = (...roles: readonly FormulaLine["role"][]) => lines.filter(({ role }) => roles.includes(role));
  const taps = of("water").map(({ parts }) => parts);
  const tap = worked({
    id: "water.tap",
    label: "tap water",
    unit: "% of flour",
    places: 2,
    formula: taps.length === 0 ? "0" : "sum(parts)",
    from: taps.length === 0 ? {} : { parts: taps },
    sources: [massBalance],
  });
  const flours = of("flour");
  const alkali = sumAlkali(lines);
  return {
    lines,
    blend: mixFlours(flours),
    water: waterWith(tap, { flours, others: of("alkali", "salt", "ingredient") }),
    ...(alkali && { alkali }),
  };
}
