import { askCost } from "@noodlewright/core";
import { printAnswer } from "../shared/ask-noodle.ts";
import type { Command } from "../shared/command.ts";
import { batchFlags, batchOverrides, specFlags } from "../shared/flags.ts";

/** `noodlewright cost`: what a batch costs, what to buy and how far the store goes. */
export const costCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: { ...batchFlags, ...specFlags },
  examples: [
    ["noodlewright cost noodle.yaml", "the cost by ingredient, load and bowl, and the shopping list"],
    ["noodlewright cost noodle.yaml --bowls 120", "the same for another number of bowls"],
    ["noodlewright cost noodle.yaml --table shopping --format csv", "the shopping list for a spreadsheet"],
  ],
  run: (asked, io) => printAnswer({ ask: askCost, overrides: batchOverrides(asked), needs: "machines" }, asked, io),
};
