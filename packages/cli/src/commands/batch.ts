import { askBatch } from "@noodlewright/core";
import { printAnswer } from "../shared/ask-noodle.ts";
import type { Command } from "../shared/command.ts";
import { batchFlags, batchOverrides, specFlags } from "../shared/flags.ts";

/** `noodlewright batch`: the weights on the bench. */
export const batchCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: { ...batchFlags, ...specFlags },
  examples: [
    ["noodlewright batch noodle.yaml", "the batch that the spec describes"],
    ["noodlewright batch noodle.yaml --bowls 320 --raw-weight '130 g'", "320 bowls of 130 g of raw strands"],
    ["noodlewright batch noodle.yaml --have 'bread flour=3.2 kg'", "what can be made of the flour there is"],
    ["noodlewright batch noodle.yaml --load largest --format csv", "one mixer load, for a spreadsheet"],
  ],
  run: (asked, io) => printAnswer({ ask: askBatch, overrides: batchOverrides(asked), needs: "machines" }, asked, io),
};
