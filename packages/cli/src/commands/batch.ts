import { askBatch } from "@noodlewright/core";
import { specCommand } from "../shared/ask-noodle.ts";
import { batchFlags, batchOverrides } from "../shared/flags.ts";

/** `noodlewright batch`: the weights on the bench. */
export const batchCommand = specCommand({
  flags: batchFlags,
  examples: {
    "noodlewright batch noodle.yaml": "the batch that the spec describes",
    "noodlewright batch noodle.yaml --bowls 320 --raw-weight '130 g'": "320 bowls of 130 g of raw strands",
    "noodlewright batch noodle.yaml --have 'bread flour=3.2 kg'": "what can be made of the flour there is",
    "noodlewright batch noodle.yaml --load largest --format csv": "one mixer load, for a spreadsheet",
  },
  question: (asked) => ({ ask: askBatch, overrides: batchOverrides(asked), needs: "machines" }),
});
