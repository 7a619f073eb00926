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

/** What is to be found in a spec; nothing where it states every amount. */
export function openPlaces(data: unknown): OpenPlaces | undefined {
  if (!isSection(data)) return undefined;
  const openIn = (list: unknown): readonly number[] =>
    Array.isArray(list)
      ? list.flatMap((entry: unknown, index) => (isSection(entry) && isOpen(entry["amount"]) ? [index] : []))
      : [];
  const ways = isSection(data["water"]) ? data["water"] : {};
  const water = (["added", "tap", "dough"] as const).find((way) => isOpen(ways[way]));
  const open = { flours: openIn(data["flours"]), alkali: openIn(data["alkali"]), salt: isOpen(data["salt"]) };
  const none = open.flours.length === 0 && open.alkali.length === 0 && !open.salt && water === undefined;
  return none ? undefined : { ...open, ...(water && { water }) };
}

function isOpen(amount: unknown): boolean {
  return typeof amount === "string" && amount.trim().toLowerCase() === "find";
}

export type Section = Readonly<Record<string, unknown>>;

export function isSection(value: unknown): value is Section {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
