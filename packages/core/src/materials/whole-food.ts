import { answer, type Outcome, type Path, problem, refuse } from "../figure/problem.ts";
import { type Decimal, type DecimalText, dec, fixedText, HUNDRED, sum } from "../number/decimal.ts";
import { basisText, type MoistureBasis } from "./fields.ts";
import type { Material } from "./material.ts";

/** What of a material tells how much its parts come to. */
type Parts = Pick<Material, "composition" | "moisture" | "protein" | "ash" | "fat" | "carbohydrate"> & {
  readonly stated: { readonly protein?: Stated; readonly ash?: Stated };
  readonly nutrientSources?: { readonly carbohydrate?: unknown };
};

interface Stated {
  readonly value: DecimalText;
  readonly basis: MoistureBasis;
}

/**
 * How far the parts of a food may add up beyond 100 %: analyses and labels are rounded, and nitrogen times 6.25 counts
 * more protein than there is. The rows of the tables come to 100.3 % at most; the rest is common practice, no source.
 */
const slack = { measured: "0.5", withCarbohydrate: "2.5" } as const;

/**
 * Refuses a food whose water, protein, ash, fat and carbohydrate add up to more than it weighs, the sum shown.
 *
 * @param path - of its figures
 * Problems: `materials.beyond-whole`.
 */
export function withinWhole<M extends Parts>(name: string, material: M, path: Path): Outcome<M> {
  if (material.composition !== undefined) return answer(material);
  const { moisture, protein, ash, fat, carbohydrate, stated, nutrientSources = {} } = material;
  const ofTheKitchen = nutrientSources.carbohydrate === undefined ? undefined : carbohydrate;
  const parts = [
    part("water", moisture),
    part("protein", protein?.value, stated.protein),
    part("ash", ash, stated.ash),
    part("fat", fat),
    part("carbohydrate", ofTheKitchen),
  ].flat();
  const total = sum(parts.map(({ value }) => dec(value)));
  if (total.lte(mostInAll(material))) return answer(material);
  return refuse(
    problem("materials.beyond-whole", path, { name, parts: parts.map(({ text }) => text), total: fixedText(total, 2) }),
  );
}

/** Most that the parts of a material may come to, %: some more than the whole, since each was measured by itself. */
export function mostInAll({ nutrientSources }: Pick<Parts, "nutrientSources">): Decimal {
  return HUNDRED.plus(nutrientSources?.carbohydrate === undefined ? slack.measured : slack.withCarbohydrate);
}

interface Part {
  readonly value: DecimalText;
  readonly text: string;
}

function part(what: string, value: DecimalText | undefined, stated?: Stated): readonly Part[] {
  if (value === undefined) return [];
  const asStated = stated?.basis.kind === "at" ? ` (${stated.value} % ${said(basisText(stated.basis))})` : "";
  return [{ value, text: `${fixedText(dec(value), 2)} % ${what}${asStated}` }];
}

function said(basis: string): string {
  return basis === "dry" ? "of dry matter" : `at ${basis}`;
}
