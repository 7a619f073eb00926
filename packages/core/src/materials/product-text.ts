import type { Product } from "../chemistry/carried.ts";
import { type Composition, hydrate, pure } from "../chemistry/composition.ts";
import { solutionAt } from "../chemistry/stated-strength.ts";
import { answer, type Note, note, type Outcome, type Path, problem, refuse } from "../figure/problem.ts";
import { isAlkaliLike, nearestMaterials } from "./catalogue.ts";
import { findPart, readParts } from "./composition-parts.ts";
import { type KitchenMaterial, type OwnMaterials, resolveMaterial } from "./own.ts";
import type { DoseBeside } from "./several.ts";
import { saltsInRatio } from "./stated-composition.ts";
import { readStrength, type StrengthTerms, strengthForms } from "./strength-text.ts";

const partForm = /^([A-Za-z][\w.·]*) (\d+(?:\.\d+)? ?%|\d+(?:\.\d+)?|rest)$/u;
const atStrength = /^(.+) at (\d.*|\.\d.*)$/u;

/** The ways to name a product in one line, for messages. */
const productForms =
  'a name of the catalogue or of the materials file, a formula such as Na2CO3, a composition such as "Na2CO3 60 %, K2CO3 40 %", or salts at a strength such as "K2CO3 6, Na2CO3 4 at 30 °Bé"';

/**
 * Reads an alkaline product written in one line: by name, by formula, by composition, or as salts at a strength.
 *
 * @param own - the kitchen's own materials
 * @param terms - the hydrometer's modulus, the temperature, and what the parts of a ratio count
 * @param path - of problems
 * Problems: `product.unknown`, `materials.several`, `product.no-alkali`, `product.strength`, and those of `readParts`, `saltsInRatio` and `solutionAt`.
 * @example readProduct("K2CO3 30 %, water rest", {}, {}, []).value.composition.water // => "70"
 */
export function readProduct(
  text: string,
  own: OwnMaterials,
  terms: StrengthTerms,
  path: Path,
  beside?: DoseBeside,
): Outcome<Product> {
  const name = text.trim().replaceAll(/\s+/gu, " ");
  const [, salts, strength] = atStrength.exec(name) ?? [];
  const composition =
    salts === undefined || strength === undefined
      ? readDry(name, own, terms, path, beside)
      : readSolution({ salts, strength }, own, terms, path);
  if (!composition.ok) return composition;
  if (Object.keys(composition.value.species).length > 0) {
    return answer({ name, composition: composition.value }, composition.notes);
  }
  return refuse(problem("product.no-alkali", path, { name, forms: productForms }));
}

function readSolution(
  { salts, strength }: { readonly salts: string; readonly strength: string },
  own: OwnMaterials,
  terms: StrengthTerms,
  path: Path,
): Outcome<Composition> {
  const product = readDry(salts, own, terms, path);
  if (!product.ok) return product;
  const stated = readStrength(strength, terms);
  if (stated === undefined) {
    return refuse(problem("product.strength", path, { strength, strengthForms }));
  }
  const solution = solutionAt(product.value, stated);
  return solution.ok
    ? answer(solution.value, [...product.notes, ...solution.notes])
    : refuse(...solution.problems.map((problem) => ({ ...problem, path })));
}

function readDry(
  name: string,
  own: OwnMaterials,
  terms: StrengthTerms,
  path: Path,
  beside?: DoseBeside,
): Outcome<Composition> {
  const matches = name.split(",").map((part) => partForm.exec(part.trim().replaceAll(/\s+/gu, " ")));
  const parts = matches.flatMap((match) => (match?.[1] && match[2] ? [[match[1], match[2]] as const] : []));
  if (parts.length === matches.length) {
    const written = Object.fromEntries(parts);
    const plain = parts.every(([, amount]) => /^[\d.]+$/u.test(amount));
    return plain ? saltsInRatio(written, terms.ratioBy ?? "anhydrous", path) : readParts(written, path);
  }
  const formula = findPart(name);
  if (formula?.kind === "species") return answer(pure(formula.name));
  if (formula?.kind === "hydrate") return answer(hydrate(formula.name));
  const material = resolveMaterial(name, path, undefined, own, beside);
  if (material.ok && material.value.composition !== undefined) {
    return answer(material.value.composition, remarksOn(name, material.value, path));
  }
  if (!material.ok && material.problems.some(({ code }) => code === "materials.several")) return material;
  const nearest = nearestMaterials(name, Object.keys(own));
  const facts = { name, nearest, alkali: isAlkaliLike(name), forms: productForms };
  return refuse(problem(material.ok ? "product.no-alkali" : "product.unknown", path, facts));
}

/** What goes with a material by name: its notes, and its cautions under the code `caution.material`. */
function remarksOn(name: string, { notes, cautions = [] }: KitchenMaterial, path: Path): readonly Note[] {
  return [
    ...notes.map((says) => note("materials.note", path, { name, says })),
    ...cautions.map((says) => note("caution.material", path, { says })),
  ];
}
