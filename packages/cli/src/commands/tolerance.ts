import { askTolerance, type Problem } from "@noodlewright/core";
import { problem } from "@noodlewright/core/figure";
import { specCommand } from "../shared/ask-noodle.ts";
import type { Asked } from "../shared/command.ts";
import { placeAtFlag, type ValueFlags } from "../shared/flag-values.ts";
import { batchFlags, batchOverrides } from "../shared/flags.ts";

const trials: ValueFlags = {
  seed: { describe: "Where the random trials begin; 1 unless stated", placeholder: "7", path: ["seed"] },
  runs: { describe: "Number of random trials; 2000 unless stated", placeholder: "5000", path: ["draws"] },
};

/** `noodlewright tolerance`: what errors do to a load, and which of them matters. */
export const toleranceCommand = specCommand({
  flags: { ...trials, ...batchFlags },
  examples: [
    [
      "noodlewright tolerance noodle.yaml",
      "protein, dough water, alkali and bowls, with the errors that the spec states",
    ],
    ["noodlewright tolerance noodle.yaml --seed 7 --runs 5000", "other and more random trials"],
    ["noodlewright tolerance noodle.yaml --format svg --picture water-causes", "a picture of the shares"],
  ],
  question: (asked) => {
    const [seed, draws] = [wholeNumber(asked.text("seed")), wholeNumber(asked.text("runs"))];
    const wish = { ...(seed !== undefined && { seed }), ...(draws !== undefined && { draws }) };
    return {
      ask: (noodle) => askTolerance(noodle, wish),
      overrides: batchOverrides(asked),
      needs: "machines",
      place: (one) => placeAtFlag(trials)(said(one, asked)),
    };
  },
});

function quoted(text = ""): string {
  return `"${text}"`;
}

/** A problem of a flag with what it says there. */
function said(one: Problem, asked: Asked): Problem {
  const { code, path } = one;
  if (code === "tolerance.seed") return problem(code, path, { seed: quoted(asked.text("seed")) });
  if (code === "tolerance.draws") return problem(code, path, { draws: quoted(asked.text("runs")) });
  return one;
}

/** What is no whole number becomes none, which the question refuses. */
function wholeNumber(text: string | undefined): number | undefined {
  return text === undefined ? undefined : /^\d+$/u.test(text.trim()) ? Number(text) : Number.NaN;
}
