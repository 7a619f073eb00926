import { fromSpec, type Source } from "../figure/source.ts";
import { findMaterial } from "../materials/catalogue.ts";
import type { Material } from "../materials/material.ts";
import type { KitchenMaterial } from "../materials/own.ts";
import type { DecimalText } from "../number/decimal.ts";

/** A figure of a food that a table or a kitchen states. */
export type Stated = "protein" | "fat" | "carbohydrate" | "fibre" | "sodium" | "potassium";

/** Whether a figure is still that of the catalogue's row. */
export function fromTable(material: KitchenMaterial, what: Stated): boolean {
  const found = findMaterial(material.key);
  return (
    found.ok &&
    statedValue(found.material, what) !== undefined &&
    statedValue(found.material, what) === statedValue(material, what)
  );
}

function statedValue(material: Material, what: Stated): DecimalText | undefined {
  return what === "protein" ? material.protein?.value : material[what];
}

/** Where a figure comes from: the table, or whoever replaced it. */
export function sourceOf(material: KitchenMaterial, what: Stated): Source {
  if (what === "protein") return material.figureSources.protein;
  if (fromTable(material, what)) return material.source;
  const { protein, moisture } = material.figureSources;
  return [protein, moisture].find(({ standing }) => standing === "user") ?? fromSpec;
}
