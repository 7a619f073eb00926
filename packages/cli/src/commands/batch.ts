import { batchReport, formulaOf, planBatch } from "@noodlewright/core";
import { printProblems, printReport } from "../command/answer.ts";
import type { Command } from "../command/command.ts";
import { batchFlags, batchOverrides, reportFlags } from "../command/flags.ts";
import { shortPortions } from "../command/short-portions.ts";
import { loadSpec } from "../input/load-spec.ts";

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
    const loading = await loadSpec(asked.text("spec") ?? "-", batchOverrides(asked), io, "machines");
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const { data, included, machines, place } = loading.spec;
    const outcome = formulaOf(data, included);
    if (!outcome.ok) return printProblems(outcome.problems.map(place), asked, io);
    const { spec, formula } = outcome.value;
    const units = asked.text("units") === "us" ? "us" : "metric";
    const batch = planBatch(spec, formula, units === "us");
    if (!batch.ok) return printProblems(batch.problems.map(place), asked, io);
    const short = shortPortions(spec, formula, batch.value, machines);
    const notes = [...outcome.notes, ...batch.notes, ...short];
    return printReport(batchReport(formula, batch.value, notes, units), asked, io);
  },
};
