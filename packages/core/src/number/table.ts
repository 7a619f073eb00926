import type { DecimalText } from "./decimal.ts";

/** A printed table of two columns as its rows, by the rising number in the first. @example rowsOf({ 0: "7.0", 12.5: "14.1" }) // => [["0", "7.0"], ["12.5", "14.1"]] */
export function rowsOf(table: Readonly<Record<number, DecimalText>>): readonly (readonly [DecimalText, DecimalText])[] {
  return Object.entries(table).sort(([one], [other]) => Number(one) - Number(other));
}
