import { formulaOf, formulaReport, formulaStyle } from "@noodlewright/core";
import { loadSpec } from "../input/load-spec.ts";
import { printProblems, printReport } from "../shared/answer.ts";
import type { Command } from "../shared/command.ts";
import { reportFlags } from "../shared/flags.ts";

/** `noodlewright formula`: the formula on 100 of flour and what it comes to. */
export const formulaCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: reportFlags,
  examples: [
    ["noodlewright formula noodle.yaml", "the formula and the figures of the blend"],
    ["noodlewright formula noodle.yaml --working", "the same, every figure with its working"],
    ["noodlewright formula - --format json < noodle.json", "from standard input, for another program"],
  ],
  run: async (asked, io) => {
    const loading = await loadSpec(asked.text("spec") ?? "-", [], io);
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const { data, included, place } = loading.spec;
    const outcome = formulaOf(data, included);
    if (!outcome.ok) return printProblems(outcome.problems.map(place), asked, io);
    const { spec, formula } = outcome.value;
    const style = formulaStyle(spec, formula);
    if (!style.ok) return printProblems(style.problems.map(place), asked, io);
    return printReport(formulaReport(formula, [...outcome.notes, ...style.notes]), asked, io);
  },
};
