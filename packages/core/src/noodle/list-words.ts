import { answer, problem, refuse } from "../figure/problem.ts";
import { glossary, type Word, wordsNamed } from "../report/words.ts";
import { wordsReport } from "../report/words-report.ts";
import { type Answer, answered } from "./answer.ts";

/**
 * The words of the trade that a name stands for, explained; the nearest where there is none of that name, and all of them
 * for no name.
 *
 * Problem: `words.none`.
 * @example listWords("meq").value?.[0]?.word // => "meq"
 */
export function listWords(name: string): Answer<readonly Word[]> {
  const found = wordsNamed(name);
  const unknown = problem("words.none", [], { name, words: glossary.length });
  return answered(found.length > 0 ? answer(found) : refuse(unknown), {
    notes: (own) => own,
    report: (words) => wordsReport(words, name),
  });
}
