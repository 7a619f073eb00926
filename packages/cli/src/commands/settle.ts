import { askSettle } from "@noodlewright/core";
import { specCommand } from "../shared/ask-noodle.ts";
import { batchFlags, batchOverrides } from "../shared/flags.ts";
import { writeFlags } from "../shared/write-spec.ts";

/** `noodlewright settle`: the amounts that a spec leaves to be found, and what is wanted beside what is reached. */
export const settleCommand = specCommand({
  flags: { ...writeFlags, ...batchFlags },
  examples: {
    "noodlewright settle noodle.yaml": "every `find` of the spec, and how far what is wanted is met",
    "noodlewright settle noodle.yaml -o found.yaml": "the same, and a spec with the amounts in it",
    "noodlewright settle noodle.yaml --write": "writes the amounts into the spec; nothing else in it changes",
  },
  question: (asked) => ({
    ask: (noodle) => askSettle(noodle),
    overrides: batchOverrides(asked),
    needs: "machines",
    found: ({ checks }) => checks.every(({ holds }) => holds),
  }),
});
