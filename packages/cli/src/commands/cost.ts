import { costOf, costReport } from "@noodlewright/core";
import { printProblems, printReport } from "../shared/answer.ts";
import type { Command } from "../shared/command.ts";
import { batchFlags, batchOverrides, reportFlags } from "../shared/flags.ts";
import { loadBatch } from "../shared/load-batch.ts";
import { shortPortions } from "../shared/short-portions.ts";

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
    const loading = await loadBatch(asked, batchOverrides(asked), io);
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const { spec, formula, batch, batchNotes, place } = loading.loaded;
    const cost = costOf(spec, formula, batch);
    if (!cost.ok) return printProblems(cost.problems.map(place), asked, io);
    const notes = [...batchNotes, ...cost.notes, ...shortPortions(loading.loaded)];
    return printReport(costReport(formula, batch, cost.value, notes), asked, io);
  },
};
