import { frozen } from "../figure/frozen.ts";
import type { Note, Outcome, Problem } from "../figure/problem.ts";
import type { Report } from "../report/schema.ts";
import { asRead, type Noodle } from "./noodle.ts";
import type { SpecChange } from "./spec-changes.ts";

/** What was asked of a noodle, as plain data, with every note that belongs to it and its report; or what stands in the way. */
export type Answer<T, More = unknown> =
  | ({ readonly ok: true; readonly value: T; readonly notes: readonly Note[]; readonly report: () => Report } & More)
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** An answer that can also be written into the spec of the noodle that was asked: `changes()` tells what that changes there. */
export type ChangingAnswer<T> = Answer<T, { readonly changes: () => readonly SpecChange[] }>;

/** What makes an answer of an outcome. */
interface Telling<T> {
  /** Every note that belongs to the answer, its own among them; those alone unless told. */
  readonly notes?: (own: readonly Note[]) => readonly Note[];
  readonly report: (value: T, notes: readonly Note[]) => Report;
}

/** Makes the answer of an outcome. */
export function answered<T>(outcome: Outcome<T>, { notes = (own) => own, report }: Telling<T>): Answer<T> {
  if (!outcome.ok) return frozen(outcome);
  const { value } = outcome;
  const all = notes(outcome.notes);
  return frozen({ ok: true, value, notes: all, report: () => frozen(report(value, all)) });
}

/** Adds to an answer what it changes in the spec of its noodle. */
export function changing<T>(answer: Answer<T>, changes: (value: T) => readonly SpecChange[]): ChangingAnswer<T> {
  return answer.ok ? frozen({ ...answer, changes: () => changes(answer.value) }) : answer;
}

/** The same work, done once for each noodle: who asks again is given the same object, in which nobody can write. */
export function once<T extends object>(work: (noodle: Noodle) => T): (noodle: Noodle) => T {
  const known = new WeakMap<Noodle, T>();
  return (noodle) => {
    const result = known.get(noodle) ?? frozen(work(asRead(noodle)));
    known.set(noodle, result);
    return result;
  };
}
