import { table } from "../figure/frozen.ts";
import type { Entry } from "./catalogue/entry.ts";
import { everydayNames } from "./catalogue/everyday-names.ts";
import { mextIngredientEntries, mextNoodleEntries } from "./catalogue/mext-2020.ts";
import { saltEntries, waterNotSaid } from "./catalogue/salts.ts";
import { usdaEntries } from "./catalogue/usda-sr28.ts";
import type { Material, MaterialKind } from "./material.ts";
import { distanceTo, nearestNames, plainName, wordsOf } from "./nearest.ts";
import { severalThings } from "./several.ts";

/** An entry of the catalogue with its everyday names, and the material built from it at the first call. */
interface Listed extends Entry {
  built?: Material;
}

let list: readonly Listed[] | undefined;
let byPlainName: ReadonlyMap<string, Listed> | undefined;
let withoutWater: ReadonlySet<string> | undefined;

function entries(): readonly Listed[] {
  if (list !== undefined) return list;
  const more = new Map<string, string[]>();
  for (const { of, names } of everydayNames) more.set(of, [...(more.get(of) ?? []), ...names]);
  list = [...usdaEntries, ...mextIngredientEntries, ...saltEntries, ...mextNoodleEntries].map((entry) => ({
    ...entry,
    aliases: [...entry.aliases, ...(more.get(entry.key) ?? [])],
  }));
  return list;
}

function materialOf(entry: Listed): Material {
  entry.built ??= table({ ...entry.build(), aliases: entry.aliases });
  return entry.built;
}

/** Every material that comes with the library, its source on each. Each is built once, when it is asked for. */
export function catalogue(): readonly Material[] {
  return entries().map(materialOf);
}

/** The material, or the names most like what was asked for. */
type MaterialFinding =
  | { readonly ok: true; readonly material: Material }
  | { readonly ok: false; readonly nearest: readonly string[] };

/**
 * Finds a material by key, name or other name, whatever its case, spaces and punctuation.
 *
 * @example findMaterial("Bread  Flour").material.key // => "usda 20083"
 */
export function findMaterial(name: string): MaterialFinding {
  const material = materialNamed(name);
  if (material !== undefined) return { ok: true, material };
  const names = entries().flatMap((one) => [one.name, ...one.aliases]);
  return { ok: false, nearest: nearestMaterials(name, names) };
}

const alkaliWords =
  /soda|sodium|natri?um|natron|soude|potas|kali|\blye\b|laugen?|caust|kansui|alkal|[ck]arbonat|bicarb|hydroxid|phosphat|\be ?(?:3[34]\d|45\d|5[0-2]\d)|[碱鹼枧梘]|ソーダ|炭酸|碳酸|苏打|梳打|タンサン|かんすい|かん水|重曹|苛性|소다|탄산|알칼리|가성|잿물|간수/iu;

/**
 * Whether a name speaks of an alkali: by one of its words, or by being all but a known name of one.
 *
 * @example isAlkaliLike("pottash") // => true
 */
export function isAlkaliLike(name: string): boolean {
  if (isNameOfAlkali(name)) return true;
  const distance = distanceTo(plainName(name).slice(0, 60), 0.2);
  return [...alkaliNames()].some((known) => distance(known) < 1);
}

function isNameOfAlkali(name: string): boolean {
  return alkaliWords.test(name) || alkaliNames().has(plainName(name));
}

let ofAlkalis: ReadonlySet<string> | undefined;

function alkaliNames(): ReadonlySet<string> {
  if (ofAlkalis !== undefined) return ofAlkalis;
  const others = severalThings.flatMap(({ kind, names }) => (kind === "flour" ? [] : names));
  ofAlkalis = new Set([...saltNames(), ...others].map(plainName));
  return ofAlkalis;
}

function saltNames(): readonly string[] {
  const salts = entries().filter(({ key }) => key.startsWith("salt "));
  return salts.flatMap(({ name, aliases }) => [name, ...aliases]);
}

/**
 * The salts that a name of an alkali may have been meant for, to ask back with and never to take.
 *
 * @example nearestAlkalis("sodum carbonate")[0] // => "sodium carbonate"
 */
export function nearestAlkalis(name: string): readonly string[] {
  return isAlkaliLike(name) ? nearestNames(name, saltNames(), 2) : [];
}

/**
 * The names of materials most like a name, as `nearestNames` finds them. Alkalis are never guessed by their spelling:
 * between names that differ by a few letters lie doses that differ by a factor of three, and things that burn.
 *
 * @example nearestMaterials("bred flour", ["bread flour", "baked soda"]) // => ["bread flour"]
 */
export function nearestMaterials(name: string, names: readonly string[], most = 3): readonly string[] {
  if (isAlkaliLike(name)) return [];
  return nearestNames(name, names, names.length)
    .filter((one) => !isNameOfAlkali(one))
    .slice(0, most);
}

/**
 * The material of the catalogue by key, name or other name; undefined where there is none, and no names like it.
 *
 * @example materialNamed("soda ash")?.key // => "salt sodium-carbonate"
 */
export function materialNamed(name: string): Material | undefined {
  const sought = plainName(name);
  byPlainName ??= indexOf(entries());
  const entry = byPlainName.get(sought);
  if (entry === undefined) return undefined;
  const material = materialOf(entry);
  withoutWater ??= new Set(
    everydayNames.flatMap(({ of, waterNotSaid, names }) =>
      waterNotSaid ? names.map((one) => `${of} ${plainName(one)}`) : [],
    ),
  );
  if (!withoutWater.has(`${entry.key} ${sought}`)) return material;
  return { ...material, notes: [...material.notes, waterNotSaid(material.name)] };
}

/** The same for every name of one material: `bread flour` and `white bread flour` are one. */
export function materialName(name: string): string {
  return materialNamed(name)?.key ?? plainName(name);
}

/** By plain name: keys and names first, then the other names; of two that share one, the first. */
function indexOf(list: readonly Entry[]): ReadonlyMap<string, Entry> {
  const names = list.flatMap((one) => [one.key, one.name].map((name) => ({ name, one })));
  const others = list.flatMap((one) => one.aliases.map((name) => ({ name, one })));
  return new Map([...names, ...others].reverse().map(({ name, one }) => [plainName(name), one]));
}

/**
 * The materials that have every word in their key, names or kind, in the order of the catalogue.
 *
 * @param words - several words narrow the search; none finds all
 * @param kind - only of this kind
 * @example searchMaterials("rye dark").map((material) => material.name) // => ["dark rye flour"]
 */
export function searchMaterials(words: string, kind?: MaterialKind): readonly Material[] {
  const sought = wordsOf(words);
  return catalogue().filter((material) => {
    const text = [material.key, material.name, material.published ?? "", material.kind, ...material.aliases]
      .join(" ")
      .toLowerCase();
    return (kind === undefined || material.kind === kind) && sought.every((word) => text.includes(word));
  });
}
