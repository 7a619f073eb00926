import type { Path } from "./path.ts";
import type { FactsOf, NoteFactsOf } from "./problems/entry.ts";
import type { catalogue } from "./problems/index.ts";

export type { Path } from "./path.ts";

/** A problem of a catalogue whose codes have these facts. */
export type ProblemIn<Facts, Code extends keyof Facts = keyof Facts> = {
  readonly [Each in Code]: {
    /** Stable code of the kind `area.what`, such as `flours.shares-total`. */
    readonly code: Each;
    readonly path: Path;
    /** What the sentences are made from. */
    readonly facts: Facts[Each];
  };
}[Code];

/** The facts of every code. */
export type Facts = FactsOf<typeof catalogue>;

/** Every code that a problem may have. */
export type Code = keyof Facts;

/** Something that keeps an answer from being given. It is data, without words: `told` makes them. Only bugs throw. */
export type Problem<Which extends Code = Code> = ProblemIn<Facts, Which>;

/** The facts of every note. */
export type NoteFacts = NoteFactsOf<typeof catalogue>;

/** Every code that a note may have. */
export type NoteCode = keyof NoteFacts;

/** Something worth knowing that does not keep the answer from being given. It is data, without words, as a problem is. */
export type Note<Which extends NoteCode = NoteCode> = ProblemIn<NoteFacts, Which> & {
  /** To be said before anything else: somebody may come to harm, or the answer may not be what was asked for. */
  readonly loud?: true;
  /** Which of several noodles it speaks of, or whose place that which it speaks of takes. */
  readonly of?: { readonly noodle: string } | { readonly inPlaceOf: string };
};

/** An answer with its notes, or all the problems that stand in its way. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T; readonly notes: readonly Note[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Makes the answer.
 *
 * @example answer(36) // => { ok: true, value: 36, notes: [] }
 */
export function answer<T>(value: T, notes: readonly Note[] = []): Outcome<T> {
  return { ok: true, value, notes };
}

/** Makes the refusal. */
export function refuse(...problems: readonly Problem[]): Outcome<never> {
  return { ok: false, problems };
}

/** The problems of an outcome; none of an answer. @example problemsOf(answer(36)) // => [] */
export function problemsOf(outcome: Outcome<unknown> | undefined): readonly Problem[] {
  return outcome?.ok === false ? outcome.problems : [];
}

/** Makes a problem. @example problem("water.not-stated", ["water"], {}).code // => "water.not-stated" */
export function problem<Which extends Code>(code: Which, path: Path, facts: Facts[Which]): ProblemIn<Facts, Which> {
  return { code, path, facts };
}

/** Makes a note. @example note("cost.water-free", ["prices"], {}).code // => "cost.water-free" */
export function note<Which extends NoteCode>(
  code: Which,
  path: Path,
  facts: NoteFacts[Which],
): ProblemIn<NoteFacts, Which> {
  return { code, path, facts };
}

/** Makes a note to be said before anything else. @example loudNote("weighing.nothing", [], { names: ["soda"], stock: false }).loud // => true */
export function loudNote<Which extends NoteCode>(code: Which, path: Path, facts: NoteFacts[Which]) {
  return { ...note(code, path, facts), loud: true as const };
}

/** Each note once. */
export function distinct(notes: readonly Note[]): readonly Note[] {
  return [...new Map(notes.map((one) => [JSON.stringify(one), one])).values()];
}

/** Writes a path the way people say it. @example pathText(["flours", 0, "amount"]) // => "flours[0].amount" */
export function pathText(path: Path): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === "number") return `${text}[${step}]`;
    const name = /^[\w-]+$/u.test(step) ? step : `"${step}"`;
    return text === "" ? name : `${text}.${name}`;
  }, "");
}
