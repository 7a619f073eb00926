import { askDay } from "@noodlewright/core";
import { printAnswer } from "../shared/ask-noodle.ts";
import type { Command } from "../shared/command.ts";
import { overridesOf, type ValueFlags } from "../shared/flag-values.ts";
import { batchFlags, batchOverrides, specFlags } from "../shared/flags.ts";

const planFlags: ValueFlags = {
  serve: { describe: "Time of service", placeholder: "12:15", path: ["plan", "serve"] },
  mixers: { describe: "Number of mixers", placeholder: "1", path: ["plan", "mixers"], plainNumber: true },
  sheeters: { describe: "Number of sheeters", placeholder: "1", path: ["plan", "sheeters"], plainNumber: true },
  pots: { describe: "Number of pots", placeholder: "2", path: ["plan", "pots"], plainNumber: true },
};

/** `noodlewright plan`: the day, backwards from service. */
export const planCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: { ...planFlags, ...batchFlags, ...specFlags },
  examples: [
    ["noodlewright plan noodle.yaml --serve 12:15", "when each load is weighed, mixed, rolled, cut and boiled"],
    ["noodlewright plan noodle.yaml --serve 12:15 --pots 3", "the same with another pot"],
  ],
  run: (asked, io) => {
    const overrides = [...overridesOf(planFlags, asked), ...batchOverrides(asked)];
    return printAnswer({ ask: askDay, overrides, needs: "machines" }, asked, io);
  },
};
