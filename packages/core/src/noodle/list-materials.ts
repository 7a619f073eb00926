import * as z from "zod/mini";
import { answer, type Problem, problem, refuse } from "../figure/problem.ts";
import { catalogue, isAlkaliLike, nearestMaterials, searchMaterials } from "../materials/catalogue.ts";
import { described, section } from "../materials/fields.ts";
import { type KnownProduct, knownProducts } from "../materials/known-products.ts";
import { type Material, type MaterialKind, materialKinds } from "../materials/material.ts";
import { severalOf, severalProblem } from "../materials/several.ts";
import { alkaliListReport } from "../report/alkali-list-report.ts";
import { materialsReport } from "../report/materials-report.ts";
import { type Answer, answered } from "./answer.ts";
import { readWish, wishedText } from "./wishes.ts";

const searchWish = section({ description: "What is looked for" }, () => ({
  words: wishedText("Words to look for", "dried egg"),
  kind: described(z.optional(z.enum(materialKinds)), { description: "Kind of material" }),
}));

/**
 * The materials of the catalogue whose names have all of the words; all of a kind where there are no words.
 *
 * Problems: `materials.none`, with the nearest names; `search.several` for a word that stands for several things.
 * @example listMaterials("egg yolk dried").value?.[0]?.kind // => "egg"
 */
export function listMaterials(words: string, kind?: MaterialKind): Answer<readonly Material[]> {
  const wished = readWish(searchWish, { words, kind });
  if (!wished.ok) return wished;
  const found = searchMaterials(words, kind);
  return answered(found.length > 0 ? answer(found) : refuse(severalMeant(words) ?? noMaterial(words, kind)), {
    report: (materials) => materialsReport(materials, [words, kind].filter(Boolean).join(", ")),
  });
}

/**
 * The alkaline products whose name or formula has all of the words; all where there are none.
 *
 * Problems: `alkali.none`; `search.several` for a word that stands for several things.
 * @example listSalts("K2CO3").value?.[0]?.formula // => "K2CO3"
 */
export function listSalts(words: string): Answer<readonly KnownProduct[]> {
  const wished = readWish(searchWish, { words });
  if (!wished.ok) return wished;
  const found = knownProducts(words);
  return answered(
    found.length > 0 ? answer(found) : refuse(severalMeant(words) ?? problem("alkali.none", [], { words })),
    {
      report: (salts) => alkaliListReport(salts, words),
    },
  );
}

function severalMeant(words: string): Problem | undefined {
  const several = severalOf(words);
  return several && severalProblem(several, words, [], undefined, "search.several");
}

function noMaterial(words: string, kind: MaterialKind | undefined): Problem {
  const names = catalogue().map(({ name }) => name);
  const nearest = nearestMaterials(words, names);
  const facts = { words, nearest, alkali: isAlkaliLike(words), ...(kind !== undefined && { kind }) };
  return problem("materials.none", [], facts);
}
