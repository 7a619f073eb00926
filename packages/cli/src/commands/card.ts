import { renderCard } from "@noodlewright/core/render";
import { exit } from "../io.ts";
import { printProblems } from "../shared/answer.ts";
import { orderOf, specPlace } from "../shared/ask-noodle.ts";
import { cardFlags, dateOf, paperOf } from "../shared/card-flags.ts";
import type { Command } from "../shared/command.ts";
import { flagsAt, overridesOf } from "../shared/flag-values.ts";
import { batchFlags, setFlag } from "../shared/flags.ts";
import { makeCard, tellOfCard } from "../shared/make-card.ts";
import { forceFlag, writeOutput } from "../shared/write-output.ts";

const planFlag = { serve: flagsAt("plan")("serve", "Time of service, for the times of the loads", "12:15") };

/** `noodlewright card`: one page to hang by the machine. */
export const cardCommand: Command = {
  positionals: specPlace,
  flags: {
    out: { describe: "File to write; - or nothing prints it", placeholder: "card.html", letter: "o" },
    ...planFlag,
    loads: { describe: "Loads to print boxes for; all unless given", placeholder: "1,3-4" },
    ...forceFlag,
    ...cardFlags,
    ...batchFlags,
    ...setFlag,
  },
  examples: {
    "noodlewright card noodle.yaml -o card.html": "the card of a spec, for A4",
    "noodlewright card noodle.yaml -o card.html --paper letter --loads 1-2": "the first two loads, for Letter",
  },
  run: async (asked, io) => {
    const date = dateOf(asked, io);
    if (!date.ok) return printProblems(date.problems, asked, io);
    const order = orderOf(asked, overridesOf({ ...planFlag, ...batchFlags }, asked));
    const making = await makeCard({ ...order, date: date.date, loads: asked.text("loads") }, io);
    if (!making.ok) return printProblems(making.problems, asked, io);
    const paper = paperOf(asked);
    const status = await writeOutput(asked.text("out"), renderCard(making.made.card, paper), asked, io);
    tellOfCard(making.made, paper, io);
    return status === exit.done && making.made.missing.length > 0 ? exit.noAnswer : status;
  },
};
