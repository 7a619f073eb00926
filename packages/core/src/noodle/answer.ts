import { frozen } from "../figure/frozen.ts";
import type { Note, Outcome, Problem } from "../figure/problem.ts";
import type { Report } from "../report/schema.ts";
import type { Noodle } from "./noodle.ts";

/** What was asked of a noodle, as plain data, with every note that belongs to it and its report; or what stands in the way. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T; readonly notes: readonly Note[]; readonly report: () => Report }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What makes an answer of an outcome. */
interface Telling<T> {
  /** Every note that belongs to the answer, its own among them. */
  readonly notes: (own: readonly Note[]) => readonly Note[];
  readonly report: (value: T, notes: readonly Note[]) => Report;
}

/** Makes the answer of an outcome. */
export function answered<T>(outcome: Outcome<T>, { notes, report }: Telling<T>): Answer<T> {
  if (!outcome.ok) return frozen(outcome);
  const { value } = outcome;
  const all = notes(outcome.notes);
  return frozen({ ok: true, value, notes: all, report: () => frozen(report(value, all)) });
}

/** The same work, done once for each noodle: who asks again is given the same object, in which nobody can write. */
export function once<T>(work: (noodle: Noodle) => Outcome<T>): (noodle: Noodle) => Outcome<T> {
  const known = new WeakMap<Noodle, Outcome<T>>();
  return (noodle) => {
    const outcome = known.get(noodle) ?? frozen(work(noodle));
    known.set(noodle, outcome);
    return outcome;
  };
}
