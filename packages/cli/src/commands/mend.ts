import { askMend } from "@noodlewright/core";
import { atFlag, specCommand } from "../shared/ask-noodle.ts";
import { batchFlags, batchOverrides, nameAndAmount } from "../shared/flags.ts";

const flagOf: Readonly<Record<string, string>> = { weighed: "weighed", noMore: "no-more" };

/** `noodlewright mend`: too much of something is in the bowl. */
export const mendCommand = specCommand({
  flags: {
    weighed: {
      describe: "What is in the bowl of one load in all; may be given several times",
      placeholder: "tap water=3170 g",
    },
    "no-more": { describe: "What no more can be added of; may be given several times", placeholder: "bread flour" },
    ...batchFlags,
  },
  examples: {
    "noodlewright mend noodle.yaml --weighed 'tap water=3170 g'": "too much water: what to add of all else",
    "noodlewright mend noodle.yaml --weighed 'tap water=3170 g' --no-more 'bread flour'":
      "the same, and how far off the formula it stays",
  },
  question: (asked) => {
    const weighed = asked.list("weighed").map((text) => ({ amount: "", ...nameAndAmount(text) }));
    return {
      ask: (noodle) => askMend(noodle, { weighed, noMore: asked.list("no-more") }),
      overrides: batchOverrides(asked),
      needs: "machines",
      place: (one) => {
        const flag = one.code.startsWith("mend.") ? flagOf[String(one.path[0])] : undefined;
        return flag === undefined ? one : atFlag(flag)({ ...one, path: [flag] });
      },
    };
  },
});
