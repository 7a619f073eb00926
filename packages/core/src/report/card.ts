import type { Batch } from "../batch/batch.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import type { Formula } from "../formula/formula.ts";
import { dec } from "../number/decimal.ts";
import { batchReport, finestDivision } from "./batch-report.ts";
import type { Report, Section } from "./schema.ts";
import { inSystem, shownGrouped, type UnitSystem, weightCell } from "./show.ts";

/** A card to hang by the machine: what to weigh and do, with room to tick and write. It is plain data. */
export interface Card {
  readonly title: string;
  readonly date: string;
  /** Short checksum of the spec, so that paper and file can be matched. */
  readonly checksum: string;
  /** What flags said in place of the spec. */
  readonly said: string;
  /** The size of the batch in a few words each. */
  readonly facts: readonly Fact[];
  readonly weights: CardWeights;
  /** Stock solutions, passes, cut, times and whatever else the spec has data for. */
  readonly sections: readonly Section[];
  readonly allergens: readonly string[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export interface Fact {
  readonly label: string;
  readonly value: string;
}

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

/** What the card is told beside the batch. */
export interface CardWishes {
  readonly date: string;
  readonly checksum: string;
  readonly said: string;
  /** Loads to print, from 1; all where none are named. */
  readonly loads: readonly number[];
  readonly units: UnitSystem;
  /** Other answers for the same batch: the water temperature, the sheet, the plan. */
  readonly reports: readonly Report[];
}

/** Sections of the batch that belong on paper. */
const shownOfBatch: ReadonlySet<string> = new Set(["remedies", "stock-weights"]);

/** What the card takes over from other answers: by command, the sections, and of their figures those to work by. */
const shownOfOthers: Readonly<Record<string, readonly string[]>> = {
  "water-temperature": ["water"],
  sheet: ["passes", "sheets"],
  plan: ["day", "loads"],
};
const shownFigures: ReadonlySet<string> = new Set([
  "water.temperature",
  "ice.mass",
  "ice.tap-water",
  "load.sheets",
  "sheet.mass",
  "sheet.length",
  "strand.width",
  "cut.length",
  "portion.mass",
  "portion.strands",
  "sheet.portions",
  "load.portions",
]);

function paperSections({ command, sections }: Report): readonly Section[] {
  const shown = sections.filter(({ id }) => shownOfOthers[command]?.includes(id) === true);
  return shown.map((section) => ({
    ...section,
    blocks: section.blocks.map((block) =>
      block.kind === "figures" ? { ...block, figures: block.figures.filter(({ id }) => shownFigures.has(id)) } : block,
    ),
  }));
}

/** Puts a card together from a batch and from what else was worked out for it. */
export function card(formula: Formula, batch: Batch, wishes: CardWishes): Card {
  const report = batchReport(formula, batch, [], wishes.units);
  const count = dec(batch.loads.count.value).toNumber();
  const all = Array.from({ length: count }, (_, index) => index + 1);
  return {
    title: formula.name,
    date: wishes.date,
    checksum: wishes.checksum,
    said: wishes.said,
    facts: factsOf(batch, wishes.units),
    weights: {
      unit: batch.lines[0]?.unit ?? "g",
      rows: rowsOf(batch),
      loads: wishes.loads.length === 0 ? all : wishes.loads,
      of: count,
    },
    sections: [...report.sections.filter(({ id }) => shownOfBatch.has(id)), ...wishes.reports.flatMap(paperSections)],
    allergens: allergenLines(report),
    notes: batch.lines.filter(({ lots }) => lots > 1).map(lotText),
    cautions: [...new Set([report, ...wishes.reports].flatMap(({ cautions }) => cautions))],
  };
}

function factsOf(batch: Batch, units: UnitSystem): readonly Fact[] {
  const { target, loads } = batch;
  const figures = [target.bowls, target.rawWeight, target.cookedWeight, target.dough, loads.count, loads.dough];
  return figures.flatMap((figure) => {
    if (figure === undefined) return [];
    const shown = inSystem(figure, units);
    return [{ label: shown.label, value: `${shownGrouped(shown)} ${shown.unit}`.trim() }];
  });
}

function rowsOf(batch: Batch): readonly CardRow[] {
  const unit = batch.lines[0]?.unit ?? "g";
  const one = (weighed: WeighedLine, role: CardRow["role"], name: string): CardRow => ({
    name,
    weight: weightCell(weighed.load, weighed.unit, weighed.division).text,
    scale: weighed.scale,
    role,
  });
  const finest = finestDivision(batch.lines);
  return [
    ...batch.lines.map((weighed) => one(weighed, "item", weighed.line.name)),
    { name: "dough", weight: weightCell(batch.loadTotal, unit, finest).text, scale: "", role: "total" },
    ...(batch.dusting ? [one(batch.dusting, "aside", `${batch.dusting.line.name}, for dusting`)] : []),
  ];
}

function lotText({ line, lots }: WeighedLine): string {
  return `${line.name}: weigh each load in ${lots} lots`;
}

function allergenLines(report: Report): readonly string[] {
  const section = report.sections.find(({ id }) => id === "allergens");
  return section?.blocks.flatMap((block) => (block.kind === "text" ? block.lines : [])) ?? [];
}
