import type { Mended } from "../batch/mend-load.ts";
import type { Published } from "../figure/graph.ts";
import type { Formula } from "../formula/formula.ts";
import { dec } from "../number/decimal.ts";
import { finestDivision } from "./batch-report.ts";
import { figureBlock, listing, numberColumn, report, row, section, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import type { Report, Telling } from "./schema.ts";
import { cellOr, figureCell, weightCell } from "./show.ts";

/** Tells what to add to a load, what it becomes, and how near to the formula it comes. */
export function mendReport(formula: Formula, mended: Published<Mended>, { notes, units = "metric" }: Telling): Report {
  const unit = mended.lines[0]?.planned.unit ?? "g";
  const { rework, dusting, times, dough, strands, bowls } = mended;
  const weighed = [
    ...mended.lines.map((one) => ({ ...one, list: one.planned.load, listDivision: one.planned.division })),
    ...(rework ? [{ ...rework, list: rework.planned, listDivision: rework.division }] : []),
  ];
  const finest = finestDivision([...weighed, ...weighed.map(({ listDivision }) => ({ division: listDivision }))]);
  const total = (figure: Mended["dough"]) => weightCell(figure, unit, finest);
  const aside = dusting && [
    `${dusting.name} (dusting, not in the dough)`,
    weightCell(dusting.planned.load, unit, dusting.planned.division),
    "",
    "",
    weightCell(dusting.total, unit, dusting.division),
    dusting.scale,
  ];
  const add = listing(
    "add",
    weighed,
    [
      [wordColumn("ingredient", "ingredient"), ({ name }) => name],
      [numberColumn("list", `by the list, ${unit}`), ({ list, listDivision }) => weightCell(list, unit, listDivision)],
      [numberColumn("already", `in the bowl, ${unit}`), (one) => weightCell(one.already, unit, one.listDivision)],
      [numberColumn("add", `add, ${unit}`), (one) => weightCell(one.add, unit, one.division)],
      [numberColumn("total", `in all, ${unit}`), (one) => weightCell(one.total, unit, one.division)],
      [wordColumn("scale", "weigh on"), (one) => (dec(one.add.value).isZero() ? "" : one.scale)],
    ],
    row(["dough", total(mended.planned), "", "", total(dough), ""], "total"),
    ...(aside ? [row(aside, "aside")] : []),
  );
  const near = listing("formula", mended.figures, [
    [wordColumn("what", "figure"), ({ label }) => label],
    [wordColumn("unit", "unit"), ({ asked }) => asked.unit],
    [numberColumn("asked", "formula"), ({ asked }) => figureCell(asked)],
    [numberColumn("now", "nothing added"), ({ now }) => cellOr(now)],
    [numberColumn("mended", "mended"), ({ mended: after }) => figureCell(after)],
  ]);
  return report({
    command: "mend",
    title: `${formula.name}, one load`,
    main: "add",
    sections: [
      section("add", "What to add", add, [
        "What was not named is taken to be in by the list; what is not in yet goes in with what is added.",
      ]),
      section("load", "What the load becomes", figureBlock([times, dough, strands, bowls], units)),
      section("formula", "How near to the formula it is", near),
    ],
    figures: Object.values(mended.graph),
    from: [mended],
    units,
    notes,
    cautions: formulaCautions(formula),
  });
}
