import { askFlourReplacement, askIngredientReplacement } from "@noodlewright/core";
import { usualHold } from "@noodlewright/core/explore";
import type { PlacedProblem } from "../input/placed-problem.ts";
import { ownProblem } from "../input/problem.ts";
import { printProblems } from "../shared/answer.ts";
import { atFlag, printAnswer, specPlace } from "../shared/ask-noodle.ts";
import { holdFlag, searchFlags, searchOverrides, searchValues } from "../shared/blend-flags.ts";
import type { Command } from "../shared/command.ts";
import { specFlags } from "../shared/flags.ts";
import { writeFlags } from "../shared/write-spec.ts";

/** `noodlewright replace`: a flour, or an egg product, that is not to be had. */
export const replaceCommand: Command = {
  positionals: specPlace,
  flags: {
    missing: { describe: "The flour or the ingredient that is missing", placeholder: "rye flour" },
    with: { describe: "What takes the place of an ingredient", placeholder: "dried whole egg" },
    ...holdFlag(usualHold),
    ...searchFlags,
    ...writeFlags,
    ...specFlags,
  },
  examples: {
    "noodlewright replace noodle.yaml --missing 'rye flour' --shelf 'spelt, whole grain'": "by what is on the shelf",
    "noodlewright replace noodle.yaml --missing 'bread flour' --hold 'protein, ash'": "holding ash as well",
    "noodlewright replace noodle.yaml --missing 'whole egg' --with 'dried whole egg'": "egg, and the water for it",
    "noodlewright replace noodle.yaml --missing 'rye flour' --write": "writes the new blend into the spec",
  },
  run: (asked, io) => {
    const [missing, by, hold] = [asked.text("missing"), asked.text("with"), asked.text("hold")];
    if (missing === undefined) return printProblems([nothingMissing], asked, io);
    const order = { overrides: searchOverrides(searchValues, asked), place: atFlag("missing", "with", "hold") };
    if (by !== undefined) {
      return printAnswer({ ...order, ask: (noodle) => askIngredientReplacement(noodle, { missing, by }) }, asked, io);
    }
    const wish = { missing, ...(hold !== undefined && { hold }) };
    return printAnswer(
      {
        ...order,
        ask: (noodle) => askFlourReplacement(noodle, wish),
        found: ({ answer }) => answer.kind === "found",
      },
      asked,
      io,
    );
  },
};

const nothingMissing: PlacedProblem = { ...ownProblem("replace.missing", {}), flag: "--missing" };
