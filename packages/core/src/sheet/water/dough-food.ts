import { type Figure, given, worked } from "../../figure/figure.ts";
import { type Note, note } from "../../figure/problem.ts";
import { massBalance } from "../../figure/source.ts";
import { shareAsIs } from "../../formula/flour-figures.ts";
import { type FormulaLine, moistureFigure } from "../../formula/line.ts";
import type { KitchenMaterial } from "../../materials/own.ts";
import { type Decimal, dec, HUNDRED, ZERO } from "../../number/decimal.ts";
import type { FoodComposition } from "./food.ts";

type Solid = "protein" | "fat" | "fibre" | "ash";
const solids: readonly Solid[] = ["protein", "fat", "fibre", "ash"];

/**
 * Tells what a dough, or some of its ingredients, is made of, in g on 100 g of flour: water and the solids of every line.
 *
 * What is left beside water, protein, fat, fibre and ash counts as carbohydrate, and so does what nobody stated: a note names
 * those. Salts of every kind count as ash.
 *
 * @param name - begins the ids of the figures
 */
export function compositionOf(
  lines: readonly FormulaLine[],
  name = "food",
): { readonly composition: FoodComposition; readonly notes: readonly Note[] } {
  const parts = lines.map((line) => line.parts);
  const of = (component: Solid): Figure => contentFigure(name, component, lines, parts);
  const water = worked({
    id: `${name}.water`,
    label: "water",
    unit: "g",
    places: 2,
    formula: "sum(parts * share) / 100",
    from: { parts, share: lines.map(moistureFigure) },
    sources: [massBalance],
  });
  const [protein, fat, fibre, ash] = [of("protein"), of("fat"), of("fibre"), of("ash")];
  const carbohydrate = worked({
    id: `${name}.carbohydrate`,
    label: "carbohydrate without fibre",
    unit: "g",
    places: 2,
    formula: "max(0, sum(parts) - water - protein - fat - fibre - ash)",
    from: { parts, water, protein, fat, fibre, ash },
    sources: [massBalance],
  });
  return { composition: { water, protein, fat, carbohydrate, fibre, ash }, notes: notStated(lines) };
}

function contentFigure(name: string, solid: Solid, lines: readonly FormulaLine[], parts: readonly Figure[]): Figure {
  const share = lines.map((line) => shareFigure(line, solid));
  return worked({
    id: `${name}.${solid}`,
    label: solid,
    unit: "g",
    places: 2,
    formula: "sum(parts * share) / 100",
    from: { parts, share },
    sources: [massBalance],
  });
}

/** Protein and ash are the figures of the formula, which follow the moisture; all else is as it is stated. */
function shareFigure(line: FormulaLine, solid: Solid): Figure {
  const { material } = line;
  const salt = material.composition !== undefined;
  const food = !salt && material.kind !== "water";
  const asIs = food && (solid === "protein" || solid === "ash") ? shareAsIs(line, solid) : undefined;
  if (asIs !== undefined) return asIs;
  const share = shareOf(material, solid);
  const { nutrientSources = {}, figureSources, source } = material;
  const ofFood = solid === "fat" || solid === "fibre" ? (nutrientSources[solid] ?? source) : source;
  return given({
    id: `${line.id}.${solid}-share`,
    label: `${solid} of ${line.name}`,
    unit: "%",
    places: 2,
    value: share ?? ZERO,
    by: share === undefined ? "not stated, counted as none" : "as stated for the material",
    sources: [salt ? figureSources.composition : ofFood],
  });
}

/** A salt is ash but for its water. */
function shareOf(material: KitchenMaterial, solid: Solid): Decimal | undefined {
  if (material.kind === "water") return ZERO;
  if (material.composition !== undefined) return solid === "ash" ? HUNDRED.minus(material.moisture) : ZERO;
  const value = solid === "protein" ? material.protein?.value : material[solid];
  return value === undefined ? undefined : dec(value);
}

function notStated(lines: readonly FormulaLine[]): readonly Note[] {
  return lines.flatMap((line): readonly Note[] => {
    const missing = solids.filter((solid) => shareOf(line.material, solid) === undefined);
    if (missing.length === 0) return [];
    return [note("food.not-stated", line.path, { name: line.name, solids: missing })];
  });
}
