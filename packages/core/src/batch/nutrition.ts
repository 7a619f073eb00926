import { type Figure, worked } from "../figure/figure.ts";
import { type Graph, published } from "../figure/graph.ts";
import { answer, type Outcome } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { everyLine, inUse } from "../formula/line.ts";
import type { Jurisdiction } from "../materials/allergen-lists.ts";
import { type AllergenReport, allergensFor } from "../materials/allergens.ts";
import type { RuleBookName } from "../materials/rounding-rules.ts";
import type { Spec } from "../spec/spec.ts";
import { bowlWeight, cookGain } from "./bowl.ts";
import { contentsOf } from "./composition.ts";
import { amountsOf, type NutrientAmount, otherProtein } from "./nutrition-amounts.ts";
import { type KeptInBoiling, keptInBoiling } from "./nutrition-cooked.ts";
import { type Declared, declaredOf } from "./nutrition-declared.ts";
import { nutritionNotes } from "./nutrition-notes.ts";

/** What a noodle contains, raw and as eaten, by the rules of one jurisdiction; an estimate to help prepare a label. */
export interface Nutrition {
  /** By whose rules it is counted and rounded. */
  readonly rules: RuleBookName;
  /** Raw strands in a bowl and the same cooked, g; undefined where the spec states no weight of a bowl. */
  readonly bowl?: { readonly raw: Figure; readonly cooked: Figure };
  readonly gain: Figure;
  readonly kept: KeptInBoiling;
  readonly amounts: readonly NutrientAmount[];
  /** Protein of 100 g on the other count of nitrogen. */
  readonly otherProtein: Figure;
  /** As printed: of the raw noodle and of the boiled one. */
  readonly declared: { readonly raw: readonly Declared[]; readonly cooked: readonly Declared[] };
  readonly allergens: AllergenReport;
  readonly graph: Graph;
}

/** By which rules to count and to round, and whose list of allergens to go by. */
export interface NutritionWish {
  readonly rules: RuleBookName;
  readonly jurisdiction?: Jurisdiction | undefined;
}

/**
 * What the noodle of a formula contains per 100 g and per bowl, raw and boiled, and what a label would print.
 *
 * A content that an ingredient does not state is never taken as none: the figure is then a least value beside a greatest
 * one and names what is missing, and only what both would print alike is declared. Boiling is taken to keep everything but sodium, potassium and what the note says.
 * Problems: those of the weight of a bowl. Sources: on every figure.
 */
export function nutritionOf(spec: Spec, formula: Formula, wish: NutritionWish): Outcome<Nutrition> {
  const weight = bowlWeight(spec);
  if (!weight.ok) return weight;
  const { rules } = wish;
  const contents = inUse(formula.lines).map(contentsOf);
  const kept = keptInBoiling();
  const { gain, notes } = cookGain(spec);
  const { raw } = weight.value;
  const bowl = raw && { raw, cooked: weight.value.cooked ?? cookedFigure(raw, gain) };
  const amounts = amountsOf(contents, formula, rules, { gain, kept, ...(raw && { raw }) });
  const other = otherProtein(contents, formula, rules);
  const used = inUse(everyLine(formula));
  const materials = used.map(({ name, material }) => ({ ...material, name }));
  const allergens = allergensFor(materials, wish.jurisdiction ?? rules);
  const nutrition: Omit<Nutrition, "graph"> = {
    rules,
    ...(bowl && { bowl }),
    gain,
    kept,
    amounts,
    otherProtein: other,
    declared: { raw: declaredOf(amounts, rules, "raw"), cooked: declaredOf(amounts, rules, "cooked") },
    allergens,
  };
  return answer(published(nutrition, formula.graph), [...notes, ...nutritionNotes(formula, contents, nutrition)]);
}

function cookedFigure(raw: Figure, gain: Figure): Figure {
  const naming = { id: "bowl.cooked", label: "cooked noodles in a bowl", unit: "g", places: 1 };
  return worked(naming, "raw * gain", { raw, gain }, massBalance);
}
