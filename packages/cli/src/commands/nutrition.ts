import { askNutrition } from "@noodlewright/core";
import { jurisdictions } from "@noodlewright/core/spec";
import { specCommand } from "../shared/ask-noodle.ts";
import { batchFlags, batchOverrides } from "../shared/flags.ts";

const { "raw-weight": rawWeight, "cooked-weight": cookedWeight, "cook-gain": cookGain } = batchFlags;

const ruleBooks = ["US", "EU", "JP"] as const;

/** `noodlewright nutrition`: what a bowl contains, and its allergens. */
export const nutritionCommand = specCommand({
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
  },
  examples: {
    "noodlewright nutrition noodle.yaml": "energy, nutrients and salt by the rules of the European Union",
    "noodlewright nutrition noodle.yaml --rules US --cooked-weight '230 g'":
      "a serving by the rules of the United States",
    "noodlewright nutrition noodle.yaml --jurisdiction CA": "the allergens by the list of Canada",
  },
  question: (asked) => {
    const rules = ruleBooks.find((one) => one === asked.text("rules"));
    const jurisdiction = jurisdictions.find((one) => one === asked.text("jurisdiction"));
    const wish = { jurisdiction, ...(rules && { rules }) };
    return { ask: (noodle) => askNutrition(noodle, wish), overrides: batchOverrides(asked) };
  },
});
