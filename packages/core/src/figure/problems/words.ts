import { type Inner, remark, type Texts } from "./entry.ts";

/** The nearest names as a question, or what to do where none is near. */
export function didYouMean(nearest: readonly string[], otherwise: string): string {
  return nearest.length === 0 ? otherwise : `did you mean ${nearest.map((name) => `"${name}"`).join(" or ")}?`;
}

/** A text with points for its decimal commas, as it would be read; both that it may be where a comma may also stand between thousands. */
export function withPoints(written: string): string | undefined {
  if (!/\d,\d/u.test(written)) return undefined;
  const either = /(?<![\d.,])[1-9]\d{0,2},\d{3}(?!\d)/u.test(written) ? [".", ""] : ["."];
  return either.map((mark) => written.replace(/(\d),(?=\d)/gu, `$1${mark}`)).join(" or ");
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
