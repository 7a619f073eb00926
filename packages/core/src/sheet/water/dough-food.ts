import { type Figure, given, worked } from "../../figure/figure.ts";
import { type Note, note } from "../../figure/problem.ts";
import { massBalance } from "../../figure/source.ts";
import { shareAsIs } from "../../formula/flour-figures.ts";
import type { FormulaLine } from "../../formula/line.ts";
import { moistureFigure } from "../../formula/made-of.ts";
import type { KitchenMaterial } from "../../materials/own.ts";
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
  const water = worked(
    { id: `${name}.water`, label: "water", unit: "g", places: 2 },
    "sum(parts * share) / 100",
    { parts, share: lines.map(moistureFigure) },
    massBalance,
  );
  const [protein, fat, fibre, ash] = [of("protein"), of("fat"), of("fibre"), of("ash")];
  const carbohydrate = worked(
    { id: `${name}.carbohydrate`, label: "carbohydrate without fibre", unit: "g", places: 2 },
    "max(0, sum(parts) - water - protein - fat - fibre - ash)",
    { parts, water, protein, fat, fibre, ash },
    massBalance,
  );
  return { composition: { water, protein, fat, carbohydrate, fibre, ash }, notes: notStated(lines) };
}

function contentFigure(name: string, solid: Solid, lines: readonly FormulaLine[], parts: readonly Figure[]): Figure {
  const share = lines.map((line) => shareFigure(line, solid));
  const naming = { id: `${name}.${solid}`, label: solid, unit: "g", places: 2 };
  return worked(naming, "sum(parts * share) / 100", { parts, share }, massBalance);
}

/** What a food states is a figure of the formula, which follows the moisture; a salt is ash but for its water. */
function shareFigure(line: FormulaLine, solid: Solid): Figure {
  const { id, name, material } = line;
  const stated = isFood(material) ? shareAsIs(line, solid) : undefined;
  if (stated !== undefined) return stated;
  const of = { id: `${id}.${solid}-share`, label: `${solid} of ${name}`, unit: "%", places: 2 };
  if (material.composition !== undefined && solid === "ash") {
    const from = { moisture: moistureFigure(line) };
    return worked(of, "100 - moisture", from, material.figureSources.composition);
  }
  const by = isFood(material) ? "not stated, counted as none" : "none by nature";
  return given(of, 0, by, material.source);
}

function isFood({ composition, kind }: KitchenMaterial): boolean {
  return composition === undefined && kind !== "water";
}

function notStated(lines: readonly FormulaLine[]): readonly Note[] {
  return lines.flatMap((line): readonly Note[] => {
    const missing = isFood(line.material) ? solids.filter((solid) => line.material[solid] === undefined) : [];
    if (missing.length === 0) return [];
    return [note("food.not-stated", line.path, { name: line.name, solids: missing })];
  });
}
