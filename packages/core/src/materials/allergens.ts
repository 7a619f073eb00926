import type { Note } from "../figure/problem.ts";
import { commonPractice, type Source } from "../figure/source.ts";
import type { Allergen } from "./allergen.ts";
import { type AllergenList, allergenLists, type Jurisdiction, type ListedAllergen } from "./allergen-lists.ts";
import type { Material } from "./material.ts";

export type { Allergen } from "./allergen.ts";

/** What is asked of a material here. */
export type AllergenMaterial = Pick<Material, "name" | "allergens" | "allergensPossible" | "allergensKnown">;

/** An allergen and the materials that bring it. */
export interface AllergenFinding {
  /** As the list of the jurisdiction groups it. */
  readonly name: string;
  readonly duty: ListedAllergen["duty"];
  readonly materials: readonly string[];
}

/** A food that brings gluten and the materials it is in. */
export interface GlutenFinding {
  readonly grain: Allergen;
  readonly materials: readonly string[];
}

/** What the materials of a dough mean under the allergen law of one jurisdiction. */
export interface AllergenReport {
  readonly list: AllergenList;
  /** Is in the materials by their nature. */
  readonly contains: readonly AllergenFinding[];
  /** May be in materials as they are usually sold, and is in none by nature: ask the supplier. */
  readonly dependsOnSupplier: readonly AllergenFinding[];
  /** Materials about whose allergens nothing is known. They may bring any. */
  readonly unknown: readonly string[];
  /** Allergens in the materials that this list does not name and others do. */
  readonly notListed: readonly { readonly tag: Allergen; readonly materials: readonly string[] }[];
  /** Gluten, which is not the same question: rye and barley have it everywhere. */
  readonly gluten: {
    readonly contains: readonly GlutenFinding[];
    readonly dependsOnSupplier: readonly GlutenFinding[];
  };
  readonly notes: readonly Note[];
  readonly sources: readonly Source[];
}

/** Grains with gluten. Oats have their own protein, and usually meet the others on the way. */
export const glutenGrains: readonly Allergen[] = ["wheat", "rye", "barley"];

const glutenSource: Source = { cite: "21 CFR 101.91(a)(1), gluten-containing grain", standing: "memory" };

/**
 * The allergens of materials by the list of a jurisdiction: what they contain, what depends on the supplier, and what
 * is unknown. Nothing is taken to be free of allergens for want of knowledge.
 *
 * @example allergensFor([{ name: "rye flour", allergens: ["rye"], allergensKnown: true }], "US").contains // => []
 */
export function allergensFor(materials: readonly AllergenMaterial[], jurisdiction: Jurisdiction): AllergenReport {
  const list = allergenLists[jurisdiction];
  const certain = byTag(materials, ({ allergens }) => allergens);
  const possible = byTag(materials, ({ allergensPossible = [] }) => allergensPossible);
  const contains = findings(list, certain);
  const named = new Set(contains.map(({ name }) => name));
  const unknown = unique(materials.filter(({ allergensKnown }) => !allergensKnown).map(({ name }) => name));
  const listed = new Set(list.allergens.flatMap(({ tags }) => tags));
  return {
    list,
    contains,
    dependsOnSupplier: findings(list, possible).filter(({ name }) => !named.has(name)),
    unknown,
    notListed: [...certain].filter(([tag]) => !listed.has(tag)).map(([tag, names]) => ({ tag, materials: names })),
    gluten: glutenIn(certain, possible),
    notes: notesFor(list, unknown),
    sources: [list.source, glutenSource, commonPractice],
  };
}

type ByTag = ReadonlyMap<Allergen, readonly string[]>;

function byTag(materials: readonly AllergenMaterial[], tagsOf: (one: AllergenMaterial) => readonly Allergen[]): ByTag {
  const names = new Map<Allergen, readonly string[]>();
  for (const material of materials) {
    for (const tag of tagsOf(material)) names.set(tag, unique([...(names.get(tag) ?? []), material.name]));
  }
  return names;
}

function findings(list: AllergenList, tags: ByTag): readonly AllergenFinding[] {
  return list.allergens.flatMap(({ name, duty, tags: counted }) => {
    const materials = unique(counted.flatMap((tag) => tags.get(tag) ?? []));
    return materials.length === 0 ? [] : [{ name, duty, materials }];
  });
}

function glutenIn(certain: ByTag, possible: ByTag): AllergenReport["gluten"] {
  const contains = glutenFindings(glutenGrains, certain);
  const sure = new Set(contains.map(({ grain }) => grain));
  const open = [...glutenFindings(["oats"], certain), ...glutenFindings([...glutenGrains, "oats"], possible)];
  return { contains, dependsOnSupplier: open.filter(({ grain }) => !sure.has(grain)) };
}

function glutenFindings(grains: readonly Allergen[], tags: ByTag): readonly GlutenFinding[] {
  return grains.flatMap((grain) => {
    const materials = tags.get(grain);
    return materials === undefined ? [] : [{ grain, materials }];
  });
}

function notesFor(list: AllergenList, unknown: readonly string[]): readonly Note[] {
  const notes: Note[] = [
    {
      code: "allergens.supplier",
      path: [],
      text: "traces from the mill, the store and the kitchen are not in this list: ask each supplier for the certificate, and go by the label of the pack at hand",
    },
    {
      code: "allergens.list-date",
      path: [],
      text: `the list is that of ${list.asOf}; lists change, and the law of the place decides`,
    },
  ];
  if (unknown.length > 0) {
    const text = `nothing is known about the allergens of: ${unknown.join(", ")}; do not take them to be free of any`;
    notes.push({ code: "allergens.unknown", path: [], text });
  }
  return notes;
}

function unique(names: readonly string[]): readonly string[] {
  return [...new Set(names)];
}
