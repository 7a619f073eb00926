import {
  alkaliListReport,
  answer,
  knownProducts,
  noAnswer,
  refuse,
  severalOf,
  severalProblem,
} from "@noodlewright/core";
import { reportFlags } from "../../shared/flags.ts";
import { member } from "./member.ts";

/** `noodlewright alkali list`: the salts, their additive numbers, hazard and limits. */
export const listCommand = member({
  positionals: { words: "Words that the name or formula must have; none lists all" },
  flags: reportFlags,
  examples: [
    ["noodlewright alkali list carbonate", "the carbonates and their hydrates"],
    ["noodlewright alkali list --format csv --table hazard", "additive numbers and hazard of all"],
  ],
  read: (ask) => ask.list("words").join(" "),
  answer: (words) => {
    const found = knownProducts(words);
    if (found.length > 0) return answer(alkaliListReport(found, words));
    const several = severalOf(words);
    if (several) return refuse({ ...severalProblem(several, words, []), kind: "no-answer" });
    const expected = "words of a name or formula, such as carbonate or K2CO3";
    return refuse(noAnswer("alkali.none", [], `no salt for "${words}"`, expected, "leave the words out to see all"));
  },
});
