import type { Override } from "../input/overrides.ts";
import type { Asked, Flag } from "./command.ts";

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
  bowls: { describe: "Number of bowls", about: "batch", placeholder: "320" },
  "raw-weight": { describe: "Raw strands in a bowl", about: "batch", placeholder: "130 g" },
  "cooked-weight": { describe: "Cooked noodles in a bowl", about: "batch", placeholder: "230 g" },
  "cook-gain": { describe: "Cooked weight over raw weight", about: "batch", placeholder: "1.8" },
  dough: { describe: "Dough to mix", about: "batch", placeholder: "12 kg" },
  flour: { describe: "Flour as weighed", about: "batch", placeholder: "10 kg" },
  load: { describe: "One mixer load", about: "batch", choices: ["largest", "smallest"] },
  have: { describe: "All there is of one ingredient", about: "batch", placeholder: "bread flour=3.2 kg" },
} as const satisfies Readonly<Record<string, Flag>>;

/** The parts of a spec that the flags of a batch say. */
export function batchOverrides(asked: Asked): readonly Override[] {
  const say = (flag: keyof typeof batchFlags, key: string, read = plain): readonly Override[] => {
    const text = asked.text(flag);
    if (text === undefined) return [];
    return [{ flag: `--${flag}`, path: ["batch", key], value: read(text), example: exampleOf(batchFlags[flag]) }];
  };
  return [
    ...say("bowls", "bowls", wholeNumber),
    ...say("dough", "dough"),
    ...say("flour", "flour"),
    ...say("load", "load"),
    ...say("have", "have", nameAndAmount),
    ...say("raw-weight", "rawWeight"),
    ...say("cooked-weight", "cookedWeight"),
    ...say("cook-gain", "cookGain", wholeNumber),
  ];
}

function exampleOf({ placeholder, choices }: Flag): string {
  return placeholder ?? choices?.[0] ?? "";
}

function plain(text: string): unknown {
  return text;
}

/** A plain number stays text where it is none, so that the schema can say what is wrong with it. */
function wholeNumber(text: string): unknown {
  return /^-?\d+(\.\d+)?$/u.test(text.trim()) ? Number(text) : text;
}

/** A name, and what is said of it after the last equals sign. */
export function nameAndAmount(text: string): { readonly name: string; readonly amount?: string } {
  const at = text.lastIndexOf("=");
  return at < 0 ? { name: text.trim() } : { name: text.slice(0, at).trim(), amount: text.slice(at + 1).trim() };
}
