import type { Path } from "../path.ts";

/** What a problem says, in words. */
export interface Sentences {
  /** What was found there. */
  readonly found: string;
  /** What would have been right. */
  readonly expected: string;
  /** What to do. */
  readonly advice: string;
}

/** A kind of problem: whose fault it is, and how its facts read. */
export interface Entry<Facts> {
  /** `input`: the spec or the flags are wrong. `no-answer`: they are right, and what they ask cannot be had. */
  readonly kind: "input" | "no-answer";
  readonly say: (facts: Facts, path: Path) => Sentences;
}

/** Facts that are texts: names, and numbers as they are shown. */
export type Texts<Names extends string> = Readonly<Record<Names, string>>;
/** Facts that are lists of texts. */
export type Lists<Names extends string> = Readonly<Record<Names, readonly string[]>>;
/** Facts that are numbers. */
export type Counts<Names extends string> = Readonly<Record<Names, number>>;
/** No facts at all: the code says it. */
export type NoFacts = Readonly<Record<string, never>>;

/**
 * A problem with what the spec says.
 *
 * @example input(({ name }) => ({ found: name, expected: "flour", advice: "name one" })).kind // => "input"
 */
export function input<Facts = NoFacts>(say: Entry<Facts>["say"]): Entry<Facts> {
  return { kind: "input", say };
}

/**
 * A question that has no answer.
 *
 * @example noAnswer(() => ({ found: "0 g", expected: "some", advice: "ask for more" })).kind // => "no-answer"
 */
export function noAnswer<Facts = NoFacts>(say: Entry<Facts>["say"]): Entry<Facts> {
  return { kind: "no-answer", say };
}

/** The facts of each code of a catalogue. */
export type FactsOf<Catalogue> = {
  readonly [Code in keyof Catalogue]: Catalogue[Code] extends Entry<infer Facts> ? Facts : never;
};
