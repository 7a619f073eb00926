import type { Note } from "../figure/problem.ts";
import type { Source } from "../figure/source.ts";

/** Work that calls for care. */
export type SheetHazard = "rolls" | "cutter" | "dust" | "pot" | "standing-dough" | "packed";

/** What is usually warned of, and whose word counts. */
export interface Caution extends Note {
  readonly code: `caution.${SheetHazard}`;
  readonly sources: readonly Source[];
}

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
const rawFlour: Source = {
  cite: "United States food safety advice on raw flour and dough",
  standing: "copy",
};
const packedRule: Source = {
  cite: "United Kingdom guidance on vacuum and modified-atmosphere packed chilled food, December 2020",
  standing: "read",
};
const practice: Source = { cite: "common practice, no source", standing: "practice" };

const cautions: Readonly<Record<SheetHazard, Pick<Caution, "text" | "sources">>> = {
  rolls: {
    text: "Rolls draw in fingers, hair, sleeves and apron strings faster than they can be stopped: tie back and roll up, keep guards and stop bars in place, feed with the flat hand or a tool, and switch off and unplug before clearing or cleaning. Children turn the handle only beside somebody who has been shown how. The machine's manual and the local rules for its use come first.",
    sources: [sheeterStandard, bakeryRule],
  },
  cutter: {
    text: "Cutters pull in and cut: catch strands well below them, never pick dough out of turning blades, and take them out to clean only with the machine unplugged. The machine's manual comes first.",
    sources: [sheeterStandard],
  },
  dust: {
    text: "Flour and dusting starch irritate lungs and, thrown up thickly near a flame or spark, can burn at once: pour low, dust by hand and thinly, wipe or vacuum instead of blowing. Local workplace limits for flour dust apply.",
    sources: [dustLimit, sheeterStandard],
  },
  pot: {
    text: "Boiling pots scald and alkaline noodles make them foam: leave headroom, lower baskets slowly, lift them away from the body, keep the way to the sink clear and children at a distance. The pot's manual and local kitchen rules come first.",
    sources: [practice],
  },
  "standing-dough": {
    text: "Germs grow in wet dough and wet noodles that stand warm; alkali does not stop them. Keep waiting times short and cool, boil before eating, wash hands and tools. The local rules for time and temperature decide.",
    sources: [rawFlour],
  },
  packed: {
    text: "Noodles that are packed for later, most of all without air, need a food safety plan of their own with limits set by somebody competent; nothing worked out here is a keeping time. Local rules decide.",
    sources: [packedRule],
  },
};

/**
 * Lists the usual cautions for the work at hand, each hazard once, in the order asked for.
 *
 * @example sheetCautions(["rolls", "pot"]).map((caution) => caution.code) // => ["caution.rolls", "caution.pot"]
 */
export function sheetCautions(hazards: readonly SheetHazard[]): readonly Caution[] {
  return [...new Set(hazards)].map((hazard) => ({ code: `caution.${hazard}` as const, path: [], ...cautions[hazard] }));
}
