import { alkalinityM, sharesOf } from "../chemistry/composition.ts";
import { convert } from "../chemistry/convert.ts";
import type { SaltShare } from "../chemistry/salt-content.ts";
import { amountsFor, type Held } from "../chemistry/swap-amounts.ts";
import { type Figure, restingOn, shown, worked } from "../figure/figure.ts";
import { answer, type Note, note, type Outcome, type Path, type Problem, problem, refuse } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import { type KitchenMaterial, type OwnMaterials, resolveMaterial, writtenProduct } from "../materials/own.ts";
import { readProduct } from "../materials/product-text.ts";
import type { DoseBeside } from "../materials/several.ts";
import type { Holding, SpecAlkali } from "../spec/spec.ts";
import type { FormulaLine } from "./line.ts";
import { contentFigure, type Product as MadeProduct } from "./made-of.ts";
import { ofFlour } from "./naming.ts";

/** An alkaline product of the spec and what takes its place. */
export interface Replacement {
  readonly old: FormulaLine;
  readonly lines: readonly FormulaLine[];
}

const held: Readonly<Record<Holding, Held>> = {
  "anhydrous salts": "anhydrous",
  "alkalinity M": "M",
  "alkalinity P": "P",
  "sodium and potassium": "cations",
};

/** What a replacement holds unless the spec says otherwise. */
const usualHolding: Holding = "alkalinity M";

/**
 * Puts one product or two in the place of an alkaline product, holding what the spec asks to hold.
 *
 * Problems: `alkali.no-composition`, `alkali.replace-with`, and those of `resolveMaterial` and `convert`.
 */
export function replaceAlkali(old: FormulaLine, item: SpecAlkali, own: OwnMaterials): Outcome<Replacement> {
  const path = [...old.path, "replaceWith"];
  const [name, second] = typeof item.replaceWith === "string" ? [item.replaceWith] : (item.replaceWith ?? []);
  if (name === undefined) return refuse(problem("alkali.replace-with", [...old.path, "holding"], {}));
  const beside = old.material.composition && {
    text: `the alkalinity of ${old.name}, ${shown(old.parts)},`,
    unit: "%" as const,
    meq: alkalinityM(old.material.composition).times(old.parts.value),
  };
  const first = productNamed(name, path, own, beside);
  const other = second === undefined ? undefined : productNamed(second, path, own, beside);
  const problems = [first, other].flatMap((one): readonly Problem[] => (one?.ok === false ? one.problems : []));
  if (problems.length > 0) return refuse(...problems);
  const { composition } = old.material;
  if (!first.ok || composition === undefined)
    return refuse(problem("alkali.no-composition", [...old.path, "name"], { name: old.name }));
  const made = (product: Product, place: number) => ({
    ...product,
    salts: saltsOf({ ...product, id: `${old.id}.${place}` }),
  });
  const one = made(first.value, 1);
  const products = other?.ok ? ([one, made(other.value, 2)] as const) : ([one] as const);
  const names = products.map((product) => product.name);
  const { holding = usualHolding } = item;
  const hold = held[holding];
  const from = { name: old.name, composition, salts: saltsOf(old) };
  const swap = convert({ from: { ...from, mass: old.parts.value }, to: products, hold });
  if (!swap.ok) return refuse(...swap.problems.map((problem) => ({ ...problem, path })));
  const each = amountsFor({ from: { ...from, mass: 1 }, to: products, hold });
  const lines = products.flatMap((product, index) => {
    const amount = each[index];
    if (amount === undefined) return [];
    const named = { ...amount, label: `${amount.label} for 1 g of ${old.name}` };
    return [lineFor(old, product, inSwap(named, old.id), index)];
  });
  return answer({ old, lines: lines.filter(({ parts }) => parts.value !== "0") }, [
    note("alkali.replaced", path, { names, old: old.name, parts: shown(old.parts), holding }),
    ...strengthNotes(old),
    ...swap.notes.map((one) => ({ ...one, path, of: { inPlaceOf: old.name } })),
  ]);
}

/** A figure of the swap under the name of the product that is replaced; what products are made of keeps its own. */
function inSwap(figure: Figure, scope: string): Figure {
  if (!figure.id.startsWith("convert.")) return figure;
  const under = (id: string): Figure | undefined => {
    const fed = figure.behind?.find((one) => one.id === id);
    return fed && inSwap(fed, scope);
  };
  return { ...restingOn(figure, under), id: `${scope}.${figure.id}` };
}

/** The salts of a product as figures of the formula. */
function saltsOf(product: MadeProduct): readonly SaltShare[] {
  const { composition } = product.material;
  return composition === undefined ? [] : sharesOf(composition).map(([salt]) => [salt, contentFigure(product, salt)]);
}

/** What the strength of a product was taken for, which the dose of another now rests on. */
function strengthNotes({ name, path, material }: FormulaLine): readonly Note[] {
  const about = material.notes.filter((says) => typeof says !== "string" && says.code.startsWith("strength."));
  return about.map((says) => note("alkali.product", path, { name, says }));
}

type Product = Pick<KitchenMaterial, "name"> & {
  readonly composition: NonNullable<KitchenMaterial["composition"]>;
  readonly material: KitchenMaterial;
};

function productNamed(name: string, path: Path, own: OwnMaterials, beside: DoseBeside | undefined): Outcome<Product> {
  const material = namedOrWritten(name, path, own, beside);
  if (!material.ok) return material;
  const { composition } = material.value;
  return composition === undefined
    ? refuse(problem("alkali.no-composition", path, { name }))
    : answer({ name, composition, material: material.value });
}

/** A material by its name, or a product written in one line, such as salts at a strength. */
export function namedOrWritten(
  name: string,
  path: Path,
  own: OwnMaterials,
  beside: DoseBeside | undefined,
): Outcome<KitchenMaterial> {
  const material = resolveMaterial(name, path, undefined, own, beside);
  if (material.ok || !/\d/u.test(name) || material.problems.some(({ code }) => code === "materials.several"))
    return material;
  const product = readProduct(name, own, {}, path, beside);
  return product.ok ? answer(writtenProduct(product.value, product.notes)) : product;
}

function lineFor(old: FormulaLine, product: Product, each: FormulaLine["parts"], index: number): FormulaLine {
  const id = `${old.id}.${index + 1}`;
  const written = { ...old.parts, label: `${old.name} as written` };
  const parts = worked(ofFlour(`${id}.parts`, product.name), "old * each", { old: written, each }, massBalance);
  return { ...old, id, name: product.name, material: product.material, parts };
}
