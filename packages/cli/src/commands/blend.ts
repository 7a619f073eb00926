import { blendSearchReport, designBlend } from "@noodlewright/core";
import { printProblems } from "../shared/answer.ts";
import { blendFlags, blendOverrides, searchOverrides, shelfFlag, wantedValues } from "../shared/blend-flags.ts";
import type { Command } from "../shared/command.ts";
import { flagsOf } from "../shared/flag-values.ts";
import { reportFlags } from "../shared/flags.ts";
import { loadFormula } from "../shared/load-formula.ts";
import { printNearest } from "../shared/no-answer.ts";

/** `noodlewright blend`: the flours for the noodle asked for. */
export const blendCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: { ...flagsOf(wantedValues), ...shelfFlag, ...blendFlags, ...reportFlags },
  examples: [
    ["noodlewright blend noodle.yaml", "what the spec says under wanted:, of its flours and its shelf:"],
    ["noodlewright blend noodle.yaml --protein '11.5 %' --shelf 'vital wheat gluten=at most 4 %'", "by flags"],
    ["noodlewright blend noodle.yaml --protein 'at least 11 %' --prefer cheapest --step '0.5 %'", "the cheapest"],
  ],
  run: async (asked, io) => {
    const loading = await loadFormula(asked, [...searchOverrides(wantedValues, asked), ...blendOverrides(asked)], io);
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const { spec, formula, included, notes, place } = loading.loaded;
    const outcome = designBlend(spec, formula, included);
    if (!outcome.ok) return printProblems(outcome.problems.map(place), asked, io);
    const report = blendSearchReport(formula, outcome.value, [...notes, ...outcome.notes]);
    return printNearest(report, outcome.value.answer.kind === "found", asked, io);
  },
};
