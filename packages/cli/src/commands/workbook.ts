import { askWorkbook } from "@noodlewright/core";
import { printable } from "@noodlewright/core/render";
import { parseFile } from "../input/document.ts";
import type { PlacedProblem } from "../input/placed-problem.ts";
import { ownProblem } from "../input/problem.ts";
import { isSection } from "../input/put.ts";
import { specSheet } from "../input/workbook-spec.ts";
import { exit } from "../io.ts";
import { workbookFile } from "../render/workbook-file.ts";
import { printProblems, unitsOf } from "../shared/answer.ts";
import { type LoadedNoodle, loadNoodle } from "../shared/ask-noodle.ts";
import type { Command } from "../shared/command.ts";
import { batchFlags, batchOverrides, reportFlags, setFlag } from "../shared/flags.ts";
import { forceFlag, writeFiles, writeOver } from "../shared/write-output.ts";

const noFile: PlacedProblem = { ...ownProblem("file.not-named", {}), flag: "--out" };

/** `noodlewright workbook`: a spreadsheet that works the noodle out by itself. */
export const workbookCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input" },
  flags: {
    out: { describe: "File to write", placeholder: "noodle.xlsx", letter: "o" },
    ...forceFlag,
    units: reportFlags.units,
    ...batchFlags,
    ...setFlag,
  },
  examples: [
    ["noodlewright workbook noodle.yaml -o noodle.xlsx", "weights, water, alkali and cost, as live formulas"],
    ["noodlewright workbook noodle.yaml -o noodle.xlsx --bowls 40", "the same for another number of bowls"],
  ],
  run: async (asked, io) => {
    const out = asked.text("out");
    if (out === undefined || out === "-") return printProblems([noFile], asked, io);
    const order = {
      path: asked.text("spec") ?? "-",
      overrides: batchOverrides(asked),
      sets: asked.list("set"),
      units: unitsOf(asked),
    };
    const loading = await loadNoodle(order, io);
    if (!loading.ok) return printProblems(loading.problems, asked, io);
    const workbook = askWorkbook(loading.loaded.noodle);
    if (!workbook.ok) return printProblems(workbook.problems.map(loading.loaded.place), asked, io);
    const { sheets, ...rest } = workbook.value;
    const text = workbookFile({
      ...rest,
      sheets: [...sheets, specSheet(withKitchen(loading.loaded), ...loading.loaded.files)],
    });
    const status = await writeFiles([{ path: out, text }], writeOver(asked), asked, io);
    if (status === exit.done) io.err(`Wrote ${printable(out)}.\n`);
    return status;
  },
};

/** The data of a spec with what its kitchen files hold in it, so that it needs none beside it. */
function withKitchen({ data, files: [, ...included] }: LoadedNoodle): unknown {
  if (!isSection(data) || included.length === 0) return data;
  const { include: _included, ...spec } = data;
  const kitchens = included.flatMap((file) => {
    const parsing = parseFile(file);
    return parsing.ok ? [parsing.parsed.data] : [];
  });
  const own = (["materials", "machines"] as const).map((key) => {
    const all = [...kitchens, spec].map((one) => (isSection(one) && isSection(one[key]) ? one[key] : {}));
    return [key, Object.assign({}, ...all) as unknown] as const;
  });
  return { ...spec, ...Object.fromEntries(own.filter(([, one]) => isSection(one) && Object.keys(one).length > 0)) };
}
