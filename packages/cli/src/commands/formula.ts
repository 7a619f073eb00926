import { askFormula } from "@noodlewright/core";
import { printAnswer } from "../shared/ask-noodle.ts";
import type { Command } from "../shared/command.ts";
import { specFlags } from "../shared/flags.ts";

/** `noodlewright formula`: the formula on 100 of flour and what it comes to. */
export const formulaCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: specFlags,
  examples: [
    ["noodlewright formula noodle.yaml", "the formula and the figures of the blend"],
    ["noodlewright formula noodle.yaml --working", "the same, every figure with its working"],
    ["noodlewright formula - --format json < noodle.json", "from standard input, for another program"],
  ],
  run: (asked, io) => printAnswer({ ask: askFormula }, asked, io),
};
