import type { Batch } from "../batch/batch.ts";
import type { Remedy } from "../batch/remedy.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import type { Figure } from "../figure/figure.ts";
import { finestDivision, scaleWords, totalWithStocks } from "./batch-report.ts";
import { numberColumn, row, section, table, wordColumn } from "./build.ts";
import type { Cell, Section } from "./schema.ts";
import { inUnit, measureCell, weightCell, words } from "./show.ts";

/** The weights of one load, and the loads that have a box to tick. */
export interface CardWeights {
  readonly unit: string;
  readonly rows: readonly CardRow[];
  readonly loads: readonly number[];
  /** How many loads the whole batch has. */
  readonly of: number;
}

export interface CardRow {
  readonly name: string;
  readonly weight: string;
  readonly scale: string;
  readonly role: "item" | "total" | "aside";
}

/** Loads on the card, of all there are. */
export interface CardLoads {
  readonly shown: readonly number[];
  readonly of: number;
}

/** Every ingredient as its own scale shows it. */
export function plainWeights(batch: Batch, loads: CardLoads): CardWeights {
  const unit = batch.lines[0]?.unit ?? "g";
  const items = batch.lines.map((weighed): CardRow => weighedRow(batch, weighed, "item", weighed.line.name));
  const total = totalRow(batch.loadTotal, unit, finestDivision(batch.lines));
  return { unit, rows: [...items, total, ...dustingRows(batch)], loads: loads.shown, of: loads.of };
}

/** The weights with the stock solutions and premixes in, where there are any. */
export function stockWeights(batch: Batch, loads: CardLoads): CardWeights | undefined {
  const { withStocks } = batch;
  const unit = withStocks?.[0]?.unit;
  if (withStocks === undefined || unit === undefined) return undefined;
  const items = withStocks.map(
    (weight, index): CardRow => ({
      name: weight.name,
      weight: weightCell(weight.mass, weight.unit, weight.division).text,
      scale: batch.lines[index]?.scale ?? "",
      role: "item",
    }),
  );
  const total = totalRow(totalWithStocks(withStocks), unit, finestDivision(withStocks));
  return { unit, rows: [...items, total, ...dustingRows(batch)], loads: loads.shown, of: loads.of };
}

function weighedRow(batch: Batch, weighed: WeighedLine, role: CardRow["role"], name: string): CardRow {
  const { load, unit, division } = weighed;
  return { name, weight: weightCell(load, unit, division).text, scale: scaleWords(weighed, batch.remedies), role };
}

function totalRow(total: Figure, unit: string, division: string): CardRow {
  return { name: "dough", weight: weightCell(total, unit, division).text, scale: "", role: "total" };
}

function dustingRows(batch: Batch): readonly CardRow[] {
  const { dusting } = batch;
  return dusting ? [weighedRow(batch, dusting, "aside", `${dusting.line.name}, for dusting`)] : [];
}

/** What to make up, or to weigh finer, where an ingredient is too little for its scale. */
export function remedySection(batch: Batch): Section | undefined {
  if (batch.remedies.length === 0) return undefined;
  const columns = [
    wordColumn("ingredient", "in place of"),
    wordColumn("make", "make up"),
    numberColumn("take", "for a load"),
    numberColumn("lasts", "lasts for loads"),
  ];
  const rows = batch.remedies.map((remedy) => row(remedyCells(remedy)));
  return section("make-up", "Too little for the scale", table("make-up", columns, rows));
}

/** Masses as the scale of the ingredient shows them. */
function remedyCells(remedy: Remedy): readonly Cell[] {
  const { line, unit, division } = remedy.weighed;
  const { name } = line;
  const mass = (figure: Figure): Cell => {
    const cell = weightCell(figure, unit, division);
    return { ...cell, text: `${cell.text} ${unit}` };
  };
  if (remedy.kind === "finer scale") {
    const advice = `nothing: weigh it on a scale with a division of at most ${held(measureCell(inUnit(remedy.division, unit)))}`;
    return [words(name), words(advice), words(""), words("")];
  }
  const { kind, strength, ingredient, thinner, carrier, perLoad, lasts } = remedy;
  const recipe = `${held(mass(ingredient))} ${name} and ${held(mass(thinner))} ${carrier.line.name}`;
  return [
    words(name),
    words(`${kind} of ${held(measureCell(strength))}: ${recipe}`),
    mass(perLoad),
    measureCell(lasts),
  ];
}

/** The text of a measure that does not part from its unit at the end of a line. */
function held({ text }: Cell): string {
  return text.replaceAll(" ", "\u00a0");
}
