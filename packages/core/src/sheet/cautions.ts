import { type Note, note } from "../figure/problem.ts";
import { commonPractice, type Source } from "../figure/source.ts";

/** Work that calls for care. */
export type SheetHazard = "rolls" | "cutter" | "dust" | "pot" | "standing-dough" | "packed";

/** What is usually warned of, and whose word counts. */
export type Caution = Note<`caution.${SheetHazard}`> & { readonly sources: readonly Source[] };

const sheeterStandard: Source = {
  cite: "EN 1674, food processing machinery, dough sheeters, safety and hygiene",
  at: "scope and list of hazards",
  standing: "read",
};
const bakeryRule: Source = {
  cite: "29 CFR 1910.263, bakery equipment",
  at: "dough brakes and sheeters",
  standing: "read",
};
const dustLimit: Source = {
  cite: "United Kingdom workplace exposure limit for flour dust: 10 mg/m³ over 8 hours, 30 mg/m³ over 15 minutes",
  standing: "read",
};
const rawFlour: Source = { cite: "United States food safety advice on raw flour and dough", standing: "copy" };
const packedRule: Source = {
  cite: "United Kingdom guidance on vacuum and modified-atmosphere packed chilled food, December 2020",
  standing: "read",
};

const sources: Readonly<Record<SheetHazard, readonly Source[]>> = {
  rolls: [sheeterStandard, bakeryRule],
  cutter: [sheeterStandard],
  dust: [dustLimit, sheeterStandard],
  pot: [commonPractice],
  "standing-dough": [rawFlour],
  packed: [packedRule],
};

/**
 * Lists the usual cautions for the work at hand, each hazard once, in the order asked for.
 *
 * @example sheetCautions(["rolls", "pot"]).map((caution) => caution.code) // => ["caution.rolls", "caution.pot"]
 */
export function sheetCautions(hazards: readonly SheetHazard[]): readonly Caution[] {
  return [...new Set(hazards)].map((hazard) => ({ ...note(`caution.${hazard}`, [], {}), sources: sources[hazard] }));
}
