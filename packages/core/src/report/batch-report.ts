import type { AfterRounding } from "../batch/after-rounding.ts";
import type { Batch } from "../batch/batch.ts";
import type { Remedies, ScaledMass, StockRemedy } from "../batch/remedy.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import type { Figure } from "../figure/figure.ts";
import { inUnit } from "../figure/in-system.ts";
import { type Note, note } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { dec, decimalText, fixedText } from "../number/decimal.ts";
import { figureBlock, listing, numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import { allergenSection } from "./formula-report.ts";
import type { Cell, Report, Section, Table, Telling } from "./schema.ts";
import { figureCell, measureCell, weightCell, words } from "./show.ts";

/** Tells a batch: its size, the weights of each load, what rounding does, and what is too little for the scale. */
export function batchReport(formula: Formula, batch: Batch, { notes, units = "metric" }: Telling): Report {
  const gramScales = batch.lines.some(({ unit }) => unit === "g");
  const systemNote: readonly Note[] = units === "us" && gramScales ? [note("scales.metric", ["scales"], {})] : [];
  return report({
    command: "batch",
    title: formula.name,
    main: "weights",
    sections: [
      section("batch", "Batch", figureBlock(sizeFigures(batch), units)),
      section("weights", "Weights", weightsTable(batch)),
      ...remedySections(batch.remedies),
      section("stock-weights", "One load with the stock solution", stockWeightsTable(batch)),
      section("rounding", roundingHeading(batch), roundingTable(batch.rounding)),
      allergenSection(formula),
    ],
    figures: [...Object.values(formula.graph), ...Object.values(batch.graph)],
    from: [formula, batch],
    units,
    notes: [...notes, ...systemNote],
    cautions: formulaCautions(formula),
  });
}

function sizeFigures(batch: Batch): readonly Figure[] {
  const { target, loads } = batch;
  const lossy = target.stages.filter(({ lost }) => !dec(lost.value).isZero());
  return [
    ...[target.bowls, target.cookedWeight, target.rawWeight].filter((figure) => figure !== undefined),
    target.dough,
    ...lossy.map(({ lost }) => lost),
    target.strands,
    loads.count,
    ...(dec(loads.count.value).gt(1) ? [loads.dough] : []),
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
  const finest = finestDivision([...batch.lines, ...(batch.rework ? [batch.rework] : [])]);
  const total = row(
    [
      "dough",
      "",
      weightCell(batch.loadTotal, unit, finest),
      ...(several ? [weightCell(batch.batchTotal, unit, finest)] : []),
      "",
    ],
    "total",
  );
  const rows = [...batch.lines.map((weighed) => row(cells(weighed, weighed.line.name))), ...reworkRows(batch)];
  const dusting = batch.dusting;
  const aside = dusting ? [row(cells(dusting, `${dusting.line.name} (dusting, not in the dough)`), "aside")] : [];
  return table("weights", columns, [...rows, total, ...aside]);
}

function reworkRows({ rework, loads }: Batch): Table["rows"] {
  if (rework === undefined) return [];
  const { name, mass, batch, share, unit, division, scale } = rework;
  const several = dec(loads.count.value).gt(1) ? [weightCell(batch, unit, division)] : [];
  return [row([name, measureCell(share), weightCell(mass, unit, division), ...several, scale])];
}

/** The scale of a weight, and what is to be minded there. */
export function scaleWords(weighed: WeighedLine, { tooLittle }: Remedies): string {
  if (tooLittle.some(({ line }) => line.id === weighed.line.id)) return `${weighed.scale}: too little, see below`;
  return weighed.lots === 1 ? weighed.scale : `${weighed.scale}, in ${weighed.lots} weighings`;
}

function roundingTable(compared: Batch["rounding"]): Table {
  const cell = (one: AfterRounding, which: "asked" | "weighed" | "difference") =>
    figureCell({ ...one[which], places: placesThatAgree(one) });
  return listing("rounding", compared, [
    [wordColumn("what", "what"), ({ label, asked }) => `${label}, ${asked.unit}`],
    [numberColumn("asked", "asked"), (one) => cell(one, "asked")],
    [numberColumn("weighed", "as weighed"), (one) => cell(one, "weighed")],
    [numberColumn("change", "change"), (one) => cell(one, "difference")],
    [numberColumn("percent", "change, %"), ({ change }) => figureCell(change)],
  ]);
}

/**
 * Places at which the change is what was weighed less what was asked, as they are shown: one fewer than usual where that
 * does and still shows a change, else at most three more.
 */
function placesThatAgree({ asked, weighed, difference }: AfterRounding): number {
  const agree = (places: number): boolean => {
    const [from, to, change] = [asked, weighed, difference].map(({ value }) => dec(fixedText(value, places)));
    return from !== undefined && to !== undefined && change !== undefined && to.minus(from).eq(change);
  };
  const usual = difference.places;
  const fewer = Math.max(0, usual - 1);
  if (!agree(usual) && agree(fewer) && !dec(fixedText(difference.value, fewer)).isZero()) return fewer;
  return [usual, usual + 1, usual + 2].find(agree) ?? usual + 3;
}

/** What is too little for its scale, and what to do about it. */
export function remedySections(remedies: Remedies): readonly Section[] {
  return [
    section("too-little", "Too little for the scale", tooLittleTable(remedies)),
    section("remedies", "What to do about it", remedyTable(remedies), stockLines(remedies)),
  ];
}

/** What is too little: how far each is off as printed, and how near its scale tells it. */
function tooLittleTable({ tooLittle }: Remedies): Table {
  const unit = tooLittle[0]?.unit ?? "g";
  return listing("too-little", tooLittle, [
    [wordColumn("ingredient", "ingredient"), ({ line }) => line.name],
    [numberColumn("asked", `asked, ${unit}`), ({ exact }) => figureCell(inUnit(exact, unit, unit === "g" ? 2 : 4))],
    [numberColumn("weigh", `weigh, ${unit}`), ({ load, division }) => weightCell(load, unit, division)],
    [numberColumn("off", "off, %"), ({ off }) => figureCell(off)],
    [numberColumn("nearest", "scale tells it to ±, %"), ({ nearest }) => figureCell(nearest)],
  ]);
}

/** What to do about what is too little, in the unit that its scale shows. */
function remedyTable({ stock, finer }: Remedies): Table {
  const finerRows = finer.map(({ weighed: { line, unit }, division }) =>
    row([`weigh ${line.name} on a scale to`, soldCell(division, unit)]),
  );
  return table(
    "remedies",
    [wordColumn("what", "what to do"), numberColumn("amount", "amount")],
    [...(stock ? stockRows(stock, soldCell(stock.dry, stock.carrier.unit)) : []), ...finerRows],
  );
}

/** A division in the unit and with the places that its scale is sold by. */
export function soldCell(division: Figure, unit: string): Cell {
  const shown = inUnit(division, unit);
  return measureCell({ ...shown, places: Math.min(dec(shown.value).decimalPlaces(), 8) });
}

function stockRows({ stock, parts, dose, muchLeft }: StockRemedy, dry: Cell): Table["rows"] {
  const dryRow = (or: string) => row([`${or}weigh the salts dry, on a scale to`, dry]);
  return [
    ...(muchLeft ? [dryRow("")] : []),
    row([`${muchLeft ? "or " : ""}make one stock solution of all the salts, of`, measureCell(stock.strength)]),
    ...parts.map((part) => row([`from ${part.name}`, scaledCell(part)])),
    row(["take in a load, in place of the salts", scaledCell(dose)]),
    row(["it lasts for loads", measureCell(stock.lasts)]),
    ...(muchLeft ? [] : [dryRow("or ")]),
  ];
}

/** A mass with its unit, as its scale shows it. */
export function scaledCell({ mass, unit, division }: ScaledMass): Cell {
  const cell = weightCell(mass, unit, division);
  return { ...cell, text: `${cell.text} ${unit}` };
}

function stockLines({ stock }: Remedies): readonly string[] {
  const text =
    "Strew the salts into the water while stirring. Keep it closed in the fridge, labelled with name, strength and day; stir it before you weigh.";
  const left =
    "The stock is for many more loads than are to come, since this scale cannot weigh the salts of fewer: for so few loads the finer scale is the shorter way.";
  return stock === undefined ? [] : [...(stock.muchLeft ? [left] : []), text];
}

function stockWeightsTable({ withStock: weights, totalWithStock: total }: Batch): Table | undefined {
  const first = weights?.[0];
  if (weights === undefined || total === undefined || first === undefined) return undefined;
  return listing(
    "stock-weights",
    weights,
    [
      [wordColumn("ingredient", "ingredient"), ({ name }) => name],
      [numberColumn("load", `one load, ${first.unit}`), ({ mass, unit, division }) => weightCell(mass, unit, division)],
      [wordColumn("scale", "weigh on"), ({ scale }) => scale],
    ],
    row(["dough", weightCell(total, first.unit, finestDivision(weights)), ""], "total"),
  );
}

function roundingHeading({ withStock }: Batch): string {
  return withStock === undefined ? "What rounding to the scale does" : "What rounding does, with the stock solution";
}

/** The division with the most places, which every weight of a table can be written in. */
export function finestDivision(weights: readonly { readonly division: string }[]): string {
  const divisions = weights.map(({ division }) => dec(division));
  return decimalText(divisions.reduce((a, b) => (a.decimalPlaces() >= b.decimalPlaces() ? a : b)));
}
