import { type Figure, given, worked } from "../figure/figure.ts";
import { type Published, published } from "../figure/graph.ts";
import { answer, type Outcome, problem, refuse } from "../figure/problem.ts";
import { fromSpec, massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import type { FormulaLine } from "../formula/line.ts";
import { ofFlour } from "../formula/naming.ts";
import { nearestMaterials } from "../materials/catalogue.ts";
import { plainName } from "../materials/nearest.ts";
import { type KitchenMaterial, type OwnMaterials, resolveMaterial } from "../materials/own.ts";
import { dec, decimalText, HUNDRED } from "../number/decimal.ts";
import { type ActiveProduct, replaceProduct } from "./replace-product.ts";

/** An ingredient replaced by another with the same dry matter: amounts on 100 of flour, before and now. */
export interface ReplacedIngredient {
  readonly old: FormulaLine;
  readonly by: string;
  /** The new product, % of flour. */
  readonly amount: Figure;
  /** Water that goes with it, below zero where water is taken away, % of flour. */
  readonly water: Figure;
  readonly tapBefore: Figure;
  readonly tap: Figure;
  /** What is taken away of the old one, and what becomes more or less of the tap water, % of flour. */
  readonly oldChange: Figure;
  readonly tapChange: Figure;
}

/**
 * Replaces an ingredient of a formula by another of the same dry matter, such as whole egg by dried egg; the tap water
 * makes up for the water.
 *
 * @param extra - the kitchen's own materials
 * Problems: `replace.ingredient`, `replace.kind`, `replace.no-water`, and those of `resolveMaterial` and `replaceProduct`.
 */
export function replaceIngredient(
  formula: Formula,
  name: string,
  by: string,
  extra: OwnMaterials = {},
): Outcome<Published<ReplacedIngredient>> {
  const ingredients = formula.lines.filter(({ role }) => role === "ingredient");
  const old = ingredients.find((line) => plainName(line.name) === plainName(name));
  if (old === undefined) return refuse(notAnIngredient(name, ingredients));
  const fresh = resolveMaterial(by, ["with"], undefined, extra);
  if (!fresh.ok) return fresh;
  if (fresh.value.kind !== old.material.kind) return refuse(otherKind(old, by, fresh.value));
  const outcome = replaceProduct(old.parts.value, productOf(old.name, old.material), productOf(by, fresh.value));
  if (!outcome.ok) return refuse(...outcome.problems.map((problem) => ({ ...problem, path: ["with"] })));
  const onFlour = (figure: Figure, id: string): Figure =>
    worked(
      { id, label: figure.label.replace("mass of ", ""), unit: "% of flour", places: 2 },
      "mass",
      { mass: figure },
      massBalance,
    );
  const amount = onFlour(outcome.value.mass, "replaced.amount");
  const water = onFlour(outcome.value.water, "replaced.water");
  const tapBefore = given(
    ofFlour("replaced.tap-before", "tap water before"),
    formula.water.tap.value,
    "the formula",
    fromSpec,
  );
  const tap = worked(ofFlour("replaced.tap", "tap water"), "before + water", { before: tapBefore, water }, massBalance);
  if (dec(tap.value).isNegative()) return refuse(noWater(by, tap));
  const change = (id: string, label: string, text: string, from: Readonly<Record<string, Figure>>): Figure =>
    worked({ id, label, unit: "% of flour", places: 2 }, text, from, massBalance);
  const oldChange = change("replaced.old-change", `change of ${old.name}`, "-before", { before: old.parts });
  const tapChange = change("replaced.tap-change", "change of the tap water", "now - before", {
    now: tap,
    before: tapBefore,
  });
  return answer(
    published({ old, by, amount, water, tapBefore, tap, oldChange, tapChange }, formula.graph, outcome.value.graph),
  );
}

function productOf(name: string, material: KitchenMaterial): ActiveProduct {
  return {
    name,
    active: decimalText(HUNDRED.minus(material.moisture)),
    water: material.moisture,
    source: material.figureSources.moisture,
  };
}

function notAnIngredient(name: string, ingredients: readonly FormulaLine[]) {
  const names = ingredients.map((line) => line.name);
  return problem("replace.ingredient", ["missing"], { name, names, nearest: nearestMaterials(name, names, 1) });
}

function otherKind({ name, material }: FormulaLine, by: string, fresh: KitchenMaterial) {
  return problem("replace.kind", ["with"], { by, kind: fresh.kind, wanted: material.kind, name });
}

function noWater(by: string, tap: Figure) {
  const short = decimalText(dec(tap.value).negated().toDecimalPlaces(2));
  return problem("replace.no-water", ["with"], { by, short });
}
