import { askBlend } from "@noodlewright/core";
import { specCommand } from "../shared/ask-noodle.ts";
import { blendFlags, blendOverrides, searchOverrides, shelfFlag, wantedValues } from "../shared/blend-flags.ts";
import { writeFlags } from "../shared/write-spec.ts";

/** `noodlewright blend`: the flours for the noodle asked for. */
export const blendCommand = specCommand({
  flags: { ...wantedValues, ...shelfFlag, ...blendFlags, ...writeFlags },
  examples: {
    "noodlewright blend noodle.yaml": "what the spec says under wanted:, of its flours and its shelf:",
    "noodlewright blend noodle.yaml --protein '11.5 %' --shelf 'vital wheat gluten=at most 4 %'": "by flags",
    "noodlewright blend noodle.yaml --protein 'at least 11 %' --prefer cheapest --step '0.5 %'": "the cheapest",
    "noodlewright blend noodle.yaml --write": "writes the first blend into the spec; nothing else in it changes",
  },
  question: (asked) => ({
    ask: (noodle) => askBlend(noodle),
    overrides: [...searchOverrides(wantedValues, asked), ...blendOverrides(asked)],
    found: ({ answer }) => answer.kind === "found",
  }),
});
