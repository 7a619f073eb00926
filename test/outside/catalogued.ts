import type { Material } from "@noodlewright/core/answers";
import { findMaterial } from "#core/materials/catalogue.ts";

/** A material of the catalogue; the test fails where there is none of this name. */
export function catalogued(name: string): Material {
  const found = findMaterial(name);
  if (!found.ok) throw new Error(`no ${name}`);
  return found.material;
}
