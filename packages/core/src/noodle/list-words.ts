import { answer, type Note, note, problem, refuse } from "../figure/problem.ts";
import { glossary, lookUp, type Word } from "../report/words.ts";
import { wordsReport } from "../report/words-report.ts";
import { type Answer, answered } from "./answer.ts";
import { readWish, wishedText } from "./wishes.ts";

/**
 * The words of the trade that a name stands for, explained; the nearest where there is none of that name, and all of them
 * for no name. A note tells what of the name is not explained.
 *
 * Problem: `words.none`.
 * @example listWords("meq").value?.[0]?.word // => "meq"
 */
export function listWords(name: string): Answer<readonly Word[]> {
  const wished = readWish(wishedText("Words to look up", "meq"), name);
  if (!wished.ok) return wished;
  const { words: found, nearly, unknown: parts } = lookUp(name);
  const unknown = problem("words.none", [], { name, words: glossary.length });
  return answered(found.length > 0 ? answer(found, unexplained(nearly, parts)) : refuse(unknown), {
    report: (words, notes) => wordsReport(words, name, notes),
  });
}

/** Says which parts of a name no word has, and which one has that is spelt nearly so. */
function unexplained(nearly: readonly string[], parts: readonly string[]): readonly Note[] {
  return [
    ...(nearly.length === 0 ? [] : [note("words.unexplained", [], { name: nearly.join(" "), nearest: true })]),
    ...parts.map((name) => note("words.unexplained", [], { name, nearest: false })),
  ];
}
