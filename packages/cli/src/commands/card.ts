import { renderCard } from "@noodlewright/core/render";
import type { Override } from "../input/overrides.ts";
import { exit } from "../io.ts";
import { printProblems, unitsOf } from "../shared/answer.ts";
import { cardFlags, dateOf, paperOf } from "../shared/card-flags.ts";
import type { Asked, Command } from "../shared/command.ts";
import { batchFlags, batchOverrides, setFlag } from "../shared/flags.ts";
import { makeCard, tellOfCard } from "../shared/make-card.ts";
import { forceFlag, writeOutput } from "../shared/write-output.ts";

function serveOverride(asked: Asked): readonly Override[] {
  const value = asked.text("serve");
  return value === undefined ? [] : [{ flag: "--serve", path: ["plan", "serve"], value, example: "12:15" }];
}

/** `noodlewright card`: one page to hang by the machine. */
export const cardCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: {
    out: { describe: "File to write; - or nothing prints it", placeholder: "card.html", letter: "o" },
    serve: { describe: "Time of service, for the times of the loads", placeholder: "12:15" },
    loads: { describe: "Loads to print boxes for; all unless given", placeholder: "1,3-4" },
    ...forceFlag,
    ...cardFlags,
    ...batchFlags,
    ...setFlag,
  },
  examples: [
    ["noodlewright card noodle.yaml -o card.html", "the card of a spec, for A4"],
    ["noodlewright card noodle.yaml -o card.html --paper letter --loads 1-2", "the first two loads, for Letter"],
  ],
  run: async (asked, io) => {
    const date = dateOf(asked, io);
    if (!date.ok) return printProblems([date.problem], asked, io);
    const making = await makeCard(
      {
        path: asked.text("spec") ?? "-",
        overrides: [...serveOverride(asked), ...batchOverrides(asked)],
        sets: asked.list("set"),
        date: date.date,
        loads: asked.text("loads"),
        units: unitsOf(asked),
      },
      io,
    );
    if (!making.ok) return printProblems(making.problems, asked, io);
    const paper = paperOf(asked);
    const status = await writeOutput(asked.text("out"), renderCard(making.made.card, paper), asked, io);
    tellOfCard(making.made, paper, io);
    return status === exit.done && making.made.missing.length > 0 ? exit.noAnswer : status;
  },
};
