import { askCost } from "@noodlewright/core";
import { specCommand } from "../shared/ask-noodle.ts";
import { batchFlags, batchOverrides } from "../shared/flags.ts";

/** `noodlewright cost`: what a batch costs, what to buy and how far the store goes. */
export const costCommand = specCommand({
  flags: batchFlags,
  examples: {
    "noodlewright cost noodle.yaml": "the cost by ingredient, load and bowl, and the shopping list",
    "noodlewright cost noodle.yaml --bowls 120": "the same for another number of bowls",
    "noodlewright cost noodle.yaml --table shopping --format csv": "the shopping list for a spreadsheet",
  },
  question: (asked) => ({ ask: askCost, overrides: batchOverrides(asked), needs: "machines" }),
});
