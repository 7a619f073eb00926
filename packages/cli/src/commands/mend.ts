import { askMend, type Noodle } from "@noodlewright/core";
import { atFlag, printAnswer } from "../shared/ask-noodle.ts";
import type { Command } from "../shared/command.ts";
import { batchFlags, batchOverrides, nameAndAmount, specFlags } from "../shared/flags.ts";

const flagOf: Readonly<Record<string, string>> = { weighed: "weighed", noMore: "no-more" };

/** `noodlewright mend`: too much of something is in the bowl. */
export const mendCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: {
    weighed: {
      describe: "What is in the bowl of one load in all; may be given several times",
      placeholder: "tap water=3170 g",
    },
    "no-more": { describe: "What no more can be added of; may be given several times", placeholder: "bread flour" },
    ...batchFlags,
    ...specFlags,
  },
  examples: [
    ["noodlewright mend noodle.yaml --weighed 'tap water=3170 g'", "too much water: what to add of all else"],
    [
      "noodlewright mend noodle.yaml --weighed 'tap water=3170 g' --no-more 'bread flour'",
      "the same, and how far off the formula it stays",
    ],
  ],
  run: (asked, io) => {
    const weighed = asked.list("weighed").map((text) => ({ amount: "", ...nameAndAmount(text) }));
    const ask = (noodle: Noodle) => askMend(noodle, { weighed, noMore: asked.list("no-more") });
    return printAnswer(
      {
        ask,
        overrides: batchOverrides(asked),
        needs: "machines",
        place: (one) => {
          const flag = one.code.startsWith("mend.") ? flagOf[String(one.path[0])] : undefined;
          return flag === undefined ? one : atFlag(flag)({ ...one, path: [flag] });
        },
      },
      asked,
      io,
    );
  },
};
