import { planDay, planReport, planSheet } from "@noodlewright/core";
import { printProblems, printReport } from "../shared/answer.ts";
import type { Command } from "../shared/command.ts";
import { flagsOf, overridesOf, type ValueFlags } from "../shared/flag-values.ts";
import { batchFlags, batchOverrides, reportFlags } from "../shared/flags.ts";
import { loadBatch } from "../shared/load-batch.ts";

const planFlags: ValueFlags = {
  serve: { describe: "Time of service", kind: "text", placeholder: "12:15", path: ["plan", "serve"] },
  mixers: { describe: "Number of mixers", kind: "text", placeholder: "1", path: ["plan", "mixers"], plainNumber: true },
  sheeters: {
    describe: "Number of sheeters",
    kind: "text",
    placeholder: "1",
    path: ["plan", "sheeters"],
    plainNumber: true,
  },
  pots: { describe: "Number of pots", kind: "text", placeholder: "2", path: ["plan", "pots"], plainNumber: true },
};

/** `noodlewright plan`: the day, backwards from service. */
export const planCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: { ...flagsOf(planFlags), ...batchFlags, ...reportFlags },
  examples: [
    ["noodlewright plan noodle.yaml --serve 12:15", "when each load is weighed, mixed, rolled, cut and boiled"],
    ["noodlewright plan noodle.yaml --serve 12:15 --pots 3", "the same with another pot"],
  ],
  run: async (asked, io) => {
    const loading = await loadBatch(asked, [...overridesOf(planFlags, asked), ...batchOverrides(asked)], io);
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const { spec, formula, batch, machines, notes, units, place } = loading.loaded;
    const sheet = spec.sheet && planSheet(spec, formula, batch, machines);
    if (sheet?.ok === false) return printProblems(sheet.problems.map(place), asked, io);
    const day = planDay(spec, formula, batch, sheet?.value);
    if (!day.ok) return printProblems(day.problems.map(place), asked, io);
    const short = sheet?.notes.filter(({ code }) => code === "sheet.portions-short") ?? [];
    return printReport(planReport(formula, batch, day.value, [...notes, ...short, ...day.notes], units), asked, io);
  },
};
