import { batchReport } from "@noodlewright/core";
import { printProblems, printReport } from "../shared/answer.ts";
import type { Command } from "../shared/command.ts";
import { batchFlags, batchOverrides, reportFlags } from "../shared/flags.ts";
import { loadBatch } from "../shared/load-batch.ts";
import { shortPortions } from "../shared/short-portions.ts";

/** `noodlewright batch`: the weights on the bench. */
export const batchCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: { ...batchFlags, ...reportFlags },
  examples: [
    ["noodlewright batch noodle.yaml", "the batch that the spec describes"],
    ["noodlewright batch noodle.yaml --bowls 320 --raw-weight '130 g'", "320 bowls of 130 g of raw strands"],
    ["noodlewright batch noodle.yaml --have 'bread flour=3.2 kg'", "what can be made of the flour there is"],
    ["noodlewright batch noodle.yaml --load largest --format csv", "one mixer load, for a spreadsheet"],
  ],
  run: async (asked, io) => {
    const loading = await loadBatch(asked, batchOverrides(asked), io);
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const { formula, batch, formulaNotes, batchNotes, units } = loading.loaded;
    const notes = [...formulaNotes, ...batchNotes, ...shortPortions(loading.loaded)];
    return printReport(batchReport(formula, batch, notes, units), asked, io);
  },
};
