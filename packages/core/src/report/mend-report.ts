import type { Mended } from "../batch/mend.ts";
import type { Published } from "../figure/graph.ts";
import type { UnitSystem } from "../figure/in-system.ts";
import type { Note } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { dec, decimalText } from "../number/decimal.ts";
import { figureBlock, numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import type { Report } from "./schema.ts";
import { figureCell, weightCell, words } from "./show.ts";

/** Tells what to add to a load, what it becomes, and how near to the formula it comes. */
export function mendReport(
  formula: Formula,
  mended: Published<Mended>,
  notes: readonly Note[],
  units: UnitSystem = "metric",
): Report {
  const unit = mended.lines[0]?.planned.unit ?? "g";
  const total = (figure: Mended["dough"]) => weightCell(figure, unit, decimalText(dec(10).pow(-figure.places)));
  const { rework } = mended;
  const weighed = [
    ...mended.lines.map((one) => ({ ...one, list: one.planned.load, listDivision: one.planned.division })),
    ...(rework ? [{ ...rework, list: rework.planned, listDivision: rework.division }] : []),
  ];
  return report({
    command: "mend",
    title: `${formula.name}, one load`,
    main: "add",
    sections: [
      section(
        "add",
        "What to add",
        table(
          "add",
          [
            wordColumn("ingredient", "ingredient"),
            numberColumn("list", `by the list, ${unit}`),
            numberColumn("already", `in the bowl, ${unit}`),
            numberColumn("add", `add, ${unit}`),
            numberColumn("total", `in all, ${unit}`),
            wordColumn("scale", "weigh on"),
          ],
          [
            ...weighed.map(({ name, list, listDivision, already, add, total: all, scale, division }) =>
              row([
                words(name),
                weightCell(list, unit, listDivision),
                weightCell(already, unit, listDivision),
                weightCell(add, unit, division),
                weightCell(all, unit, division),
                words(dec(add.value).isZero() ? "" : scale),
              ]),
            ),
            row([words("dough"), total(mended.planned), words(""), words(""), total(mended.dough), words("")], "total"),
          ],
        ),
        ["What was not named is taken to be in by the list; what is not in yet goes in with what is added."],
      ),
      section(
        "load",
        "What the load becomes",
        figureBlock([mended.times, mended.dough, mended.strands, ...(mended.bowls ? [mended.bowls] : [])], units),
      ),
      section(
        "formula",
        "How near to the formula it is",
        table(
          "formula",
          [
            wordColumn("what", "figure"),
            wordColumn("unit", "unit"),
            numberColumn("asked", "formula"),
            numberColumn("now", "nothing added"),
            numberColumn("mended", "mended"),
          ],
          mended.figures.map(({ label, asked, now, mended: after }) =>
            row([
              words(label),
              words(asked.unit),
              figureCell(asked),
              now ? figureCell(now) : words("–"),
              figureCell(after),
            ]),
          ),
        ),
      ),
    ],
    figures: Object.values(mended.graph),
    from: [mended],
    units,
    notes,
    cautions: formulaCautions(formula),
  });
}
