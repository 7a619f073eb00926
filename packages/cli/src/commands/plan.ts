import { askDay } from "@noodlewright/core";
import { specCommand } from "../shared/ask-noodle.ts";
import { flagsAt, overridesOf, plainNumber, type ValueFlags } from "../shared/flag-values.ts";
import { batchFlags } from "../shared/flags.ts";

const plan = flagsAt("plan");

const planFlags: ValueFlags = {
  serve: plan("serve", "Time of service", "12:15"),
  mixers: plan("mixers", "Number of mixers", "1", plainNumber),
  sheeters: plan("sheeters", "Number of sheeters", "1", plainNumber),
  pots: plan("pots", "Number of pots", "2", plainNumber),
};

/** `noodlewright plan`: the day, backwards from service. */
export const planCommand = specCommand({
  flags: { ...planFlags, ...batchFlags },
  examples: {
    "noodlewright plan noodle.yaml --serve 12:15": "when each load is weighed, mixed, rolled, cut and boiled",
    "noodlewright plan noodle.yaml --serve 12:15 --pots 3": "the same with another pot",
  },
  question: (asked) => ({
    ask: askDay,
    overrides: overridesOf({ ...planFlags, ...batchFlags }, asked),
    needs: "machines",
  }),
});
