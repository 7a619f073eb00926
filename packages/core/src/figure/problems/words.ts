import { commaReadings } from "../../number/quantity.ts";
import { type Inner, remark, type Texts } from "./entry.ts";

/** The nearest names as a question, or what to do where none is near. */
export function didYouMean(nearest: readonly string[], otherwise: string): string {
  return nearest.length === 0 ? otherwise : `did you mean ${nearest.map((name) => `"${name}"`).join(" or ")}?`;
}

/** The readings of a text that has commas in its numbers, as advice; nothing where there are none. */
export function withPoints(written: string): string | undefined {
  const readings = commaReadings(written);
  return readings.length === 0 ? undefined : readings.join(" or ");
}

/** The names to take one of, or what is meant where there are none. */
export function oneOf(names: readonly string[], otherwise: string): string {
  return names.length === 0 ? otherwise : `one of: ${names.join(", ")}`;
}

/** What there is to say of one material or product. */
export const ofOne = remark(
  ({ name, says }: Texts<"name"> & { readonly says: string | Inner }, tell) =>
    `${name}: ${typeof says === "string" ? says : tell(says)}`,
);
