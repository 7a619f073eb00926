import { askSheet } from "@noodlewright/core";
import { specCommand } from "../shared/ask-noodle.ts";
import { flagsAt, overridesOf, type ValueFlags } from "../shared/flag-values.ts";
import { batchFlags } from "../shared/flags.ts";

const sheet = flagsAt("sheet");

const sheetFlags: ValueFlags = {
  machine: sheet("machine", "Machine to roll on", "two-stand sheeter"),
  thickness: sheet("thickness", "Thickness of the finished sheet", "1.4 mm"),
  cutter: sheet("cutter", "Cutter number, or strand width", "20"),
  portion: sheet("portion", "Raw portion", "110 g"),
  "strand-length": sheet("strandLength", "Length of the strands", "250 mm"),
  start: sheet("start", "Thickness of the dough as it goes to the rolls", "12 mm"),
};

/** `noodlewright sheet`: passes, strands and portions on the machine at hand. */
export const sheetCommand = specCommand({
  flags: { ...sheetFlags, ...batchFlags },
  examples: {
    "noodlewright sheet noodle.yaml": "the passes, the strands, and where the dough goes",
    "noodlewright sheet noodle.yaml --thickness '1.2 mm' --cutter 22": "a thinner, finer noodle",
    "noodlewright sheet noodle.yaml --format csv --table account": "the account, for a spreadsheet",
  },
  question: (asked) => ({
    ask: askSheet,
    overrides: overridesOf({ ...sheetFlags, ...batchFlags }, asked),
    needs: "machines",
    next: { batch: "the weights", card: "a page to hang by the machine" },
  }),
});
