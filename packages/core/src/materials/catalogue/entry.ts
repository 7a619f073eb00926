import type { Material } from "../material.ts";

/** A material that is built when it is asked for: names are enough to search the catalogue. */
export interface Entry {
  readonly key: string;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly build: () => Material;
}
