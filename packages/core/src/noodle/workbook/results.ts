import type { StockedWeight } from "../../batch/remedy.ts";
import type { WeighedLine } from "../../batch/weighing.ts";
import type { Want } from "../../explore/wanted-figures.ts";
import type { Figure } from "../../figure/figure.ts";
import type { ResultGroup, ResultRow, ShownFigure } from "../../render/workbook/workbook.ts";
import { finestDivision, scaleWords } from "../../report/batch-report.ts";
import { asScaleShows, inSystem, inUnit } from "../../report/show.ts";
import type { Made } from "./made.ts";
import { weighOnRule } from "./scales.ts";
import { missedRule } from "./wants.ts";

function shown({ id, unit, places }: Figure): ShownFigure {
  return { id, unit, places };
}

/** A mass as its scale shows it. */
function weight(figure: Figure, on: Pick<WeighedLine, "unit" | "division">): ShownFigure {
  return shown(asScaleShows(figure, on));
}

/** What comes of the inputs, as the commands show it. */
export function resultGroups(made: Made): readonly ResultGroup[] {
  const { batch, noodle, cost } = made;
  const { blend, water, alkali, salt } = noodle.formula;
  const { target, loads } = batch;
  const plain = (heading: string, figures: readonly (Figure | undefined)[]): ResultGroup => ({
    heading,
    columns: ["", ""],
    rows: figures
      .filter((figure) => figure !== undefined)
      .map((figure) => ({ label: figure.label, ...withUnit(inSystem(figure, noodle.units)) })),
  });
  return [
    plain("Batch", [target.bowls, target.dough, loads.count, loads.dough, loads.flour, target.strands]),
    weights(made),
    ...stock(made),
    plain("Flours", [
      blend.moisture,
      ...["blend.protein.as-is", "blend.protein.14", "blend.gluten-protein.14", "blend.ash.14", "blend.wholegrain"].map(
        (id) => made.graph[id],
      ),
    ]),
    plain("Water", [water.tap, water.carried, water.added, water.flour, water.dough, water.doughWater]),
    plain("Salts", [...(alkali?.figures ?? []), salt]),
    ...(made.wants.length > 0 ? [wanted(made)] : []),
    ...(cost ? [plain("Cost", [cost.batch, cost.load, cost.bowl, cost.kilogram, cost.shopping.pay])] : []),
  ];
}

/** What is wanted, and whether what is reached meets it. */
function wanted({ wants }: Made): ResultGroup {
  return {
    heading: "Wanted",
    columns: ["reached", "", ""],
    rows: wants.map(({ want, check }) => ({
      label: wantedLabel(want),
      figures: want.reached === undefined ? [] : [shown(want.reached)],
      unit: want.reached?.unit ?? "",
      words: check.holds ? "met" : "not met",
      wordsFormula: (cell, changed) => {
        if (want.reached !== undefined) return `IF(${missedRule(want)(cell)},"not met","met")`;
        return `IF(${changed},"make the workbook anew","${check.holds ? "met" : "not met"}")`;
      },
    })),
  };
}

/** What is wanted, and which end of it; of a blend the basis stands in the label of the figure. */
function wantedLabel({ label, reached, least, most, asShown }: Want): string {
  const end = least === undefined ? ", at most" : most === undefined ? ", at least" : "";
  return reached === undefined ? label : `${asShown ? label.replace(/^the /u, "") : reached.label}${end}`;
}

function withUnit(figure: Figure): Pick<ResultRow, "figures" | "words"> {
  return { figures: [shown(figure)], words: figure.unit };
}

function weights({ batch, scales }: Made): ResultGroup {
  const { lines, rework, dusting, loadTotal, batchTotal, remedies } = batch;
  const unit = lines[0]?.unit ?? "g";
  const row = (one: WeighedLine, label: string): ResultRow => ({
    label,
    figures: [weight(one.load, one), weight(one.batch, one)],
    words:
      Number(one.exact.value) <= 0
        ? ""
        : remedies.tooLittle.includes(one)
          ? `${one.scale}: too little`
          : scaleWords(one, { tooLittle: [], finer: [] }),
    wordsFormula: (cell) => `IF(${cell(one.exact.id)}<=0,"",${weighOnRule(one, scales)(cell)})`,
  });
  const whole = { unit, division: finestDivision(lines) };
  return {
    heading: "Weights",
    columns: [`one load, ${unit}`, `all loads, ${unit}`, "weigh on"],
    rows: [
      ...lines.map((one) => row(one, one.line.name)),
      ...(rework ? [{ label: rework.name, figures: [weight(rework.mass, rework), weight(rework.batch, rework)] }] : []),
      { label: "dough", figures: [weight(loadTotal, whole), weight(batchTotal, whole)] },
      ...(dusting ? [row(dusting, `${dusting.line.name} (dusting, not in the dough)`)] : []),
    ],
  };
}

/** What the command weighs in place of the salts, and finer scales: decided for the spec as it is written. */
function stock({ batch }: Made): readonly ResultGroup[] {
  const { remedies, withStock = [], totalWithStock } = batch;
  const parts = remedies.stock?.parts ?? [];
  const unit = withStock[0]?.unit ?? "g";
  const row = ({ mass, unit: shows, division, scale }: Omit<StockedWeight, "name">, label: string): ResultRow => ({
    label,
    figures: [weight(mass, { unit: shows, division })],
    words: scale,
  });
  const rows = [
    ...withStock.map((one) => row(one, one.name)),
    ...(totalWithStock
      ? [{ label: "dough", figures: [weight(totalWithStock, { unit, division: finestDivision(withStock) })] }]
      : []),
    ...parts.map((part) => row(part, `${part.name} to make the stock`)),
    ...(remedies.stock ? [{ label: "the stock lasts for loads", figures: [shown(remedies.stock.stock.lasts)] }] : []),
  ];
  const finer = remedies.finer.map(({ weighed, division }) => {
    const figure = inUnit(division, weighed.unit);
    return { label: `weigh ${weighed.line.name} on a scale to`, ...withUnit(figure) };
  });
  return [
    { heading: "One load with the stock solution", columns: [`one load, ${unit}`, "weigh on"], rows, asWritten: true },
    { heading: "Too little for the scale", columns: ["", ""], rows: finer, asWritten: true },
  ].filter((group) => group.rows.length > 0);
}
