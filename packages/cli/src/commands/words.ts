import { listWords } from "@noodlewright/core";
import { printProblems, printReport } from "../shared/answer.ts";
import type { Command } from "../shared/command.ts";
import { reportFlags } from "../shared/flags.ts";

/** `noodlewright words`: what the words of the answers mean. */
export const wordsCommand: Command = {
  positionals: { word: "A word, or the beginning of one; none lists all" },
  flags: reportFlags,
  examples: {
    "noodlewright words meq": "what one word means",
    "noodlewright words": "all of them",
    "noodlewright formula noodle.yaml --words": "those of an answer, below it",
  },
  run: async (asked, io) => {
    const answer = listWords(asked.list("word").join(" "));
    return answer.ok ? printReport(answer.report(), asked, io) : printProblems(answer.problems, asked, io);
  },
};
