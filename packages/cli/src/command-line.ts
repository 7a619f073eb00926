import { nearestNames } from "@noodlewright/core/chemistry";
import { problem } from "@noodlewright/core/figure";
import type { PlacedProblem } from "./input/placed-problem.ts";
import { ownProblem } from "./input/problem.ts";
import type { Asked, Flag } from "./shared/command.ts";

/** What the words of a command line may be. */
export interface Spoken {
  /** Words after `noodlewright`, such as `formula <spec>`. */
  readonly usage: string;
  readonly flags: Readonly<Record<string, Flag>>;
}

/** A word that a usage asks for: `<spec>`, `[file]`, `<products..>`. */
export interface Place {
  readonly name: string;
  readonly required: boolean;
  readonly many: boolean;
}

export interface Reading {
  readonly asked: Asked;
  /** What is wrong with the words. */
  readonly wrong: readonly PlacedProblem[];
  /** Whether a word is missing that the usage asks for. */
  readonly missing: boolean;
}

/** The words of a usage that stand for something: those in brackets. */
export function placesOf(usage: string): readonly Place[] {
  return [...usage.matchAll(/([<[])([\w-]+)(\.\.)?[>\]]/gu)].map(([, bracket, name = "", many]) => ({
    name,
    required: bracket === "<",
    many: many !== undefined,
  }));
}

/** A word that begins like a flag. A lone dash is standard input, and a number may be less than nothing. */
export function isFlag(word: string): boolean {
  return /^-[^\d]/u.test(word);
}

/**
 * Reads the words after the name of a command.
 *
 * Flags and words may stand in any order; after `--` all are words (POSIX.1-2017, utility syntax guideline 10). A flag
 * has its value after `=` or in the next word.
 */
export function readWords(words: readonly string[], { usage, flags }: Spoken): Reading {
  const values = new Map<string, string[]>();
  const on = new Set<string>();
  const wrong: PlacedProblem[] = [];
  let missing = false;
  const free: string[] = [];
  const letters = new Map(
    Object.entries(flags).flatMap(([name, { letter }]) => (letter === undefined ? [] : [[letter, name]])),
  );
  const rest = [...words];
  for (let word = rest.shift(); word !== undefined; word = rest.shift()) {
    if (word === "--") free.push(...rest.splice(0));
    else if (isFlag(word)) flag(word);
    else free.push(word);
  }

  function flag(word: string): void {
    const [, dashes = "", written = "", given] = /^(--?)([^=]*)(?:=(.*))?$/su.exec(word) ?? [];
    const name = dashes === "-" ? (letters.get(written) ?? "") : written;
    const known = Object.hasOwn(flags, name) ? flags[name] : undefined;
    if (known === undefined) {
      const nearest = nearestNames(
        word,
        Object.keys(flags).map((one) => `--${one}`),
        1,
      );
      wrong.push({ ...ownProblem("flag.unknown", { nearest }), flag: dashes + written });
      // What follows may have been its value.
      if (given === undefined && rest[0] !== undefined && !isFlag(rest[0])) rest.shift();
    } else if (known.kind === "switch") {
      if (given === undefined) on.add(name);
      else wrong.push({ ...ownProblem("flag.switch", { written: `"${given}"` }), flag: `--${name}` });
    } else {
      const follows = rest[0] !== undefined && !isFlag(rest[0]);
      const value = given ?? (follows ? rest.shift() : undefined);
      if (value === undefined || value === "") {
        const example = `--${name} '${exampleOf(known)}'`;
        wrong.push({ ...ownProblem("flag.missing", { wanted: "a value", example }), flag: `--${name}` });
      } else if (known.choices !== undefined && !known.choices.includes(value)) {
        const { choices } = known;
        const facts = { written: `"${value}"`, choices, nearest: nearestNames(value, choices, 1) };
        wrong.push({ ...problem("spec.choice", [], facts), flag: `--${name}` });
      } else values.set(name, [...(values.get(name) ?? []), value]);
    }
  }

  for (const { name, required, many } of placesOf(usage)) {
    const taken = free.splice(0, many ? free.length : 1);
    if (taken.length > 0) values.set(name, taken);
    else if (required) missing = true;
  }
  for (const word of free) wrong.push(ownProblem("word.extra", { word }));
  const list = (name: string): readonly string[] => {
    const fallback = Object.hasOwn(flags, name) ? flags[name]?.fallback : undefined;
    return values.get(name) ?? (fallback === undefined ? [] : [fallback]);
  };
  return {
    asked: { text: (name) => list(name).at(-1), list, on: (name) => on.has(name), flag: (name) => flags[name] },
    wrong,
    missing,
  };
}

function exampleOf({ placeholder, choices }: Flag): string {
  return placeholder ?? choices?.[0] ?? "";
}
