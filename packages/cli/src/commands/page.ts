import { createHash } from "node:crypto";
import { askCard, readNoodleData } from "@noodlewright/core";
import { loadSpec } from "../input/load-spec.ts";
import { standingAlone } from "../input/standing-alone.ts";
import { firstAnswers } from "../page/desk.ts";
import type { PageData } from "../page/page-data.ts";
import { renderBenchPage } from "../render/bench-page.ts";
import { printProblems } from "../shared/answer.ts";
import { orderOf, specPlace } from "../shared/ask-noodle.ts";
import { cardFlags } from "../shared/card-flags.ts";
import type { Command } from "../shared/command.ts";
import { batchFlags, batchOverrides, setFlag } from "../shared/flags.ts";
import { cardFile, changesSaid } from "../shared/make-card.ts";
import { forceFlag, writeOutput } from "../shared/write-output.ts";

/** `noodlewright page`: a file that opens on a phone and works the noodle out at the bench. */
export const pageCommand: Command = {
  positionals: specPlace,
  flags: {
    out: { describe: "File to write; - or nothing prints it", placeholder: "noodle.html", letter: "o" },
    ...forceFlag,
    units: cardFlags.units,
    ...batchFlags,
    ...setFlag,
  },
  examples: {
    "noodlewright page noodle.yaml -o noodle.html": "the page of a spec, to send to a phone",
    "noodlewright page noodle.yaml -o noodle.html --bowls 40": "the same for another number of bowls",
  },
  run: async (asked, io) => {
    const order = orderOf(asked, batchOverrides(asked));
    const loading = await loadSpec(order.path, order, io, "machines");
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const { data, files, overrides, place } = loading.spec;
    const { units } = order;
    const spec = standingAlone(data, files);
    const noodle = readNoodleData(spec, { units });
    if (!noodle.ok) return printProblems(noodle.problems.map(place), asked, io);
    const card = askCard(noodle.value, { date: io.today() });
    if (!card.ok) return printProblems(card.problems.map(place), asked, io);
    const holds = { spec, files: files.map(cardFile), said: changesSaid(overrides) };
    // With the empty list that pages before this one had in them, so that what a browser kept for them is found.
    const key = createHash("sha256")
      .update(JSON.stringify({ ...holds, found: [], units }))
      .digest("hex")
      .slice(0, 16);
    const page: PageData = { ...holds, units, key };
    const text = renderBenchPage(noodle.value.formula.name, page, firstAnswers(page));
    return writeOutput(asked.text("out"), text, asked, io);
  },
};
