import type { Card } from "../card/card.ts";
import type { CardWeights } from "../card/card-weights.ts";
import { type Note, note } from "../figure/problem.ts";
import type { Block, Section } from "../report/schema.ts";
import type { Paper } from "./card-style.ts";

/** Printable height of a sheet of paper at the card's margins, px at 96 to the inch. */
const pageHeight: Readonly<Record<Paper, number>> = { a4: 1054, letter: 987 };

/** Heights as the card's style prints them, px. */
const title = 50;
const heading = 25;
const tableHead = 22;
const tableRow = 22;
const weightRow = 37;
const signRow = 36;
const figuresRow = 34;
const textLine = 17;
const smallLine = 12.5;
const picture = 160;
/** Letters of a line. */
const lettersOfLine = 100;
const lettersOfCell = 44;
const lettersOfName = 24;
const lettersOfScale = 32;
const lettersOfCaution = 40;
const cautionsBeside = 3;
const figuresBeside = 7;
const loadsBeside = 4;

/** Pages that a card is promised to fit on. */
const promised = 2;

/**
 * What to say of a card that may take more pages than promised: nothing is ever cut off.
 *
 * @example longCard(askCard(example("school-noodle"), { date: "2026-11-25" }).value.card, "a4") ?? "short enough" // => "short enough"
 */
export function longCard(card: Card, paper: Paper): Note<"card.long"> | undefined {
  const pages = mostPages(card, paper);
  if (pages <= promised) return undefined;
  return note("card.long", [], { pages, loads: card.weights.loads.length > loadsBeside ? "many" : "few" });
}

/**
 * How many pages a card may take: its parts are laid on pages as a browser does it, which keeps most of them whole.
 *
 * @example mostPages(askCard(example("school-noodle"), { date: "2026-11-25" }).value.card, "a4") // => 2
 */
export function mostPages(card: Card, paper: Paper): number {
  const height = pageHeight[paper];
  let pages = 1;
  let left = height;
  for (const part of [...wholeParts(card), tailHeight(card)]) {
    if (part > left) {
      pages += Math.max(1, Math.ceil(part / height));
      left = height - (part % height);
    } else left -= part;
  }
  return pages;
}

/** Heights of what does not break over pages, in the order of the card. */
function wholeParts(card: Card): readonly number[] {
  const { facts, weights, makeUp, bench, machine, allergens } = card;
  const said = linesOf([...card.about, card.said], lettersOfLine) * textLine;
  const narrow = weights.of <= timesBeside && bench.some(({ id }) => id === "loads");
  const names = rowsOf(card.title.length, lettersOfLine / 2) * title;
  return [
    names + said + heading + linesOf([allergens.join(" ")], lettersOfLine) * textLine,
    rowsOf(facts.length, figuresBeside) * figuresRow,
    ...weightHeights(weights),
    ...[...(makeUp ? [makeUp] : []), ...bench, ...machine]
      .filter(({ id }) => !narrow || id !== "passes")
      .flatMap(sectionHeights),
  ];
}

/** Most loads whose times stand beside the passes, which take no more height then. */
const timesBeside = 3;

/** Notes, cautions and the foot. */
function tailHeight({ notes, cautions, files }: Card): number {
  const noted = notes.length === 0 ? 0 : heading + linesOf(notes, lettersOfLine) * textLine;
  const cautioned = heading + Math.ceil(linesOf(cautions, lettersOfCaution) / cautionsBeside) * smallLine;
  return noted + cautioned + (2 + files.length) * smallLine;
}

function weightHeights({ rows, loads }: CardWeights): readonly number[] {
  const [first = 0, ...more] = rows.map(
    ({ name, scale }) =>
      weightRow + furtherLines(name, lettersOfName) * textLine + furtherLines(scale, lettersOfScale) * smallLine,
  );
  const one = [heading + tableHead + first, ...more, signRow + textLine];
  return Array.from({ length: rowsOf(loads.length, loadsBeside) }, () => one).flat();
}

function furtherLines(text: string, letters: number): number {
  return Math.max(0, rowsOf(text.length, letters) - 1);
}

/** The heading stays with what follows it. */
function sectionHeights({ id, blocks }: Section): readonly number[] {
  const [first = 0, ...more] = blocks.flatMap(blockHeights);
  return [heading + first + (id === "water" ? textLine : 0), ...more];
}

function blockHeights(block: Block): readonly number[] {
  switch (block.kind) {
    case "table":
      return [
        tableHead,
        ...block.rows.map(
          ({ cells }) => Math.max(...cells.map(({ text }) => rowsOf(text.length, lettersOfCell)), 1) * tableRow,
        ),
      ];
    case "text":
      return [linesOf(block.lines, lettersOfLine) * textLine];
    case "figures":
    case "working":
      return [rowsOf(block.figures.length, figuresBeside) * figuresRow];
    case "picture":
      return [picture];
  }
}

function linesOf(texts: readonly string[], letters: number): number {
  return texts.reduce((sum, text) => sum + rowsOf(text.length, letters), 0);
}

function rowsOf(count: number, beside: number): number {
  return Math.ceil(count / beside);
}
