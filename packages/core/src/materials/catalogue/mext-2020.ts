import { at, type Source } from "../../figure/source.ts";
import type { Material } from "../material.ts";
import { columns, figures } from "./columns.ts";
import type { Entry } from "./entry.ts";
import { type MextRow, mextIngredientRows, mextNoodleRows } from "./mext-2020-rows.ts";
import { natures } from "./nature.ts";

const mextSource: Source = {
  cite: "MEXT, Standard Tables of Food Composition in Japan 2020 (eighth revised edition)",
  standing: "copy",
};

const openSum = "the carbohydrate is analysed and not by difference, so the parts do not add up to 100 %";
const fromMemory = "the nitrogen factor is from memory";

/** Flours, starches, gluten and eggs of the table. */
export const mextIngredientEntries: readonly Entry[] = mextIngredientRows.map(entry);

/** Noodles and wrappers of the table, raw and boiled: no ingredients, but something to compare a result with. */
export const mextNoodleEntries: readonly Entry[] = mextNoodleRows.map(entry);

function entry(row: MextRow): Entry {
  const [item, name, , , , ...aliases] = row;
  return { key: `mext ${item}`, name, aliases, build: () => material(row) };
}

function material(row: MextRow): Material {
  const [item, name, nature, composition, nitrogenFactor, ...aliases] = row;
  const { moisture = "0", protein = "0", ...others } = columns(composition, figures);
  const { kind } = natures[nature];
  return {
    key: `mext ${item}`,
    name,
    aliases,
    ...natures[nature],
    moisture,
    protein: nitrogenFactor === "-" ? { value: protein } : { value: protein, nitrogenFactor },
    ...others,
    allergensKnown: true,
    notes: [...(nitrogenFactor === "-" ? [] : [fromMemory]), ...(kind === "egg" ? [openSum] : [])],
    source: at(mextSource, `item ${item}`),
  };
}
