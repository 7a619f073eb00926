import type { Jurisdiction } from "../materials/allergen-lists.ts";
import type { AllergenReport } from "../materials/allergens.ts";
import { section } from "./build.ts";
import type { Section } from "./schema.ts";

/** Places as a sentence names them. */
export const placeNames: Readonly<Record<Jurisdiction, string>> = {
  US: "the United States",
  EU: "the European Union",
  JP: "Japan",
  KR: "Korea",
  CA: "Canada",
};

/** The allergens by the list of a place: what is in it, what the supplier has to be asked, what nobody knows. */
export function allergenListSection(found: AllergenReport): Section {
  const { list, contains, dependsOnSupplier, unknown, notListed, gluten } = found;
  const must = contains.filter(({ duty }) => duty === "must");
  const should = contains.filter(({ duty }) => duty === "recommended");
  const asked = gluten.dependsOnSupplier.map(({ grain, materials }) => ({ name: grain, materials }));
  const nothing = unknown.length > 0 ? "none that is known of" : "none of the list";
  const lines = [
    `Contains: ${must.length === 0 ? nothing : named(must)}.`,
    ...line("Contains, and should be named", should),
    ...line("Depends on the supplier, ask for the certificate", dependsOnSupplier),
    ...(unknown.length === 0
      ? []
      : [`Unknown, and not to be taken as free of any: ${unknown.join(", ")}. Ask the supplier.`]),
    ...line(
      "Contains, though this list does not name it",
      notListed.map(({ tag, materials }) => ({ name: tag, materials })),
    ),
    ...line(
      "Gluten comes with",
      gluten.contains.map(({ grain, materials }) => ({ name: grain, materials })),
    ),
    ...line("Gluten may come with, ask the supplier", asked),
  ];
  return section("allergens", `Allergens, by the list of ${placeNames[list.jurisdiction]}`, { kind: "text", lines });
}

interface Named {
  readonly name: string;
  readonly materials: readonly string[];
}

function line(what: string, found: readonly Named[]): readonly string[] {
  return found.length === 0 ? [] : [`${what}: ${named(found)}.`];
}

function named(found: readonly Named[]): string {
  return found.map(({ name, materials }) => `${name}, in ${materials.join(" and ")}`).join("; ");
}
