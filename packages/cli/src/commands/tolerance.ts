import { askTolerance } from "@noodlewright/core";
import { specCommand } from "../shared/ask-noodle.ts";
import { dataOf, flagsAt, overridesOf, placeAtFlag, plainNumber, type ValueFlags } from "../shared/flag-values.ts";
import { batchFlags, batchOverrides } from "../shared/flags.ts";

const trial = flagsAt();

const trials: ValueFlags = {
  seed: trial("seed", "Where the random trials begin; 1 unless stated", "7", plainNumber),
  runs: trial("draws", "Number of random trials; 2000 unless stated", "5000", plainNumber),
};

/** `noodlewright tolerance`: what errors do to a load, and which of them matters. */
export const toleranceCommand = specCommand({
  flags: { ...trials, ...batchFlags },
  examples: {
    "noodlewright tolerance noodle.yaml":
      "protein, dough water, alkali and bowls, with the errors that the spec states",
    "noodlewright tolerance noodle.yaml --seed 7 --runs 5000": "other and more random trials",
    "noodlewright tolerance noodle.yaml --format svg --picture water-causes": "a picture of the shares",
  },
  question: (asked) => {
    const wish = dataOf(overridesOf(trials, asked));
    return {
      ask: (noodle) => askTolerance(noodle, wish),
      overrides: batchOverrides(asked),
      needs: "machines",
      place: placeAtFlag(trials),
    };
  },
});
