import type { Override } from "../input/overrides.ts";
import type { Asked, Flag } from "./command.ts";
import { flagsAt, overridesOf, plainNumber, type ValueFlag, type ValueFlags } from "./flag-values.ts";

/** Flags of every command that prints a report. */
export const reportFlags = {
  format: {
    describe: "Form of the output",
    about: "answer",
    choices: ["table", "json", "csv", "markdown", "html", "svg"],
    fallback: "table",
  },
  working: {
    describe: "Show for every figure its formula, the numbers put in, and the source",
    kind: "switch",
    about: "answer",
  },
  words: { describe: "Explain below the answer the words it uses", kind: "switch", about: "answer" },
  figure: {
    describe: "Show the working of one figure and of what it rests on",
    about: "answer",
    placeholder: "dough.water",
  },
  units: { describe: "Units to speak in", about: "answer", choices: ["metric", "us"], fallback: "metric" },
  table: { describe: "Name of the table that --format csv prints", about: "answer", placeholder: "weights" },
  picture: { describe: "Name of the picture that --format svg prints", about: "answer", placeholder: "blend-picture" },
} as const satisfies Readonly<Record<string, Flag>>;

/** The flag of every command that reads a spec. */
export const setFlag = {
  set: {
    describe: "Any key of the spec with another value, for this answer only; may be given several times",
    placeholder: "water.added=38 %",
  },
} as const satisfies Readonly<Record<string, Flag>>;

/** Flags of every command that reads a spec and prints a report. */
export const specFlags = { ...setFlag, ...reportFlags };

/** Flags that set the size of a batch in place of the spec. */
export const batchFlags = {
  bowls: sizeOf("bowls", "Number of bowls", "320", plainNumber),
  "raw-weight": sizeOf("rawWeight", "Raw strands in a bowl", "130 g"),
  "cooked-weight": sizeOf("cookedWeight", "Cooked noodles in a bowl", "230 g"),
  "cook-gain": sizeOf("cookGain", "Cooked weight over raw weight", "1.8", plainNumber),
  dough: sizeOf("dough", "Dough to mix", "12 kg"),
  flour: sizeOf("flour", "Flour as weighed", "10 kg"),
  load: { describe: "One mixer load", about: "batch", choices: ["largest", "smallest"], path: ["batch", "load"] },
  have: sizeOf("have", "All there is of one ingredient", "bread flour=3.2 kg", nameAndAmount),
} as const satisfies ValueFlags;

/** The parts of a spec that the flags of a batch say. */
export function batchOverrides(asked: Asked): readonly Override[] {
  return overridesOf(batchFlags, asked);
}

function sizeOf(...words: Parameters<ReturnType<typeof flagsAt>>): ValueFlag {
  return { ...flagsAt("batch")(...words), about: "batch" };
}

/** A name, and what is said of it after the last equals sign. */
export function nameAndAmount(text: string): { readonly name: string; readonly amount?: string } {
  const at = text.lastIndexOf("=");
  return at < 0 ? { name: text.trim() } : { name: text.slice(0, at).trim(), amount: text.slice(at + 1).trim() };
}
