import type { Batch } from "../batch/batch.ts";
import type { ScaledMass } from "../batch/remedy.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import { exact, type Figure } from "../figure/figure.ts";
import { inWords } from "../figure/said.ts";
import { type DecimalText, dec } from "../number/decimal.ts";
import type { ScaleUnit } from "../number/units.ts";
import { finestDivision, scaledCell, scaleWords, soldCell } from "../report/batch-report.ts";
import { listing, numberColumn, section, wordColumn } from "../report/build.ts";
import type { Cell, Section } from "../report/schema.ts";
import { massText, measureCell, weightCell } from "../report/show.ts";
import type { IcedWater } from "./card-water.ts";

/** Least mass that the card tells in kg, g. */
export const KILOGRAMS_FROM = 10_000;

/** The weights of one load, and the loads that have a box to tick. */
export interface CardWeights {
  readonly rows: readonly CardRow[];
  readonly loads: readonly number[];
  /** How many loads the whole batch has. */
  readonly of: number;
}

/** One line to weigh on a card. */
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
interface CardLoads {
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
  const { lines, rework, dusting, withStock, loadTotal, totalWithStock } = batch;
  const unit = lines[0]?.unit ?? "g";
  const ice = (weighed: WeighedLine | undefined) =>
    iced && iced.line.line.id === weighed?.line.id ? iceWords(iced) : "";
  const items = withStock?.map((one): CardRow => {
    if (one.mass.id === rework?.mass.id) return reworkRow(one);
    const { name, mass, division, unit: shown, scale, weighed } = one;
    const where = weighed === undefined ? `${scale}; made up first, see below` : scaleOf(batch, weighed);
    return { name, ...weightWords(mass, shown, division), scale: where + ice(weighed), role: "item" };
  }) ?? [
    ...lines.map((weighed): CardRow => {
      const item = itemRow(batch, weighed);
      return { ...item, scale: item.scale + ice(weighed) };
    }),
    ...(rework ? [reworkRow(rework)] : []),
  ];
  const finest = finestDivision(withStock ?? [...lines, ...(rework ? [rework] : [])]);
  const dough = weightWords(totalWithStock ?? loadTotal, unit, finest);
  const total: CardRow = { name: "dough", ...dough, scale: "", role: "total" };
  const rows: CardRow[] = [...items, total];
  if (dusting) rows.push({ ...itemRow(batch, dusting), name: `${dusting.line.name}, for dusting`, role: "aside" });
  return { rows, loads: loads.shown, of: loads.of };
}

/** So that nobody weighs all of it as water before reading on. */
function iceWords({ line, ice, tapWater }: IcedWater): string {
  if (exact(ice).isZero() || exact(tapWater).isNegative()) return "";
  return `; ${massText(ice, line)} of it as ice`;
}

function reworkRow({ name, mass, unit, division, scale }: ScaledMass): CardRow {
  return { name, ...weightWords(mass, unit, division), scale, role: "item" };
}

function itemRow(batch: Batch, weighed: WeighedLine): CardRow {
  const { line, load, unit, division } = weighed;
  return { name: line.name, ...weightWords(load, unit, division), scale: scaleOf(batch, weighed), role: "item" };
}

/** Grams are hard to read above 10 kg, and their tenths are nothing there. */
function weightWords(mass: Figure, unit: ScaleUnit, division: DecimalText): Pick<CardRow, "weight" | "unit"> {
  if (unit !== "g" || exact(mass).lt(KILOGRAMS_FROM)) return { weight: weightCell(mass, unit, division).text, unit };
  const gram = dec(division).lt(1) ? "1" : division;
  return { weight: weightCell(mass, "kg", gram).text, unit: "kg" };
}

/** The scale of a weight; of what is too little for it, the scale that would do. */
function scaleOf({ remedies }: Batch, weighed: WeighedLine): string {
  const finer = remedies.finer.find((one) => one.weighed.line.id === weighed.line.id);
  if (finer === undefined) return scaleWords(weighed, { ...remedies, tooLittle: [] });
  const division = held(soldCell(finer.division, weighed.unit));
  return `${weighed.scale}: too coarse, weigh it to ${division} or finer`;
}

/** How to make up the stock solution of the list. */
export function makeUpSection({ remedies: { stock: remedy } }: Batch): Section | undefined {
  if (remedy === undefined) return undefined;
  const { stock, dose } = remedy;
  const parts = remedy.parts.map((part) => `${held(scaledCell(part))} ${part.name}`);
  const list = listing(
    "make-up",
    [stock],
    [
      [wordColumn("what", "what"), () => dose.name],
      [wordColumn("from", "from"), ({ strength }) => `${inWords(parts)}: ${held(measureCell(strength))}`],
      [numberColumn("take", "for a load"), () => scaledCell(dose)],
      [numberColumn("lasts", "lasts for loads"), ({ lasts }) => measureCell(lasts)],
    ],
  );
  return section("make-up", "To make up first", list);
}

/** The text of a measure that does not part from its unit at the end of a line. */
function held({ text }: Cell): string {
  return text.replaceAll(" ", "\u00a0");
}
