import { askWorkbook } from "@noodlewright/core";
import { printable } from "@noodlewright/core/render";
import type { PlacedProblem } from "../input/placed-problem.ts";
import { ownProblem } from "../input/problem.ts";
import { standingAlone } from "../input/standing-alone.ts";
import { specSheet } from "../input/workbook-spec.ts";
import { exit } from "../io.ts";
import { workbookFile } from "../render/workbook-file.ts";
import { printProblems } from "../shared/answer.ts";
import { loadNoodle, orderOf, specPlace } from "../shared/ask-noodle.ts";
import type { Command } from "../shared/command.ts";
import { batchFlags, batchOverrides, reportFlags, setFlag } from "../shared/flags.ts";
import { forceFlag, writeFiles, writeOver } from "../shared/write-output.ts";

const noFile: PlacedProblem = { ...ownProblem("file.not-named", {}), flag: "--out" };

/** `noodlewright workbook`: a spreadsheet that works the noodle out by itself. */
export const workbookCommand: Command = {
  positionals: specPlace,
  flags: {
    out: { describe: "File to write", placeholder: "noodle.xlsx", letter: "o" },
    ...forceFlag,
    units: reportFlags.units,
    ...batchFlags,
    ...setFlag,
  },
  examples: {
    "noodlewright workbook noodle.yaml -o noodle.xlsx": "weights, water, alkali and cost, as live formulas",
    "noodlewright workbook noodle.yaml -o noodle.xlsx --bowls 40": "the same for another number of bowls",
  },
  run: async (asked, io) => {
    const out = asked.text("out");
    if (out === undefined || out === "-") return printProblems([noFile], asked, io);
    const loading = await loadNoodle(orderOf(asked, batchOverrides(asked)), io);
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const { noodle, data, files, place } = loading.loaded;
    const workbook = askWorkbook(noodle);
    if (!workbook.ok) return printProblems(workbook.problems.map(place), asked, io);
    const { sheets, ...rest } = workbook.value;
    const text = workbookFile({ ...rest, sheets: [...sheets, specSheet(standingAlone(data, files), ...files)] });
    const status = await writeFiles([{ path: out, text }], writeOver(asked), asked, io);
    if (status === exit.done) io.err(`Wrote ${printable(out)}.\n`);
    return status;
  },
};
