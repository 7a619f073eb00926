import type { WeighedLine } from "../../batch/weighing.ts";
import type { Figure } from "../../figure/figure.ts";
import { dec } from "../../number/decimal.ts";
import type { ResultGroup, ResultRow, ShownFigure } from "../../render/workbook/workbook.ts";
import { asScaleShows, inSystem } from "../../report/show.ts";
import { type Made, quoted } from "./made.ts";
import { scaleNameRule } from "./scales.ts";

function shown(figure: Figure, { noodle: { units } }: Made): ShownFigure {
  const { id, unit, places } = inSystem(figure, units);
  return { id, unit, places };
}

/** What comes of the inputs, as the commands show it. */
export function resultGroups(made: Made): readonly ResultGroup[] {
  const { batch, noodle, cost, scales } = made;
  const { formula } = noodle;
  const { blend, water, alkali } = formula;
  const plain = (heading: string, figures: readonly (Figure | undefined)[]): ResultGroup => ({
    heading,
    columns: ["", ""],
    rows: figures
      .filter((figure) => figure !== undefined)
      .map((figure): ResultRow => {
        const view = shown(figure, made);
        return { label: figure.label, figures: [view], words: { text: view.unit, formula: () => quoted(view.unit) } };
      }),
  });
  const scaleView = (figure: Figure, weighed: Pick<WeighedLine, "unit" | "division">): ShownFigure => {
    const { id, unit, places } = asScaleShows(figure, weighed);
    return { id, unit, places };
  };
  const unit = batch.lines[0]?.unit ?? "g";
  const row = (one: WeighedLine, label: string): ResultRow => ({
    label,
    figures: [scaleView(one.load, one), scaleView(one.batch, one)],
    words: { text: one.scale, formula: scaleNameRule(one.step.id, scales) },
  });
  const finest = batch.lines.reduce(
    (least, { division }) => (dec(division).lt(least) ? division : least),
    batch.lines[0]?.division ?? "1",
  );
  const weights: ResultGroup = {
    heading: "Weights",
    columns: [`one load, ${unit}`, `all loads, ${unit}`, "weigh on"],
    rows: [
      ...batch.lines.map((one) => row(one, one.line.name)),
      ...(batch.rework
        ? [
            {
              label: batch.rework.name,
              figures: [scaleView(batch.rework.mass, batch.rework), scaleView(batch.rework.batch, batch.rework)],
            },
          ]
        : []),
      {
        label: "dough",
        figures: [
          scaleView(batch.loadTotal, { unit, division: finest }),
          scaleView(batch.batchTotal, { unit, division: finest }),
        ],
      },
      ...(batch.dusting ? [row(batch.dusting, `${batch.dusting.line.name} (dusting, not in the dough)`)] : []),
    ],
  };
  const { target, loads } = batch;
  const size = plain("Batch", [target.bowls, target.dough, loads.count, loads.dough, loads.flour, target.strands]);
  const columns = cost && [cost.batch, cost.load, cost.bowl, cost.kilogram, cost.shopping.pay];
  return [
    size,
    weights,
    plain("Flours", [
      blend.moisture,
      ...["blend.protein.as-is", "blend.protein.14", "blend.gluten-protein.14", "blend.ash.14", "blend.wholegrain"].map(
        (id) => made.graph[id],
      ),
    ]),
    plain("Water", [water.tap, water.carried, water.added, water.flour, water.dough, water.doughWater]),
    plain("Salts", [...(alkali?.figures ?? []), formula.salt]),
    ...(columns ? [plain("Cost", columns)] : []),
  ];
}
