import { askNutrition } from "@noodlewright/core";
import { jurisdictions } from "@noodlewright/core/spec";
import { printAnswer } from "../shared/ask-noodle.ts";
import type { Command } from "../shared/command.ts";
import { batchFlags, batchOverrides, specFlags } from "../shared/flags.ts";

const { "raw-weight": rawWeight, "cooked-weight": cookedWeight, "cook-gain": cookGain } = batchFlags;

const ruleBooks = ["US", "EU", "JP"] as const;

/** `noodlewright nutrition`: what a bowl contains, and its allergens. */
export const nutritionCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: {
    rules: {
      describe: "Whose rules count and round: United States, European Union or Japan",
      choices: ruleBooks,
      fallback: "EU",
    },
    jurisdiction: {
      describe: "Whose list of allergens to go by, AU with New Zealand; that of the rules unless stated",
      choices: jurisdictions,
    },
    "raw-weight": rawWeight,
    "cooked-weight": cookedWeight,
    "cook-gain": cookGain,
    ...specFlags,
  },
  examples: [
    ["noodlewright nutrition noodle.yaml", "energy, nutrients and salt by the rules of the European Union"],
    [
      "noodlewright nutrition noodle.yaml --rules US --cooked-weight '230 g'",
      "a serving by the rules of the United States",
    ],
    ["noodlewright nutrition noodle.yaml --jurisdiction CA", "the allergens by the list of Canada"],
  ],
  run: (asked, io) => {
    const rules = ruleBooks.find((one) => one === asked.text("rules"));
    const jurisdiction = jurisdictions.find((one) => one === asked.text("jurisdiction"));
    const wish = { ...(rules && { rules }), ...(jurisdiction && { jurisdiction }) };
    return printAnswer({ ask: (noodle) => askNutrition(noodle, wish), overrides: batchOverrides(asked) }, asked, io);
  },
};
