import { answer, type Note, note, problem, refuse } from "../figure/problem.ts";
import { plainName } from "../materials/nearest.ts";
import { glossary, type Word, wordsNamed } from "../report/words.ts";
import { wordsReport } from "../report/words-report.ts";
import { type Answer, answered } from "./answer.ts";

/**
 * The words of the trade that a name stands for, explained; the nearest where there is none of that name, and all of them
 * for no name. A note tells what of the name is not explained.
 *
 * Problem: `words.none`.
 * @example listWords("meq").value?.[0]?.word // => "meq"
 */
export function listWords(name: string): Answer<readonly Word[]> {
  const found = wordsNamed(name);
  const unknown = problem("words.none", [], { name, words: glossary.length });
  return answered(found.length > 0 ? answer(found, unexplained(name, found)) : refuse(unknown), {
    notes: (own) => own,
    report: (words, notes) => wordsReport(words, name, notes),
  });
}

/** Says which parts of a name stand in none of the words that were found for it. */
function unexplained(name: string, found: readonly Word[]): readonly Note[] {
  const names = found.flatMap(({ word, also }) => [word, ...also]).map(plainName);
  const parts = name.split(/\s+/u).filter((part) => !names.some((one) => one.includes(plainName(part))));
  if (parts.length === 0) return [];
  return [note("words.unexplained", [], { name: parts.join(" ") })];
}
