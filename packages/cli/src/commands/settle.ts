import { allMet, askSettle } from "@noodlewright/core";
import { exit } from "../io.ts";
import { printProblems, printReport } from "../shared/answer.ts";
import { loadNoodle, unitsOf } from "../shared/ask-noodle.ts";
import type { Command } from "../shared/command.ts";
import { batchFlags, batchOverrides, specFlags } from "../shared/flags.ts";
import { writeFlags, writeSpec } from "../shared/write-spec.ts";

/** `noodlewright settle`: the amounts that a spec leaves to be found, and what is wanted beside what is reached. */
export const settleCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: { ...writeFlags, ...batchFlags, ...specFlags },
  examples: [
    ["noodlewright settle noodle.yaml", "every `find` of the spec, and how far what is wanted is met"],
    ["noodlewright settle noodle.yaml -o found.yaml", "the same, and a spec with the amounts in it"],
    ["noodlewright settle noodle.yaml --write", "writes the amounts into the spec; nothing else in it changes"],
  ],
  run: async (asked, io) => {
    const path = asked.text("spec") ?? "-";
    const overrides = batchOverrides(asked);
    const order = { path, overrides, sets: asked.list("set"), units: unitsOf(asked), needs: "machines" as const };
    const loading = await loadNoodle(order, io);
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const { noodle, files, place } = loading.loaded;
    const answer = askSettle(noodle);
    if (!answer.ok) return printProblems(answer.problems.map(place), asked, io);
    const printed = await printReport(answer.report(), asked, io);
    if (printed !== exit.done) return printed;
    const written = await writeSpec(files[0], answer.value.found, asked, io);
    return written === exit.done && !allMet(answer.value) ? exit.noAnswer : written;
  },
};
