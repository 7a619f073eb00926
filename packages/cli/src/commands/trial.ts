import { formulaTrial, trialReport, weighTrial } from "@noodlewright/core";
import { printProblems, printReport } from "../shared/answer.ts";
import type { Command } from "../shared/command.ts";
import { flagsOf, placeAtFlag, type ValueFlags } from "../shared/flag-values.ts";
import { reportFlags } from "../shared/flags.ts";
import { loadFormula } from "../shared/load-formula.ts";

const asking: ValueFlags = {
  flour: { describe: "Flour of one dough; 200 g unless stated", kind: "text", placeholder: "200 g", path: ["flour"] },
  step: {
    describe: "Water between two doughs, % of flour; 1 % unless stated",
    kind: "text",
    placeholder: "1 %",
    path: ["step"],
  },
};

/** `noodlewright trial`: three small doughs that tell the water of a blend. */
export const trialCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: { ...flagsOf(asking), ...reportFlags },
  examples: [
    ["noodlewright trial noodle.yaml", "three doughs of 200 g of flour, 1 % of water apart"],
    ["noodlewright trial noodle.yaml --flour '500 g' --step '2 %'", "larger ones, further apart"],
  ],
  run: async (asked, io) => {
    const loading = await loadFormula(asked, [], io);
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const { spec, formula, notes, place } = loading.loaded;
    const [flour, step] = [asked.text("flour"), asked.text("step")];
    const outcome = formulaTrial(formula, {
      ...(flour !== undefined && { flour }),
      ...(step !== undefined && { step }),
    });
    if (!outcome.ok) return printProblems(outcome.problems.map(placeAtFlag(asking)), asked, io);
    const units = asked.text("units") === "us" ? "us" : "metric";
    const weights = weighTrial(spec, formula, outcome.value, units === "us");
    if (!weights.ok) return printProblems(weights.problems.map(place), asked, io);
    return printReport(
      trialReport(formula, outcome.value, [...notes, ...weights.notes], units, weights.value),
      asked,
      io,
    );
  },
};
