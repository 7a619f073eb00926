import { formulaOf, isJurisdiction, isRuleBook, jurisdictions, nutritionOf, nutritionReport } from "@noodlewright/core";
import { loadSpec } from "../input/load-spec.ts";
import { printProblems, printReport } from "../shared/answer.ts";
import type { Command } from "../shared/command.ts";
import { batchFlags, batchOverrides, reportFlags } from "../shared/flags.ts";

const { "raw-weight": rawWeight, "cooked-weight": cookedWeight, "cook-gain": cookGain } = batchFlags;

/** `noodlewright nutrition`: what a bowl contains, and its allergens. */
export const nutritionCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: {
    rules: {
      describe: "Whose rules count and round: United States, European Union or Japan",
      kind: "text",
      choices: ["US", "EU", "JP"],
      fallback: "EU",
    },
    jurisdiction: {
      describe: "Whose list of allergens to go by, AU with New Zealand; that of the rules unless stated",
      kind: "text",
      choices: jurisdictions,
    },
    "raw-weight": rawWeight,
    "cooked-weight": cookedWeight,
    "cook-gain": cookGain,
    ...reportFlags,
  },
  examples: [
    ["noodlewright nutrition noodle.yaml", "energy, nutrients and salt by the rules of the European Union"],
    [
      "noodlewright nutrition noodle.yaml --rules US --cooked-weight '230 g'",
      "a serving by the rules of the United States",
    ],
    ["noodlewright nutrition noodle.yaml --jurisdiction CA", "the allergens by the list of Canada"],
  ],
  run: async (asked, io) => {
    const loading = await loadSpec(asked.text("spec") ?? "-", batchOverrides(asked), io);
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const { data, included, place } = loading.spec;
    const outcome = formulaOf(data, included);
    if (!outcome.ok) return printProblems(outcome.problems.map(place), asked, io);
    const { spec, formula } = outcome.value;
    const rules = asked.text("rules");
    const jurisdiction = asked.text("jurisdiction");
    const nutrition = nutritionOf(spec, formula, {
      rules: isRuleBook(rules) ? rules : "EU",
      ...(isJurisdiction(jurisdiction) && { jurisdiction }),
    });
    if (!nutrition.ok) return printProblems(nutrition.problems.map(place), asked, io);
    const notes = [...outcome.notes, ...nutrition.notes];
    return printReport(nutritionReport(formula, nutrition.value, notes), asked, io);
  },
};
