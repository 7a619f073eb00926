import { costOf, costReport, formulaOf, planBatch } from "@noodlewright/core";
import { printProblems, printReport } from "../command/answer.ts";
import type { Command } from "../command/command.ts";
import { batchFlags, batchOverrides, reportFlags } from "../command/flags.ts";
import { shortPortions } from "../command/short-portions.ts";
import { loadSpec } from "../input/load-spec.ts";

/** `noodlewright cost`: what a batch costs, what to buy and how far the store goes. */
export const costCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: { ...batchFlags, ...reportFlags },
  examples: [
    ["noodlewright cost noodle.yaml", "the cost by ingredient, load and bowl, and the shopping list"],
    ["noodlewright cost noodle.yaml --bowls 120", "the same for another number of bowls"],
    ["noodlewright cost noodle.yaml --table shopping --format csv", "the shopping list for a spreadsheet"],
  ],
  run: async (asked, io) => {
    const loading = await loadSpec(asked.text("spec") ?? "-", batchOverrides(asked), io, "machines");
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const { data, included, machines, place } = loading.spec;
    const outcome = formulaOf(data, included);
    if (!outcome.ok) return printProblems(outcome.problems.map(place), asked, io);
    const { spec, formula } = outcome.value;
    const batch = planBatch(spec, formula, asked.text("units") === "us");
    if (!batch.ok) return printProblems(batch.problems.map(place), asked, io);
    const cost = costOf(spec, formula, batch.value);
    if (!cost.ok) return printProblems(cost.problems.map(place), asked, io);
    const notes = [...batch.notes, ...cost.notes, ...shortPortions(spec, formula, batch.value, machines)];
    return printReport(costReport(formula, batch.value, cost.value, notes), asked, io);
  },
};
