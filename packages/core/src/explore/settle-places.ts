import type { Path } from "../figure/problem.ts";

/** Places of a spec whose amounts are to be found. */
export interface OpenPlaces {
  /** Numbers in the lists of the spec. */
  readonly flours: readonly number[];
  readonly alkali: readonly number[];
  readonly salt: boolean;
  /** The key that states the water. */
  readonly water?: WaterKey;
}

/** A way to state the water. */
export type WaterKey = "added" | "tap" | "dough";

/** An amount that was found, and where it belongs in the spec. */
export interface FoundAmount {
  readonly path: Path;
  readonly name: string;
  /** As it is written in the spec. */
  readonly text: string;
}
