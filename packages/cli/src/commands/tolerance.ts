import { askTolerance, type Noodle, type Problem } from "@noodlewright/core";
import { problem } from "@noodlewright/core/figure";
import type { PlacedProblem } from "../input/placed-problem.ts";
import { printAnswer } from "../shared/ask-noodle.ts";
import type { Asked, Command } from "../shared/command.ts";
import { placeAtFlag, type ValueFlags } from "../shared/flag-values.ts";
import { batchFlags, batchOverrides, specFlags } from "../shared/flags.ts";

const trials: ValueFlags = {
  seed: { describe: "Where the random trials begin; 1 unless stated", placeholder: "7", path: ["seed"] },
  runs: { describe: "Number of random trials; 2000 unless stated", placeholder: "5000", path: ["draws"] },
};

/** `noodlewright tolerance`: what errors do to a load, and which of them matters. */
export const toleranceCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: { ...trials, ...batchFlags, ...specFlags },
  examples: [
    [
      "noodlewright tolerance noodle.yaml",
      "protein, dough water, alkali and bowls, with the errors that the spec states",
    ],
    ["noodlewright tolerance noodle.yaml --seed 7 --runs 5000", "other and more random trials"],
    ["noodlewright tolerance noodle.yaml --format svg --picture water-causes", "a picture of the shares"],
  ],
  run: (asked, io) => {
    const [seed, draws] = [wholeNumber(asked.text("seed")), wholeNumber(asked.text("runs"))];
    const wish = { ...(seed !== undefined && { seed }), ...(draws !== undefined && { draws }) };
    const place = (one: Problem): PlacedProblem => placeAtFlag(trials)(said(one, asked));
    const ask = (noodle: Noodle) => askTolerance(noodle, wish);
    return printAnswer({ ask, overrides: batchOverrides(asked), needs: "machines", place }, asked, io);
  },
};

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
