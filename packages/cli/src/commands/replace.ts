import {
  productReport,
  readHeld,
  replaceFlour,
  replaceIngredient,
  substituteReport,
  usualHold,
} from "@noodlewright/core";
import type { PlacedProblem } from "../input/document.ts";
import type { ExitStatus, Io } from "../io.ts";
import { printProblems, printReport } from "../shared/answer.ts";
import { searchFlags, searchOverrides, searchValues } from "../shared/blend-flags.ts";
import type { Asked, Command } from "../shared/command.ts";
import { reportFlags } from "../shared/flags.ts";
import { type LoadedFormula, loadFormula } from "../shared/load-formula.ts";
import { printNearest } from "../shared/no-answer.ts";

/** `noodlewright replace`: a flour, or an egg product, that is not to be had. */
export const replaceCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: {
    missing: { describe: "The flour or the ingredient that is missing", kind: "text", placeholder: "rye flour" },
    with: { describe: "What takes the place of an ingredient", kind: "text", placeholder: "dried whole egg" },
    hold: {
      describe:
        "What the new blend keeps, of protein, ash, gluten protein; also `ash or less`, `gluten protein or more`",
      kind: "text",
      placeholder: "protein, ash",
      fallback: usualHold.join(", "),
    },
    ...searchFlags,
    ...reportFlags,
  },
  examples: [
    ["noodlewright replace noodle.yaml --missing 'rye flour' --shelf 'spelt flour'", "by what is on the shelf"],
    ["noodlewright replace noodle.yaml --missing 'bread flour' --hold 'protein, ash'", "holding ash as well"],
    ["noodlewright replace noodle.yaml --missing 'whole egg' --with 'dried whole egg'", "egg, and the water for it"],
  ],
  run: async (asked, io) => {
    const loading = await loadFormula(asked, searchOverrides(searchValues, asked), io);
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const missing = asked.text("missing");
    if (missing === undefined) return printProblems([nothingMissing], asked, io);
    const by = asked.text("with");
    return by === undefined
      ? flour(loading.loaded, missing, asked, io)
      : ingredient(loading.loaded, missing, by, asked, io);
  },
};

const nothingMissing: PlacedProblem = {
  code: "replace.missing",
  kind: "input",
  path: [],
  flag: "--missing",
  found: "nothing that is missing",
  expected: "a flour or an ingredient of the spec",
  advice: "write it like --missing 'rye flour'",
};

async function flour(loaded: LoadedFormula, missing: string, asked: Asked, io: Io): Promise<ExitStatus> {
  const { spec, formula, included, notes, place } = loaded;
  const hold = readHeld(asked.text("hold") ?? usualHold.join(", "));
  if (!hold.ok) return printProblems(hold.problems.map(atFlag(place)), asked, io);
  const outcome = replaceFlour(spec, formula, { missing, hold: hold.value }, included);
  if (!outcome.ok) return printProblems(outcome.problems.map(atFlag(place)), asked, io);
  const title = `${formula.name}, without ${missing}`;
  const report = substituteReport("replace", title, formula, outcome.value, [...notes, ...outcome.notes]);
  return printNearest(report, outcome.value.answer.kind === "found", asked, io);
}

async function ingredient(
  loaded: LoadedFormula,
  missing: string,
  by: string,
  asked: Asked,
  io: Io,
): Promise<ExitStatus> {
  const { spec, formula, included, notes, place } = loaded;
  const outcome = replaceIngredient(formula, missing, by, { ...included, ...spec.materials });
  if (!outcome.ok) return printProblems(outcome.problems.map(atFlag(place)), asked, io);
  return printReport(productReport(formula, outcome.value, [...notes, ...outcome.notes]), asked, io);
}

const flags = ["missing", "with", "hold"];

/** A problem of what a flag alone says, or of the spec. */
function atFlag(place: LoadedFormula["place"]): (problem: Parameters<LoadedFormula["place"]>[0]) => PlacedProblem {
  return (problem) => {
    const flag = flags.find((name) => problem.path[0] === name);
    return flag === undefined ? place(problem) : { ...problem, flag: `--${flag}` };
  };
}
