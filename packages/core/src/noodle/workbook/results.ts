import type { StockedWeight } from "../../batch/remedy.ts";
import type { WeighedLine } from "../../batch/weighing.ts";
import type { Figure } from "../../figure/figure.ts";
import { inSystem, inUnit, measureText } from "../../figure/in-system.ts";
import { reachedTexts } from "../../figure/problems/explore.ts";
import { dec } from "../../number/decimal.ts";
import { textIn } from "../../render/workbook/formulas.ts";
import {
  again,
  type ResultGroup,
  type ResultRow,
  type ResultWords,
  type Rule,
  type ShownFigure,
} from "../../render/workbook/workbook.ts";
import { finestDivision, scaleWords } from "../../report/batch-report.ts";
import { asScaleShows } from "../../report/show.ts";
import type { Made } from "./made.ts";
import { weighOnRule } from "./scales.ts";
import { missedRule, restsOnPrices, unpricedFigures, untoldPrice } from "./wants.ts";

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
    columns: ["", "unit"],
    rows: figures
      .filter((figure) => figure !== undefined)
      .map((figure) => ({
        label: figure.label,
        cells: withUnit(inSystem(figure, noodle.units)),
      })),
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
    ...(made.wants.length + made.untold.length > 0 ? [wanted(made)] : []),
    ...(cost ? [costs(plain("Cost", [cost.batch, cost.load, cost.bowl, cost.kilogram, cost.shopping.pay]), made)] : []),
  ];
}

/** What is paid and what all costs, with a reservation as long as not all has a price. */
function costs({ rows, ...group }: ResultGroup, made: Made): ResultGroup {
  const reserved = rows.map(({ label, cells }): ResultRow => {
    const [figure] = cells;
    if (figure === undefined || !("id" in figure) || made.unpriced.length === 0) return { label, cells };
    const words = figure.id === "shopping.pay" ? "for what is priced" : "what is priced of it";
    const formula: Rule = (_, { open }) => `IF(${open(unpricedFigures(made)) ?? "1=0"},"${words}","")`;
    return { label, cells: [...cells, { words, formula, across: true }] };
  });
  return { ...group, rows: reserved };
}

/** What is wanted in a row each: what is reached, between which ends that meets it, and whether it does. */
function wanted(made: Made): ResultGroup {
  const { wants, untold } = made;
  const rows = wants.map(({ want: { label, reached, least, most, asShown }, check }): ResultRow => {
    const word = check.holds ? "met" : "not met";
    if (reached === undefined) {
      const told = reachedTexts(check, (one) => measureText(one, "metric"));
      const words = `as written ${word}: ${told.reached}, wanted ${told.wanted}`;
      return {
        label,
        cells: [{ words, formula: (_, { changed }) => `IF(${changed()},"${again}",${textIn(words)})`, across: true }],
      };
    }
    const end = (figure: Figure | undefined): ShownFigure | undefined =>
      figure && {
        ...shown(figure),
        places: asShown ? reached.places : Math.max(reached.places, Math.min(dec(figure.value).decimalPlaces(), 3)),
      };
    const missed = missedRule({ reached, least, most, asShown });
    const met: ResultWords = {
      words: check.holds && restsOnPrices(reached, made) ? untoldPrice : word,
      formula: (cell, { open }) => {
        const missing = open([reached.id]);
        const otherwise = missing === undefined ? '"met"' : `IF(${missing},"${untoldPrice}","met")`;
        return `IF(${missed(cell)},"not met",${otherwise})`;
      },
    };
    return {
      label: asShown ? label.replace(/^the /u, "") : reached.label,
      cells: [shown(reached), { words: reached.unit }, end(least), end(most), met],
    };
  });
  const open = untold.map((words): ResultRow => ({ label: "cannot be told", cells: [{ words, across: true }] }));
  return { heading: "Wanted", columns: ["reached", "unit", "met from", "to", ""], rows: [...rows, ...open] };
}

function withUnit(figure: Figure): ResultRow["cells"] {
  return [shown(figure), { words: figure.unit }];
}

function weights({ batch, scales, graph }: Made): ResultGroup {
  const { lines, rework, dusting, loadTotal, batchTotal, remedies } = batch;
  const unit = lines[0]?.unit ?? "g";
  const row = (one: WeighedLine, label: string): ResultRow => ({
    label,
    cells: [
      weight(one.load, one),
      weight(one.batch, one),
      {
        words:
          Number(one.exact.value) <= 0
            ? ""
            : remedies.tooLittle.includes(one)
              ? `${one.scale}: too little`
              : scaleWords(one, { tooLittle: [], finer: [] }),
        formula: (cell) => `IF(${cell(one.exact.id)}<=0,"",${weighOnRule(one, scales)(cell)})`,
        across: true,
      },
    ],
  });
  const whole = { unit, division: finestDivision(lines) };
  return {
    heading: "Weights",
    columns: [`one load, ${unit}`, `all loads, ${unit}`, "weigh on"],
    rows: [
      ...lines.map((one) => row(one, graph[one.line.parts.id]?.label ?? one.line.name)),
      ...(rework ? [{ label: rework.name, cells: [weight(rework.mass, rework), weight(rework.batch, rework)] }] : []),
      { label: "dough", cells: [weight(loadTotal, whole), weight(batchTotal, whole)] },
      ...(dusting ? [row(dusting, `${dusting.line.name} (dusting, not in the dough)`)] : []),
    ],
  };
}

/** What decides whether and how salts are weighed in a stock: the weights, the scales, and what the salts are made of. */
export function behindStock({ batch, graph, weighed }: Made): readonly string[] {
  const salts = batch.remedies.stock?.salts ?? [];
  const decides = (id: string): boolean =>
    /^scale\.|^weighing\.tolerance$/u.test(id) || salts.some(({ line }) => id.startsWith(`${line.id}.`));
  return [...weighed.map(({ exact }) => exact.id), "loads.count", ...Object.keys(graph).filter(decides)];
}

/** What the command weighs in place of the salts, and finer scales: decided for the spec as it is written. */
function stock(made: Made): readonly ResultGroup[] {
  const { batch } = made;
  const { remedies, withStock = [], totalWithStock } = batch;
  const parts = remedies.stock?.parts ?? [];
  const unit = withStock[0]?.unit ?? "g";
  const row = ({ mass, unit: shows, division, scale }: Omit<StockedWeight, "name">, label: string): ResultRow => ({
    label,
    cells: [weight(mass, { unit: shows, division }), undefined, { words: scale, across: true }],
  });
  const rows = [
    ...withStock.map((one) => row(one, one.name)),
    ...(totalWithStock
      ? [{ label: "dough", cells: [weight(totalWithStock, { unit, division: finestDivision(withStock) })] }]
      : []),
    ...parts.map((part) => row(part, `${part.name} to make the stock`)),
    ...(remedies.stock ? [{ label: "the stock lasts for loads", cells: [shown(remedies.stock.stock.lasts)] }] : []),
  ];
  const finer = remedies.finer.map(({ weighed, division }) => {
    const figure = inUnit(division, weighed.unit);
    return { label: `weigh ${weighed.line.name} on a scale to`, cells: withUnit(figure) };
  });
  return [
    {
      heading: "One load with the stock solution",
      columns: [`one load, ${unit}`, "", "weigh on"],
      rows,
      decidedBy: behindStock(made),
    },
    { heading: "Too little for the scale", columns: ["", "unit"], rows: finer, decidedBy: behindStock(made) },
  ].filter((group) => group.rows.length > 0);
}
