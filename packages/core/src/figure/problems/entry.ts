import type { Measure } from "../in-system.ts";
import type { Path } from "../path.ts";

/** What a problem says, in words. */
export interface Sentences {
  /** What was found there. */
  readonly found: string;
  /** What would have been right. */
  readonly expected: string;
  /** What to do. */
  readonly advice: string;
  /** Lines that would be right in its place, where a few can be told. */
  readonly lines?: readonly string[];
}

/** A kind of problem: whose fault it is, and how its facts read. */
export interface ProblemEntry<Facts> {
  /** `input`: the spec or the flags are wrong. `no-answer`: they are right, and what they ask cannot be had. */
  readonly kind: "input" | "no-answer";
  readonly say: (facts: Facts, path: Path, tell: TellWithin<Sentences>) => Sentences;
}

/** A kind of note, and how its facts read. */
export interface NoteEntry<Facts> {
  readonly kind: "note";
  readonly say: (facts: Facts, tell: Tell) => string;
}

/** What a catalogue says of a code. */
export type Entry<Facts> = ProblemEntry<Facts> | NoteEntry<Facts>;

/** A problem or a note that another tells of. */
export interface Inner {
  readonly code: string;
  readonly path: Path;
  readonly facts: unknown;
}

/** Tells what stands within: a measure in the units asked for, another problem or note in its words. */
export interface TellWithin<Words> {
  (measure: Measure): string;
  (inner: Inner): Words;
}

/** Tells what stands within a note: a measure, what was found and expected of a problem, the sentence of a note. */
export type Tell = TellWithin<string>;

/** Facts that are texts: names, and numbers as they are shown. */
export type Texts<Names extends string> = Readonly<Record<Names, string>>;
/** Facts that are numbers with their units. */
export type Measures<Names extends string> = Readonly<Record<Names, Measure>>;
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
export function input<Facts = NoFacts>(say: ProblemEntry<Facts>["say"]): ProblemEntry<Facts> {
  return { kind: "input", say };
}

/**
 * A question that has no answer.
 *
 * @example noAnswer(() => ({ found: "0 g", expected: "some", advice: "ask for more" })).kind // => "no-answer"
 */
export function noAnswer<Facts = NoFacts>(say: ProblemEntry<Facts>["say"]): ProblemEntry<Facts> {
  return { kind: "no-answer", say };
}

/**
 * Something worth knowing that does not keep the answer from being given; one without facts is its sentence.
 *
 * @example remark(({ name }) => `${name} is new`).kind // => "note"
 */
export function remark<Facts = NoFacts>(say: NoteEntry<Facts>["say"] | string): NoteEntry<Facts> {
  return { kind: "note", say: typeof say === "string" ? () => say : say };
}

/** The facts of each problem of a catalogue. */
export type FactsOf<Catalogue> = {
  readonly [Code in keyof Catalogue as Catalogue[Code] extends NoteEntry<never>
    ? never
    : Code]: Catalogue[Code] extends Entry<infer Facts> ? Facts : never;
};

/** The facts of each note of a catalogue. */
export type NoteFactsOf<Catalogue> = {
  readonly [Code in keyof Catalogue as Catalogue[Code] extends NoteEntry<never>
    ? Code
    : never]: Catalogue[Code] extends Entry<infer Facts> ? Facts : never;
};
