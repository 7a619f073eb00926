import { type Figure, given, worked } from "../figure/figure.ts";
import { answer, type Outcome, type Path, problem, refuse } from "../figure/problem.ts";
import { definition, fromSpec, massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { everyLine, type FormulaLine } from "../formula/line.ts";
import { materialName, nearestMaterials } from "../materials/catalogue.ts";
import { plainName } from "../materials/nearest.ts";
import { type Decimal, dec } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";
import type { Losses } from "./losses.ts";
import { doughWithRework, statedRework } from "./rework.ts";
import { lessUnused, mixerLimit, statedMass } from "./stated-mass.ts";

export const bowlsNaming = { id: "batch.bowls", label: "bowls", unit: "", places: 0 };
const doughNaming = { id: "batch.dough", label: "dough to mix", unit: "g", places: 1 };

/** What is left unused of each limit, g, so that the weights, rounded to the scale, stay within it. */
export interface LeftUnused {
  /** Of what there is of one ingredient, in the whole batch. */
  readonly have?: Decimal | undefined;
  /** Of the largest load of the mixer. */
  readonly mixer?: Decimal | undefined;
}

/**
 * Finds the dough to mix from the one way in which the spec states the size of the batch.
 *
 * Problems: `batch.not-stated`, `batch.stated-twice`, `batch.bowl-weight-missing`, `batch.unknown-ingredient`,
 * `batch.ingredient-zero`, `mixer.needed`.
 */
export function doughSize(
  spec: Spec,
  formula: Formula,
  raw: Figure | undefined,
  losses: Losses,
  left: LeftUnused = {},
): Outcome<Figure> {
  const { bowls, dough, flour, load, have } = spec.batch ?? {};
  const ways = Object.entries({ bowls, dough, flour, load, have }).flatMap(([way, value]) =>
    value === undefined ? [] : [way],
  );
  if (ways.length > 1) return refuse(problem("batch.stated-twice", ["batch"], { ways }));
  const parts = formula.water.dough;
  if (bowls !== undefined) {
    if (raw === undefined) return refuse(problem("batch.bowl-weight-missing", ["batch"], {}));
    return answer(doughForBowls(statedBowls(bowls), raw, losses));
  }
  if (dough !== undefined) return answer(statedMass("batch.dough", "dough to mix", dough));
  if (load !== undefined) return doughForLoad(spec, parts, left.mixer);
  const fresh = newDough(spec, formula, left);
  return fresh.ok ? answer(besideRework(fresh.value, spec)) : fresh;
}

/** The dough that is newly made, where the size of the batch is stated by what goes into it. */
function newDough({ batch }: Spec, formula: Formula, left: LeftUnused): Outcome<Figure> {
  const { flour, have } = batch ?? {};
  if (flour !== undefined) {
    return answer(doughForFlour(statedMass("batch.flour-stated", "flour stated", flour), formula.water.dough));
  }
  if (have !== undefined) return doughForIngredient(have, formula, left.have);
  if (formula.writtenFlour !== undefined) return answer(doughAsWritten(formula, formula.writtenFlour));
  return refuse(problem("batch.not-stated", ["batch"], {}));
}

/** The dough in the mixer: the new dough, and the rework beside it. */
function besideRework(dough: Figure, { rework }: Spec): Figure {
  if (rework === undefined) return dough;
  const fresh = { ...dough, id: "batch.fresh", label: "new dough" };
  return doughWithRework(doughNaming, fresh, statedRework(rework));
}

/** The bowls that the spec states. */
export function statedBowls(value: number): Figure {
  return given(bowlsNaming, value, "the spec", fromSpec);
}

type Have = NonNullable<NonNullable<Spec["batch"]>["have"]>;

function doughForBowls(bowls: Figure, raw: Figure, losses: Losses): Figure {
  return worked(
    doughNaming,
    "bowls * raw / ((1 - mixing / 100) * (1 - sheeting / 100) * (1 - cutting / 100))",
    { bowls, raw, ...losses },
    massBalance,
  );
}

function doughForFlour(flour: Figure, parts: Figure): Figure {
  const from = { flour, parts };
  return worked(doughNaming, "flour * parts / 100", from, massBalance);
}

function doughAsWritten(formula: Formula, flour: Figure): Figure {
  const factor = formula.referenceFactor;
  const parts = formula.water.dough;
  if (factor === undefined) return doughForFlour(flour, parts);
  const from = { flour, factor, parts };
  return worked(doughNaming, "flour / factor * parts / 100", from, massBalance);
}

function doughForLoad(spec: Spec, parts: Figure, left: Decimal | undefined): Outcome<Figure> {
  const { mixer } = spec;
  const size = spec.batch?.load;
  const limit = size === "smallest" ? mixer?.smallest : mixer?.largest;
  if (limit === undefined) {
    const path: Path = mixer === undefined ? ["batch", "load"] : ["mixer"];
    return refuse(problem("mixer.needed", path, { size: size ?? "largest" }));
  }
  const used = lessUnused(mixerLimit(size === "smallest" ? size : "largest", limit, mixer?.of), left);
  if (mixer?.of === "flour") return answer(doughForFlour(used, parts));
  return answer(worked(doughNaming, "load", { load: used }, definition));
}

/** The lines of a formula, dusting too, that take from one ingredient: by its name in the formula, or as the same material. */
export function linesOf(name: string, formula: Formula): readonly FormulaLine[] {
  const wanted = materialName(name);
  return everyLine(formula).filter(
    (line) => materialName(line.name) === wanted || plainName(line.material.name) === wanted,
  );
}

function doughForIngredient(have: Have, formula: Formula, left: Decimal | undefined): Outcome<Figure> {
  const lines = linesOf(have.name, formula);
  const path: Path = ["batch", "have", "name"];
  if (lines.length === 0) {
    const names = everyLine(formula).map((line) => line.name);
    const nearest = nearestMaterials(have.name, names, 2);
    return refuse(problem("batch.unknown-ingredient", path, { name: have.name, names, nearest }));
  }
  const parts = lines.map((line) => line.parts);
  if (parts.every((part) => dec(part.value).isZero())) {
    return refuse(problem("batch.ingredient-zero", path, { name: have.name }));
  }
  const stock = statedMass("batch.have", `${have.name} there is`, have.amount);
  const used = lessUnused(stock, left);
  const dough = worked(
    doughNaming,
    "have * dough / sum(parts)",
    { have: used, dough: formula.water.dough, parts },
    massBalance,
  );
  return answer(dough);
}
