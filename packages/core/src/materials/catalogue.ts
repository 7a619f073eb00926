import type { Entry } from "./catalogue/entry.ts";
import { mextIngredientEntries, mextNoodleEntries } from "./catalogue/mext-2020.ts";
import { saltEntries } from "./catalogue/salts.ts";
import { usdaEntries } from "./catalogue/usda-sr28.ts";
import type { Material, MaterialKind } from "./material.ts";
import { nearestNames, plainName, wordsOf } from "./nearest.ts";

export { nearestNames };

const entries: readonly Entry[] = [...usdaEntries, ...mextIngredientEntries, ...saltEntries, ...mextNoodleEntries];
let built: readonly Material[] | undefined;

/** Every material that comes with the library, its source on each. They are built at the first call. */
export function catalogue(): readonly Material[] {
  built ??= entries.map(({ build }) => build());
  return built;
}

/** The material, or the names most like what was asked for. */
export type MaterialFinding =
  | { readonly ok: true; readonly material: Material }
  | { readonly ok: false; readonly nearest: readonly string[] };

/**
 * Finds a material by key, name or other name, whatever its case, spaces and punctuation; one of the kitchen's own goes
 * before one of the catalogue.
 *
 * @param own - materials of the kitchen's own
 * @example findMaterial("Bread  Flour").material.key // => "usda 20083"
 */
export function findMaterial(name: string, own: readonly Material[] = []): MaterialFinding {
  const material = named(own, plainName(name)) ?? materialNamed(name);
  if (material !== undefined) return { ok: true, material };
  const names = [...own, ...entries].flatMap((one) => [one.name, ...one.aliases]);
  return { ok: false, nearest: nearestNames(name, names) };
}

/**
 * The material of the catalogue by key, name or other name; undefined where there is none, and no names like it.
 *
 * @example materialNamed("potash")?.key // => "salt potassium-carbonate"
 */
export function materialNamed(name: string): Material | undefined {
  return named(entries, plainName(name))?.build();
}

type Named = Pick<Entry, "key" | "name" | "aliases">;

function named<T extends Named>(list: readonly T[], sought: string): T | undefined {
  return (
    list.find(({ key, name }) => plainName(key) === sought || plainName(name) === sought) ??
    list.find(({ aliases }) => aliases.some((alias) => plainName(alias) === sought))
  );
}

/**
 * The materials that have every word in their key, names or kind, in the order of the catalogue.
 *
 * @param words - several words narrow the search; none finds all
 * @param kind - only of this kind
 * @param own - materials of the kitchen's own, which go first
 * @example searchMaterials("rye dark").map((material) => material.name) // => ["dark rye flour"]
 */
export function searchMaterials(
  words: string,
  kind?: MaterialKind,
  own: readonly Material[] = [],
): readonly Material[] {
  const sought = wordsOf(words);
  return [...own, ...catalogue()].filter((material) => {
    const text = [material.key, material.name, material.published ?? "", material.kind, ...material.aliases]
      .join(" ")
      .toLowerCase();
    return (kind === undefined || material.kind === kind) && sought.every((word) => text.includes(word));
  });
}
