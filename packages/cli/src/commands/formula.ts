import { askFormula } from "@noodlewright/core";
import { specCommand } from "../shared/ask-noodle.ts";

/** `noodlewright formula`: the formula on 100 of flour and what it comes to. */
export const formulaCommand = specCommand({
  examples: {
    "noodlewright formula noodle.yaml": "the formula and the figures of the blend",
    "noodlewright formula noodle.yaml --working": "the same, every figure with its working",
    "noodlewright formula - --format json < noodle.json": "from standard input, for another program",
  },
  question: () => ({ ask: askFormula }),
});
