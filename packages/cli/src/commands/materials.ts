import { catalogue, materialsReport, nearestNames, searchMaterials } from "@noodlewright/core";
import { printProblems, printReport } from "../command/answer.ts";
import type { Command } from "../command/command.ts";
import { reportFlags } from "../command/flags.ts";
import { exit } from "../io.ts";

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
    const found = searchMaterials(words, kind);
    if (found.length > 0)
      return printReport(materialsReport(found, [words, kind].filter(Boolean).join(", ")), asked, io);
    const nearest = nearestNames(
      words,
      catalogue().map(({ name }) => name),
    );
    await printProblems(
      [
        {
          code: "materials.none",
          kind: "no-answer",
          path: [],
          found: `nothing in the catalogue for "${words}"${kind === undefined ? "" : ` of the kind ${kind}`}`,
          expected: "words of a name, such as rye or bread flour",
          advice:
            nearest.length > 0
              ? `did you mean ${nearest.map((name) => `"${name}"`).join(" or ")}?`
              : "give the material its own figures in the spec",
        },
      ],
      asked,
      io,
    );
    return exit.noAnswer;
  },
};
