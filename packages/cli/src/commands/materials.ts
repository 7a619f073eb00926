import { listMaterials } from "@noodlewright/core";
import { printProblems, printReport } from "../shared/answer.ts";
import type { Command } from "../shared/command.ts";
import { reportFlags } from "../shared/flags.ts";

const kinds = ["flour", "starch", "gluten", "bran", "egg", "salt", "alkali", "fat", "other"] as const;

/** `noodlewright materials`: lists and searches the catalogue. */
export const materialsCommand: Command = {
  positionals: { words: "Words that the name must have; none lists all" },
  flags: { kind: { describe: "Only this kind", choices: kinds }, ...reportFlags },
  examples: {
    "noodlewright materials rye": "every rye flour",
    "noodlewright materials --kind alkali": "the alkaline products",
    "noodlewright materials bread flour --format json": "for another program",
  },
  run: async (asked, io) => {
    const words = asked.list("words").join(" ");
    const kind = kinds.find((one) => one === asked.text("kind"));
    const answer = listMaterials(words, kind);
    return answer.ok ? printReport(answer.report(), asked, io) : printProblems(answer.problems, asked, io);
  },
};
