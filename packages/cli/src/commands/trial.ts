import { askTrial } from "@noodlewright/core";
import { printAnswer } from "../shared/ask-noodle.ts";
import type { Command } from "../shared/command.ts";
import { placeAtFlag, type ValueFlags } from "../shared/flag-values.ts";
import { specFlags } from "../shared/flags.ts";

const asking: ValueFlags = {
  flour: { describe: "Flour of one dough; 200 g unless stated", placeholder: "200 g", path: ["flour"] },
  step: { describe: "Water between two doughs, % of flour; 1 % unless stated", placeholder: "1 %", path: ["step"] },
};

/** `noodlewright trial`: three small doughs that show how much water a blend takes. */
export const trialCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: { ...asking, ...specFlags },
  examples: [
    ["noodlewright trial noodle.yaml", "three doughs of 200 g of flour, 1 % of water apart"],
    ["noodlewright trial noodle.yaml --flour '500 g' --step '2 %'", "larger ones, further apart"],
  ],
  run: (asked, io) => {
    const [flour, step] = [asked.text("flour"), asked.text("step")];
    const wish = { ...(flour !== undefined && { flour }), ...(step !== undefined && { step }) };
    return printAnswer({ ask: (noodle) => askTrial(noodle, wish), place: placeAtFlag(asking) }, asked, io);
  },
};
