import type { Batch } from "../batch/batch.ts";
import type { Remedy, StockRemedy } from "../batch/remedy.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import { exact, type Figure } from "../figure/figure.ts";
import { type DecimalText, dec } from "../number/decimal.ts";
import { finestDivision, scaleWords, totalWithStocks } from "./batch-report.ts";
import { numberColumn, row, section, table, wordColumn } from "./build.ts";
import { type IcedWater, massText } from "./card-water.ts";
import type { Cell, Section } from "./schema.ts";
import { inUnit, measureCell, weightCell, words } from "./show.ts";

/** Least mass that the card tells in kg, g. */
export const KILOGRAMS_FROM = 10_000;

/** The weights of one load, and the loads that have a box to tick. */
export interface CardWeights {
  readonly rows: readonly CardRow[];
  readonly loads: readonly number[];
  /** How many loads the whole batch has. */
  readonly of: number;
}

export interface CardRow {
  readonly name: string;
  readonly weight: string;
  /** Of the weight: that of its scale, and kg above 10 kg. */
  readonly unit: string;
  /** The scale, and what is to be minded there. */
  readonly scale: string;
  readonly role: "item" | "total" | "aside";
}

/** Loads on the card, of all there are. */
export interface CardLoads {
  readonly shown: readonly number[];
  readonly of: number;
}

/**
 * The one list to weigh by: every ingredient as its own scale shows it, with a stock solution or premix in the place of
 * what is too little for its scale.
 *
 * @param iced - the water with its ice, where the tap is too warm
 */
export function loadWeights(batch: Batch, loads: CardLoads, iced?: IcedWater): CardWeights {
  const { lines, withStocks, loadTotal } = batch;
  const unit = lines[0]?.unit ?? "g";
  const items = lines.map((weighed, index): CardRow => {
    const { name, mass } = withStocks?.[index] ?? { name: weighed.line.name, mass: weighed.load };
    const ice = iced?.line === weighed ? iceWords(iced) : "";
    return { ...itemRow(batch, weighed, mass), name, scale: scaleOf(batch, weighed) + ice };
  });
  const total: CardRow = {
    name: "dough",
    ...weightWords(withStocks ? totalWithStocks(withStocks) : loadTotal, unit, finestDivision(lines)),
    scale: "",
    role: "total",
  };
  return { rows: [...items, total, ...dustingRows(batch)], loads: loads.shown, of: loads.of };
}

/** So that nobody weighs all of it as water before reading on. */
function iceWords({ line, ice, tapWater }: IcedWater): string {
  if (exact(ice).isZero() || exact(tapWater).isNegative()) return "";
  return `; ${massText(ice, line)} of it as ice`;
}

function itemRow(batch: Batch, weighed: WeighedLine, mass: Figure): CardRow {
  const { line, unit, division } = weighed;
  return { name: line.name, ...weightWords(mass, unit, division), scale: scaleOf(batch, weighed), role: "item" };
}

/** Grams are hard to read above 10 kg, and their tenths are nothing there. */
function weightWords(mass: Figure, unit: string, division: DecimalText): Pick<CardRow, "weight" | "unit"> {
  if (unit !== "g" || exact(mass).lt(KILOGRAMS_FROM)) return { weight: weightCell(mass, unit, division).text, unit };
  const gram = dec(division).lt(1) ? "1" : division;
  return { weight: weightCell(mass, "kg", gram).text, unit: "kg" };
}

function dustingRows(batch: Batch): readonly CardRow[] {
  const { dusting } = batch;
  if (dusting === undefined) return [];
  return [{ ...itemRow(batch, dusting, dusting.load), name: `${dusting.line.name}, for dusting`, role: "aside" }];
}

/** The scale of a weight; of what is too little for it, the scale that would do, or that it is made up. */
function scaleOf({ remedies, withStocks }: Batch, weighed: WeighedLine): string {
  const remedy = remedies.find((one) => one.weighed === weighed);
  if (remedy?.kind === "finer scale") {
    const finer = held(measureCell(inUnit(remedy.division, weighed.unit)));
    return `${weighed.scale}: too coarse, weigh it to ${finer} or finer`;
  }
  if (remedy !== undefined && withStocks !== undefined) return `${weighed.scale}; made up first, see below`;
  return scaleWords(weighed, remedies);
}

/** How to make up each stock solution and premix of the list. */
export function makeUpSection({ remedies }: Batch): Section | undefined {
  const stocks = remedies.filter((remedy: Remedy): remedy is StockRemedy => remedy.kind !== "finer scale");
  if (stocks.length === 0) return undefined;
  const columns = [
    wordColumn("what", "what"),
    wordColumn("from", "from"),
    numberColumn("take", "for a load"),
    numberColumn("lasts", "lasts for loads"),
  ];
  return section(
    "make-up",
    "To make up first",
    table(
      "make-up",
      columns,
      stocks.map(makeUpCells).map((one) => row(one)),
    ),
  );
}

/** Masses as the scale of the ingredient shows them. */
function makeUpCells({
  weighed,
  kind,
  strength,
  ingredient,
  thinner,
  carrier,
  perLoad,
  lasts,
}: StockRemedy): readonly Cell[] {
  const { line, unit, division } = weighed;
  const mass = (figure: Figure): Cell => ({
    ...weightCell(figure, unit, division),
    text: massText(figure, weighed),
  });
  const recipe = `${held(mass(ingredient))} ${line.name} and ${held(mass(thinner))} ${carrier.line.name}`;
  return [
    words(`${kind} of ${line.name}`),
    words(`${recipe}: ${held(measureCell(strength))}`),
    mass(perLoad),
    measureCell(lasts),
  ];
}

/** The text of a measure that does not part from its unit at the end of a line. */
function held({ text }: Cell): string {
  return text.replaceAll(" ", "\u00a0");
}
