import type { Duty, Jurisdiction } from "../materials/allergen-lists.ts";
import type { AllergenFinding, AllergenReport, GlutenFinding, KindFinding } from "../materials/allergens.ts";
import { section } from "./build.ts";
import type { Section } from "./schema.ts";

/** Places as a sentence names them. */
export const placeNames: Readonly<Record<Jurisdiction, string>> = {
  US: "the United States",
  EU: "the European Union",
  JP: "Japan",
  KR: "Korea",
  CA: "Canada",
  UK: "the United Kingdom",
  AU: "Australia and New Zealand",
  CN: "China",
  CODEX: "the Codex Alimentarius",
};

/** The allergens by the list of a place: what is in it, what the supplier has to be asked, what nobody knows. */
export function allergenListSection(found: AllergenReport): Section {
  const { list, contains, dependsOnSupplier, askWhich, exempt, unknown, notListed, gluten } = found;
  const of = (duty: Duty): readonly Named[] => contains.filter((one) => one.duty === duty).map(wordsOf);
  const must = of("must");
  const grainOf = ({ grain, materials }: GlutenFinding): Named => ({ name: grain, materials });
  const nothing = unknown.length > 0 ? "not stated" : "nothing that must be named";
  const lines = [
    `Contains: ${must.length === 0 ? nothing : named(must)}.`,
    ...line("Contains, and should be named", of("recommended")),
    ...line("Contains, to be named where the country says so", of("by country")),
    ...line("Listed by its kind, ask which it is", askWhich.map(kindOf)),
    ...exempt.flatMap((one) => line(`Exempt where it is ${one.where}, ask the supplier`, [one])),
    ...line("To be declared as an ingredient, not as an allergen", of("ingredient")),
    ...line("Depends on the supplier, ask for the certificate", dependsOnSupplier.map(wordsOf)),
    ...(unknown.length === 0
      ? []
      : [`Not stated, and not to be taken as free of any: ${unknown.join(", ")}. Ask the supplier.`]),
    ...line("Contains, though this list does not name it", notListed.map(kindOf)),
    ...line("Gluten comes with", gluten.contains.map(grainOf)),
    ...line("Gluten may come with, ask the supplier", gluten.dependsOnSupplier.map(grainOf)),
  ];
  return section("allergens", `Allergens, by the list of ${placeNames[list.jurisdiction]}`, lines);
}

interface Named {
  readonly name: string;
  readonly materials: readonly string[];
}

/** The class, and in it the foods themselves. */
function wordsOf({ name, kinds, remark, materials }: AllergenFinding): Named {
  const kind = kinds.length === 0 ? "" : `: ${kinds.join(", ")}`;
  return { name: `${name}${kind}${remark === undefined ? "" : ` (${remark})`}`, materials };
}

function kindOf({ tag, class: whole, listed, materials }: KindFinding): Named {
  const kind = tag === whole ? tag : `${whole}: ${tag}`;
  return { name: listed.length === 0 ? kind : `${kind} (the list names ${listed.join(", ")})`, materials };
}

function line(what: string, found: readonly Named[]): readonly string[] {
  return found.length === 0 ? [] : [`${what}: ${named(found)}.`];
}

function named(found: readonly Named[]): string {
  return found.map(({ name, materials }) => `${name}, in ${materials.join(" and ")}`).join("; ");
}
