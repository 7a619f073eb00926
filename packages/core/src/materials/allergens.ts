import { type Note, note } from "../figure/problem.ts";
import { citation, commonPractice, type Source } from "../figure/source.ts";
import { type Allergen, classOf, kindsOf } from "./allergen.ts";
import {
  type AllergenList,
  allergenLists,
  type Duty,
  type Jurisdiction,
  type ListedAllergen,
} from "./allergen-lists.ts";
import type { Material } from "./material.ts";

export type { Allergen } from "./allergen.ts";

/** What is asked of a material here. */
export type AllergenMaterial = Pick<Material, "name" | "allergens" | "allergensPossible" | "allergensKnown">;

/** An allergen and the materials that bring it. */
export interface AllergenFinding {
  /** As the list of the jurisdiction groups it. */
  readonly name: string;
  readonly duty: Duty;
  /** The foods themselves, where the name stands for several. */
  readonly kinds: readonly Allergen[];
  readonly remark?: string;
  readonly materials: readonly string[];
}

/** A food of a class of which the list names some kinds only. */
export interface KindFinding {
  /** The food: the class where the kind is not known, or a kind that the list leaves out. */
  readonly tag: Allergen;
  readonly class: Allergen;
  /** Names of the kinds that the list has. */
  readonly listed: readonly string[];
  readonly materials: readonly string[];
}

/** A food that the law lets off where it is made so. */
export interface ExemptFinding {
  readonly name: string;
  /** What it has to be: `fully refined`. */
  readonly where: string;
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
  /** Fish, nuts and the like of an unknown kind, of which this list names some kinds only: ask which it is. */
  readonly askWhich: readonly KindFinding[];
  readonly exempt: readonly ExemptFinding[];
  /** Materials about whose allergens nothing is known. They may bring any. */
  readonly unknown: readonly string[];
  /** Allergens in the materials that this list does not name and others do. */
  readonly notListed: readonly KindFinding[];
  /** Gluten, which is not the same question: rye and barley have it everywhere. */
  readonly gluten: {
    readonly contains: readonly GlutenFinding[];
    readonly dependsOnSupplier: readonly GlutenFinding[];
  };
  readonly notes: readonly Note[];
  readonly sources: readonly Source[];
}

/** Grains with gluten. Oats have their own protein, and usually meet the others on the way. */
const glutenGrains: readonly Allergen[] = ["wheat", "rye", "barley"];

const glutenSource: Source = { cite: "21 CFR 101.91(a)(1), gluten-containing grain", standing: "memory" };

/**
 * The allergens of materials by the list of a jurisdiction: what they contain, what depends on the supplier, and what
 * is unknown. Nothing is taken to be free of allergens for want of knowledge. Where the list names some kinds of a class
 * only, what is in it is told by its kind.
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
  const others = (tags: ByTag): readonly KindFinding[] =>
    [...tags]
      .filter(([tag]) => !list.allergens.some((line) => counts(line, tag) || line.exempt?.tags.includes(tag)))
      .map(([tag, names]) => ({ tag, class: classOf(tag), listed: listedKinds(list, tag), materials: names }));
  const open = ({ tag, listed }: KindFinding): boolean => kindsOf(tag).length > 0 && listed.length > 0;
  return {
    list,
    contains,
    dependsOnSupplier: findings(list, possible).filter(({ name }) => !named.has(name)),
    askWhich: [...others(certain), ...others(possible)].filter(open),
    exempt: exemptIn(list, new Map([...possible, ...certain])),
    unknown,
    notListed: others(certain).filter((one) => !open(one)),
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

/** Whether a line of a list means a food: by its own name, or as a kind of what it names. */
function counts({ tags, exempt }: ListedAllergen, tag: Allergen): boolean {
  return tags.includes(tag) || (tags.includes(classOf(tag)) && exempt?.tags.includes(tag) !== true);
}

function findings(list: AllergenList, found: ByTag): readonly AllergenFinding[] {
  return list.allergens.flatMap((line) => {
    const { name, duty, tags, remark, standing } = line;
    const kinds = [...found.keys()].filter((tag) => counts(line, tag));
    if (kinds.length === 0) return [];
    const said = [remark, standing === "memory" ? "from memory" : undefined].filter((one) => one !== undefined);
    return [
      {
        name,
        duty,
        kinds: kinds.filter((tag) => tags.length > 1 || tag !== tags[0]),
        ...(said.length > 0 && { remark: said.join("; ") }),
        materials: unique(kinds.flatMap((tag) => found.get(tag) ?? [])),
      },
    ];
  });
}

/** The kinds of a food's class that a list names. */
function listedKinds(list: AllergenList, tag: Allergen): readonly string[] {
  const kinds = kindsOf(classOf(tag));
  return list.allergens.flatMap(({ tags }) => tags.filter((one) => kinds.includes(one)));
}

function exemptIn(list: AllergenList, found: ByTag): readonly ExemptFinding[] {
  return list.allergens.flatMap(({ name, exempt }) => {
    const materials = unique(exempt?.tags.flatMap((tag) => found.get(tag) ?? []) ?? []);
    if (exempt === undefined || materials.length === 0) return [];
    return [{ name, where: `${exempt.where}${exempt.standing === "memory" ? " (from memory)" : ""}`, materials }];
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
  const { title, asOf } = list;
  return [
    note("allergens.supplier", [], {}),
    note("allergens.list-date", [], { title, asOf, source: citation(list.source) }),
    ...(unknown.length > 0 ? [note("allergens.unknown", [], { names: unknown })] : []),
  ];
}

function unique(names: readonly string[]): readonly string[] {
  return [...new Set(names)];
}
