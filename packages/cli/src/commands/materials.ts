import {
  catalogue,
  materialsReport,
  nameAdvice,
  nearestMaterials,
  noAnswer,
  searchMaterials,
  severalOf,
  severalProblem,
} from "@noodlewright/core";
import { printProblems, printReport } from "../shared/answer.ts";
import type { Command } from "../shared/command.ts";
import { reportFlags } from "../shared/flags.ts";

const kinds = ["flour", "starch", "gluten", "bran", "egg", "salt", "alkali", "fat", "other"] as const;

/** `noodlewright materials`: lists and searches the catalogue. */
export const materialsCommand: Command = {
  positionals: { words: "Words that the name must have; none lists all" },
  flags: {
    kind: { describe: "Only this kind", kind: "text", choices: kinds },
    ...reportFlags,
  },
  examples: [
    ["noodlewright materials rye", "every rye flour"],
    ["noodlewright materials --kind alkali", "the alkaline products"],
    ["noodlewright materials bread flour --format json", "for another program"],
  ],
  run: async (asked, io) => {
    const words = asked.list("words").join(" ");
    const kind = kinds.find((one) => one === asked.text("kind"));
    const listed = searchMaterials(words, kind);
    if (listed.length > 0)
      return printReport(materialsReport(listed, [words, kind].filter(Boolean).join(", ")), asked, io);
    const several = severalOf(words);
    const found = `nothing in the catalogue for "${words}"${kind === undefined ? "" : ` of the kind ${kind}`}`;
    const problem = several
      ? { ...severalProblem(several, words, []), kind: "no-answer" as const }
      : noAnswer("materials.none", [], found, "words of a name, such as rye or bread flour", adviceOn(words));
    return printProblems([problem], asked, io);
  },
};

function adviceOn(words: string): string {
  const names = catalogue().map(({ name }) => name);
  return nameAdvice(words, nearestMaterials(words, names), "give the material its own figures in the spec");
}
