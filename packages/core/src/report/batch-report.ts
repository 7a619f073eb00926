import type { AfterRounding } from "../batch/after-rounding.ts";
import type { Batch } from "../batch/batch.ts";
import type { Remedy } from "../batch/remedy.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import { type Figure, worked } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { dec, decimalText, fixedText } from "../number/decimal.ts";
import { numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import { allergenSection, formulaFigures } from "./formula-report.ts";
import type { Cell, Report, Table } from "./schema.ts";
import { figureCell, inSystem, inUnit, measureCell, type UnitSystem, weightCell, words } from "./show.ts";

/** Tells a batch: its size, the weights of each load, what rounding does, and what is too little for the scale. */
export function batchReport(
  formula: Formula,
  batch: Batch,
  notes: readonly Note[],
  units: UnitSystem = "metric",
): Report {
  const gramScales = batch.lines.some(({ unit }) => unit === "g");
  const systemNote: readonly Note[] =
    units === "us" && gramScales
      ? [{ code: "scales.metric", path: ["scales"], text: "weights are in grams, as the scales of the spec show them" }]
      : [];
  return report({
    command: "batch",
    title: formula.name,
    main: "weights",
    sections: [
      section("batch", "Batch", {
        kind: "figures",
        figures: sizeFigures(batch).map((figure) => inSystem(figure, units)),
      }),
      section("weights", "Weights", weightsTable(batch)),
      section("rounding", "What rounding to the scale does", roundingTable(batch.rounding)),
      section("remedies", "Too little for the scale", remedyTable(batch)),
      section("stock-weights", "One load with them", stockWeightsTable(batch)),
      allergenSection(formula),
    ],
    figures: [...formulaFigures(formula), ...batchFigures(batch)],
    notes: [...notes, ...systemNote],
    cautions: formulaCautions(formula),
  });
}

function sizeFigures(batch: Batch): readonly Figure[] {
  const { target, loads } = batch;
  const lossy = target.stages.filter(({ lost }) => !dec(lost.value).isZero());
  return [
    ...(target.bowls ? [target.bowls] : []),
    ...(target.cookedWeight ? [target.cookedWeight] : []),
    ...(target.rawWeight ? [target.rawWeight] : []),
    target.dough,
    ...lossy.map(({ lost }) => lost),
    target.strands,
    loads.count,
    ...(dec(loads.count.value).gt(1) ? [loads.dough] : []),
  ];
}

function batchFigures(batch: Batch): readonly Figure[] {
  const weighed = [...batch.lines, ...(batch.dusting ? [batch.dusting] : [])];
  return [
    ...batch.target.figures,
    ...batch.loads.figures,
    ...weighed.flatMap(({ exact, step, load, batch: whole, off, nearest }) => [exact, step, load, whole, off, nearest]),
    batch.loadTotal,
    batch.batchTotal,
    ...batch.rounding.figures,
    ...batch.remedies.flatMap(({ figures }) => figures),
    ...(batch.withStocks ?? []).map(({ mass }) => mass),
    ...(batch.withStocks === undefined ? [] : [totalWithStocks(batch.withStocks)]),
  ];
}

function weightsTable(batch: Batch): Table {
  const unit = batch.lines[0]?.unit ?? "g";
  const several = dec(batch.loads.count.value).gt(1);
  const columns = [
    wordColumn("ingredient", "ingredient"),
    numberColumn("parts", "% of flour"),
    numberColumn("load", several ? `one load, ${unit}` : `weigh, ${unit}`),
    ...(several ? [numberColumn("batch", `all ${batch.loads.count.value} loads, ${unit}`)] : []),
    wordColumn("scale", "weigh on"),
  ];
  const cells = (weighed: WeighedLine, name: string): readonly Cell[] => [
    words(name),
    figureCell(weighed.line.parts),
    weightCell(weighed.load, weighed.unit, weighed.division),
    ...(several ? [weightCell(weighed.batch, weighed.unit, weighed.division)] : []),
    words(scaleWords(weighed, batch.remedies)),
  ];
  const finest = finestDivision(batch.lines);
  const total = row(
    [
      words("dough"),
      words(""),
      weightCell(batch.loadTotal, unit, finest),
      ...(several ? [weightCell(batch.batchTotal, unit, finest)] : []),
      words(""),
    ],
    "total",
  );
  const rows = batch.lines.map((weighed) => row(cells(weighed, weighed.line.name)));
  const dusting = batch.dusting;
  const aside = dusting ? [row(cells(dusting, `${dusting.line.name} (dusting, not in the dough)`), "aside")] : [];
  return table("weights", columns, [...rows, total, ...aside]);
}

/** The scale of a weight, and what is to be minded there. */
export function scaleWords(weighed: WeighedLine, remedies: readonly Remedy[]): string {
  const remedy = remedies.find((one) => one.weighed.line.id === weighed.line.id);
  if (remedy !== undefined) return `${weighed.scale}: too little, see below`;
  return weighed.lots === 1 ? weighed.scale : `${weighed.scale}, in ${weighed.lots} lots`;
}

function roundingTable({ compared }: Batch["rounding"]): Table {
  return table(
    "rounding",
    [
      wordColumn("what", "what"),
      numberColumn("asked", "asked"),
      numberColumn("weighed", "as weighed"),
      numberColumn("change", "change"),
      numberColumn("percent", "change, %"),
    ],
    compared.map((one) => {
      const places = placesThatAgree(one);
      const cells = [one.asked, one.weighed, one.difference].map((figure) => figureCell({ ...figure, places }));
      return row([words(`${one.label}, ${one.asked.unit}`), ...cells, figureCell(one.change)]);
    }),
  );
}

/** Places at which the change is what was weighed less what was asked, as they are shown; at most three more than usual. */
function placesThatAgree({ asked, weighed, difference }: AfterRounding): number {
  const agree = (places: number): boolean => {
    const [from, to, change] = [asked, weighed, difference].map(({ value }) => dec(fixedText(value, places)));
    return from !== undefined && to !== undefined && change !== undefined && to.minus(from).eq(change);
  };
  const usual = difference.places;
  return [usual, usual + 1, usual + 2].find(agree) ?? usual + 3;
}

/** What to do about what is too little, in the unit that its scale shows. */
function remedyTable(batch: Batch): Table {
  const rows = batch.remedies.flatMap((remedy) => {
    const { line, unit, division, exact, load, off, nearest } = remedy.weighed;
    const { name } = line;
    const shown = (figure: Figure): Cell => withUnit(weightCell(figure, unit, division));
    const asked = inUnit(exact, unit, exact.places);
    const worst = `${name}: ${figureCell(asked).text} ${unit} becomes ${weightCell(load, unit, division).text}, off by ${figureCell(off).text} %; the scale tells it to ± ${figureCell(nearest).text} %`;
    if (remedy.kind === "finer scale") {
      const finer = measureCell(inUnit(remedy.division, unit));
      return [row([words(worst), words("weigh on a scale with a division of at most"), finer])];
    }
    const label = remedy.kind;
    return [
      row([words(worst), words(`${label} of`), measureCell(remedy.strength)]),
      row([words(""), words(`make it from ${name}`), shown(remedy.ingredient)]),
      row([words(""), words(`and ${remedy.carrier.line.name}`), shown(remedy.thinner)]),
      row([words(""), words(`take in a load, in place of ${name}`), shown(remedy.perLoad)]),
      row([words(""), words("it lasts for loads"), measureCell(remedy.lasts)]),
    ];
  });
  return table(
    "remedies",
    [wordColumn("ingredient", "ingredient"), wordColumn("what", "what to do"), numberColumn("amount", "amount")],
    rows,
  );
}

function withUnit(cell: Cell): Cell {
  return { ...cell, text: `${cell.text} ${cell.unit}` };
}

/** Dough of one load with its stocks and premixes. */
export function totalWithStocks(weights: NonNullable<Batch["withStocks"]>): Figure {
  return worked({
    id: "load.total-with-stocks",
    label: "dough of one load",
    unit: "g",
    places: 2,
    formula: "sum(mass)",
    from: { mass: weights.map(({ mass }) => mass) },
    sources: [massBalance],
  });
}

function stockWeightsTable(batch: Batch): Table | undefined {
  const weights = batch.withStocks;
  const first = weights?.[0];
  if (weights === undefined || first === undefined) return undefined;
  const total = totalWithStocks(weights);
  return table(
    "stock-weights",
    [wordColumn("ingredient", "ingredient"), numberColumn("load", `one load, ${first.unit}`)],
    [
      ...weights.map(({ name, mass, unit, division }) => row([words(name), weightCell(mass, unit, division)])),
      row([words("dough"), weightCell(total, first.unit, finestDivision(weights))], "total"),
    ],
  );
}

/** The division with the most places, which every weight of a table can be written in. */
export function finestDivision(weights: readonly { readonly division: string }[]): string {
  const divisions = weights.map(({ division }) => dec(division));
  return decimalText(divisions.reduce((a, b) => (a.decimalPlaces() >= b.decimalPlaces() ? a : b)));
}
