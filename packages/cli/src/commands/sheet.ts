import { askSheet } from "@noodlewright/core";
import { printAnswer } from "../shared/ask-noodle.ts";
import type { Command } from "../shared/command.ts";
import { overridesOf, type ValueFlags } from "../shared/flag-values.ts";
import { batchFlags, batchOverrides, specFlags } from "../shared/flags.ts";

const sheetFlags: ValueFlags = {
  machine: { describe: "Machine to roll on", placeholder: "two-stand sheeter", path: ["sheet", "machine"] },
  thickness: { describe: "Thickness of the finished sheet", placeholder: "1.4 mm", path: ["sheet", "thickness"] },
  cutter: { describe: "Cutter number, or strand width", placeholder: "20", path: ["sheet", "cutter"] },
  portion: { describe: "Raw portion", placeholder: "110 g", path: ["sheet", "portion"] },
  "strand-length": { describe: "Length of the strands", placeholder: "250 mm", path: ["sheet", "strandLength"] },
  start: { describe: "Thickness of the dough as it goes to the rolls", placeholder: "12 mm", path: ["sheet", "start"] },
};

/** `noodlewright sheet`: passes, strands and portions on the machine at hand. */
export const sheetCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: { ...sheetFlags, ...batchFlags, ...specFlags },
  examples: [
    ["noodlewright sheet noodle.yaml", "the passes, the strands, and where the dough goes"],
    ["noodlewright sheet noodle.yaml --thickness '1.2 mm' --cutter 22", "a thinner, finer noodle"],
    ["noodlewright sheet noodle.yaml --format csv --table account", "the account, for a spreadsheet"],
  ],
  run: (asked, io) => {
    const overrides = [...overridesOf(sheetFlags, asked), ...batchOverrides(asked)];
    const next = { batch: "the weights", card: "a page to hang by the machine" };
    return printAnswer({ ask: askSheet, overrides, needs: "machines", next }, asked, io);
  },
};
