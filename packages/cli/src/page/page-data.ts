import type { UnitSystem } from "@noodlewright/core";
import type { CardFile } from "@noodlewright/core/answers";
import type { Dough } from "./state.ts";
import { words } from "./words.ts";

/** What a page of the bench holds beside its scripts. */
export interface PageData {
  /** The spec with the materials and machines of its kitchen files in it, so that it stands alone. */
  readonly spec: unknown;
  /** The files it was read from. */
  readonly files: readonly CardFile[];
  /** What flags changed of the spec, in words. */
  readonly said: string;
  readonly units: UnitSystem;
  /** Checksum of all that; what is kept on the device is kept under it. */
  readonly key: string;
}

/** The unit in which a page takes temperatures. */
export function degrees({ units }: Pick<PageData, "units">): "°C" | "°F" {
  return units === "us" ? "°F" : "°C";
}

/** What is noted of a dough, with the unit that it is noted in. */
export function noteLabel(key: keyof Dough, data: Pick<PageData, "units">): string {
  const { notes } = words;
  const [length, mass] = data.units === "us" ? ["in", "oz"] : ["mm", "g"];
  if (key === "temperature") return notes.temperature(degrees(data));
  if (key === "thickness") return notes.thickness(length);
  return key === "cooked" ? notes.cooked(mass) : notes[key];
}

/** Ids of the elements where the page stands, and where it finds its data, its first answers, and the core. */
export const elements = { bench: "bench", data: "noodle", first: "first", core: "core" } as const;
