import type { Batch } from "../batch/batch.ts";
import type { Published } from "../figure/graph.ts";
import { inSystem, inUnit, shownGrouped, type UnitSystem } from "../figure/in-system.ts";
import type { Note } from "../figure/problem.ts";
import { told, toldIn } from "../figure/told.ts";
import type { Formula } from "../formula/formula.ts";
import { dec } from "../number/decimal.ts";
import { formulaCautions } from "../report/cautions.ts";
import { allergenLines } from "../report/formula-report.ts";
import { recordedLines } from "../report/recorded.ts";
import type { Section } from "../report/schema.ts";
import { type SheetHazard, sheetCautions } from "../sheet/cautions.ts";
import type { DayPlan } from "../sheet/day/day-plan.ts";
import type { SheetPlan } from "../sheet/sheet-plan.ts";
import type { DoughWater } from "../sheet/water/dough-water.ts";
import type { Spec } from "../spec/spec.ts";
import { daySection } from "./card-day.ts";
import { sheetSections } from "./card-sections.ts";
import { icedWater, waterSection } from "./card-water.ts";
import { type CardWeights, KILOGRAMS_FROM, loadWeights, makeUpSection } from "./card-weights.ts";

/** A card to hang by the machine: what to weigh and do, with room to tick and write. It is plain data. */
export interface Card {
  readonly title: string;
  /** What the spec says of itself, and the certificates of its materials, line by line. */
  readonly about: readonly string[];
  readonly date: string;
  /** The spec and the files it includes, so that paper and files can be matched. */
  readonly files: readonly CardFile[];
  /** What flags said in place of the spec. */
  readonly said: string;
  /** The size of the batch in a few words each. */
  readonly facts: readonly Fact[];
  /** The one list to weigh by, with what is made up in its place. */
  readonly weights: CardWeights;
  /** How to make up what is too little for the scale. */
  readonly makeUp?: Section;
  /** What stands with the weights where the spec has data for it: water and times. */
  readonly bench: readonly Section[];
  /** The work at the machine: passes, sheets and strands. */
  readonly machine: readonly Section[];
  readonly allergens: readonly string[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

/** A file and the first digits of its SHA-256. */
export interface CardFile {
  readonly name: string;
  readonly checksum: string;
}

/** A few words and a value. */
export interface Fact {
  readonly label: string;
  readonly value: string;
}

/** What the card is told beside the batch. */
export interface CardWishes {
  readonly about: string;
  readonly date: string;
  readonly files: readonly CardFile[];
  readonly said: string;
  /** Loads to print, from 1; all where none are named. */
  readonly loads: readonly number[];
  readonly units: UnitSystem;
  /** Other answers for the same batch, where there are any: the water of a load, the sheet, the day. */
  readonly water?: Published<DoughWater>;
  readonly sheet?: SheetPlan;
  readonly day?: DayPlan;
  /** Notes that came with the batch and with the other answers. */
  readonly notes: readonly Note[];
}

/** Notes that a cook has to know at the bench; the others are about how a figure was found. */
const notesOfTheBench: ReadonlySet<string> = new Set([
  "sheet.portions-short",
  "plan.rolling-too-short",
  "temperature.ice-melts",
  "temperature.much-ice",
  "card.no-answer",
  "alkali.product",
  "rework.rule",
  "solutions.reaction",
]);

/** Puts a card together from a batch and from what else was worked out for it. */
export function card(spec: Spec, formula: Formula, batch: Batch, wishes: CardWishes): Card {
  const { units, water, sheet, day } = wishes;
  const count = dec(batch.loads.count.value).toNumber();
  const all = Array.from({ length: count }, (_, index) => index + 1);
  const loads = { shown: wishes.loads.length === 0 ? all : wishes.loads, of: count };
  const makeUp = makeUpSection(batch);
  const iced = icedWater(water, batch);
  const bench = [water && waterSection(water, batch, iced, units), day && daySection(day, units)];
  return {
    title: formula.name,
    about: [
      ...wishes.about.split("\n").flatMap((line) => (line.trim() === "" ? [] : [line.trim()])),
      ...recordedLines(formula),
    ],
    date: wishes.date,
    files: wishes.files,
    said: wishes.said,
    facts: factsOf(batch, units),
    weights: loadWeights(batch, loads, iced),
    ...(makeUp && { makeUp }),
    bench: bench.filter((section) => section !== undefined),
    machine: sheet ? sheetSections(sheet, units) : [],
    allergens: allergenLines(formula),
    notes: wishes.notes.filter(({ code, loud }) => loud || notesOfTheBench.has(code)).map(toldIn(units)),
    cautions: [...formulaCautions(formula), ...sheetCautions(hazardsOf(spec)).map(told)],
  };
}

/** Care that the work of the spec calls for, whether or not it could be worked out. */
function hazardsOf({ sheet, plan, dusting }: Spec): readonly SheetHazard[] {
  const rolled = sheet ?? plan?.roll ?? plan?.compound;
  const works: readonly (readonly [SheetHazard, unknown])[] = [
    ["rolls", rolled],
    ["cutter", sheet ?? plan?.cut],
    ["dust", rolled ?? dusting],
    ["pot", plan?.boil],
    ["standing-dough", plan],
  ];
  return works.flatMap(([hazard, work]) => (work === undefined ? [] : [hazard]));
}

function factsOf({ target, loads }: Batch, units: UnitSystem): readonly Fact[] {
  const several = dec(loads.count.value).gt(1) ? [loads.count, loads.dough] : [];
  const figures = [target.bowls, target.rawWeight, target.cookedWeight, target.dough, ...several];
  return figures.flatMap((figure) => {
    if (figure === undefined) return [];
    const large = figure.unit === "g" && units === "metric" && dec(figure.value).gte(KILOGRAMS_FROM);
    const shown = large ? inUnit(figure, "kg", Math.max(2, figure.places + 3)) : inSystem(figure, units);
    return [{ label: shown.label, value: `${shownGrouped(shown)} ${shown.unit}`.trim() }];
  });
}

/** Whether a text is a day of the calendar. @example isDay("2026-02-30") // => false */
export function isDay(text: string): boolean {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(text)?.slice(1) ?? [];
  const [year = 0, month = 0, day = 0] = parts.map(Number);
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return days !== undefined && day >= 1 && day <= days;
}
