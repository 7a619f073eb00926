import type { Path } from "../figure/problem.ts";
import type { Quantity } from "../number/quantity.ts";
import type { Spec, SpecAlkali } from "../spec/spec.ts";

/** What an ingredient is in the formula. */
export type Role = "flour" | "water" | "alkali" | "salt" | "ingredient" | "dusting";

/** What a spec says of an ingredient that is neither flour nor water. */
export interface Entry {
  readonly id: string;
  readonly role: Exclude<Role, "flour" | "water">;
  readonly name: string;
  readonly path: Path;
  readonly namePath: Path;
  readonly amount: Quantity;
  /** What the dose of an alkaline product states, where the spec says so. */
  readonly as: SpecAlkali["as"];
  readonly figures: SpecAlkali["figures"];
  /** The entry of an alkaline product that is to be replaced. */
  readonly replaced: SpecAlkali | undefined;
}

/** Lists what a spec has beside flour and water: alkaline products, salt, ingredients, dusting. */
export function otherEntries(spec: Partial<Spec>): readonly Entry[] {
  const entry = (
    id: string,
    role: Entry["role"],
    path: Path,
    { name, amount, as, figures }: Pick<Entry, "name" | "amount"> & Partial<Pick<Entry, "as" | "figures">>,
    replaced?: SpecAlkali,
  ): Entry => ({ id, role, name, path, namePath: [...path, "name"], amount, as, figures, replaced });
  return [
    ...(spec.alkali ?? []).map((item, index) => {
      const replaced = item.replaceWith === undefined && item.holding === undefined ? undefined : item;
      return entry(`alkali.${index + 1}`, "alkali", ["alkali", index], item, replaced);
    }),
    ...(spec.salt === undefined ? [] : [entry("salt", "salt", ["salt"], { name: "table salt", amount: spec.salt })]),
    ...(spec.ingredients ?? []).map((item, index) =>
      entry(`ingredient.${index + 1}`, "ingredient", ["ingredients", index], item),
    ),
    ...(spec.dusting === undefined ? [] : [entry("dusting", "dusting", ["dusting"], spec.dusting)]),
  ];
}
