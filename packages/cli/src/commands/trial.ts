import { askTrial } from "@noodlewright/core";
import { specCommand } from "../shared/ask-noodle.ts";
import { placeAtFlag, type ValueFlags } from "../shared/flag-values.ts";

const asking: ValueFlags = {
  flour: { describe: "Flour of one dough; 200 g unless stated", placeholder: "200 g", path: ["flour"] },
  step: { describe: "Water between two doughs, % of flour; 1 % unless stated", placeholder: "1 %", path: ["step"] },
};

/** `noodlewright trial`: three small doughs that show how much water a blend takes. */
export const trialCommand = specCommand({
  flags: { ...asking },
  examples: {
    "noodlewright trial noodle.yaml": "three doughs of 200 g of flour, 1 % of water apart",
    "noodlewright trial noodle.yaml --flour '500 g' --step '2 %'": "larger ones, further apart",
  },
  question: (asked) => {
    const wish = { flour: asked.text("flour"), step: asked.text("step") };
    return { ask: (noodle) => askTrial(noodle, wish), place: placeAtFlag(asking) };
  },
});
