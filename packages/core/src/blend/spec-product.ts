import { type Figure, worked } from "../figure/figure.ts";
import { inGraph, type Published, published } from "../figure/graph.ts";
import { answer, type Outcome, problem, refuse } from "../figure/problem.ts";
import { definition, massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import type { FormulaLine } from "../formula/line.ts";
import { moistureFigure, type Product } from "../formula/made-of.ts";
import { ofFlour, percent } from "../formula/naming.ts";
import { nearestMaterials } from "../materials/catalogue.ts";
import { plainName } from "../materials/nearest.ts";
import { type OwnMaterials, resolveMaterial } from "../materials/own.ts";
import { dec, decimalText } from "../number/decimal.ts";
import { type ActiveProduct, replaceProduct } from "./replace-product.ts";

/** An ingredient replaced by another with the same dry matter: amounts on 100 of flour, before and now. */
export interface ReplacedIngredient {
  readonly old: FormulaLine;
  readonly by: string;
  /** The new product that takes its place, % of flour. */
  readonly amount: Figure;
  /** What the formula has of that product already, and all of it with what takes the place of the old one, % of flour. */
  readonly there?: Figure;
  readonly all: Figure;
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
  if (old === undefined) {
    const names = ingredients.map((line) => line.name);
    return refuse(
      problem("replace.ingredient", ["missing"], { name, names, nearest: nearestMaterials(name, names, 1) }),
    );
  }
  const fresh = resolveMaterial(by, ["with"], undefined, extra);
  if (!fresh.ok) return fresh;
  const { kind } = fresh.value;
  const wanted = old.material.kind;
  if (kind !== wanted) return refuse(problem("replace.kind", ["with"], { by, kind, wanted, name: old.name }));
  const outcome = replaceProduct(
    inGraph(old.parts, formula.graph),
    productOf(old),
    productOf({ id: "replaced", name: by, material: fresh.value }),
  );
  if (!outcome.ok) return refuse(...outcome.problems.map((problem) => ({ ...problem, path: ["with"] })));
  const figure = (id: string, label: string, formula: string, from: Readonly<Record<string, Figure>>): Figure =>
    worked(ofFlour(`replaced.${id}`, label), formula, from, massBalance);
  const { mass, water: toAdd } = outcome.value;
  const amount = figure("amount", mass.label.replace("mass of ", ""), "mass", { mass });
  const there = ingredients.find((line) => line !== old && plainName(line.name) === plainName(by))?.parts;
  const all = there ? figure("all", by, "there + amount", { there, amount }) : amount;
  const water = figure("water", toAdd.label, "mass", { mass: toAdd });
  const tapBefore = formula.water.tap;
  const tap = figure("tap", "tap water", "before + water", { before: tapBefore, water });
  if (dec(tap.value).isNegative()) {
    const short = decimalText(dec(tap.value).negated().toDecimalPlaces(2));
    return refuse(problem("replace.no-water", ["with"], { by, short }));
  }
  const oldChange = figure("old-change", `change of ${old.name}`, "-before", { before: old.parts });
  const tapChange = figure("tap-change", "change of the tap water", "now - before", { now: tap, before: tapBefore });
  return answer(
    published(
      { old, by, amount, ...(there && { there }), all, water, tapBefore, tap, oldChange, tapChange },
      formula.graph,
      outcome.value.graph,
    ),
  );
}

/** What is not water stays. */
function productOf(product: Product): ActiveProduct {
  const { id, name } = product;
  const water = moistureFigure(product);
  const active = worked(percent(`${id}.dry-matter`, `dry matter of ${name}`), "100 - water", { water }, definition);
  return { name, active, water };
}
