import type { Block, Card, CardWeights, Section } from "@noodlewright/core";
import type { Paper } from "./card-style.ts";
import { printable } from "./printable.ts";

/** Printable height of a sheet of paper at the card's margins, px at 96 to the inch. */
const pageHeight: Readonly<Record<Paper, number>> = { a4: 1024, letter: 957 };

/** Heights as the card's style prints them, px; on the large side, since fonts differ. */
const heading = 36;
const tableHead = 24;
const tableRow = 23;
const weightRow = 42;
const figuresRow = 40;
const textLine = 22;
const cautionLine = 16;
const picture = 190;
/** Letters of a line, on the small side. */
const lettersOfLine = 84;
const lettersOfCell = 40;
const lettersOfCaution = 46;
const figuresBeside = 5;
const loadsBeside = 4;

/** Pages that a card is promised to fit on. */
const promised = 2;

/** What to say of a card that may take more pages than promised: nothing is ever cut off. */
export function lengthWarning(card: Card, paper: Paper): string | undefined {
  const pages = mostPages(card, paper);
  if (pages <= promised) return undefined;
  const advice = card.weights.loads.length > loadsBeside ? "; --loads prints fewer loads" : "";
  return `${printable(card.title)}: the card may take up to ${pages} pages${advice}.\n`;
}

/** How many pages a card may take at most; a print shows how many it takes. */
export function mostPages(card: Card, paper: Paper): number {
  const weights = [card.weights, ...(card.withStocks ? [card.withStocks] : [])];
  const sections = [...(card.makeUp ? [card.makeUp] : []), ...card.sections];
  const parts = [
    90 + linesOf([...card.about, card.said, card.title.repeat(2)], lettersOfLine) * textLine,
    rowsOf(card.facts.length, figuresBeside) * figuresRow,
    ...weights.map(weightsHeight),
    ...sections.map(sectionHeight),
    heading + linesOf(card.allergens, lettersOfLine) * textLine,
    card.notes.length === 0 ? 0 : heading + linesOf(card.notes, lettersOfLine) * textLine,
    heading + (linesOf(card.cautions, lettersOfCaution) / 2) * cautionLine,
    2 * textLine,
  ];
  return Math.ceil(parts.reduce((sum, part) => sum + part, 0) / pageHeight[paper]);
}

function weightsHeight({ rows, loads }: CardWeights): number {
  const lines = rows.reduce((sum, { name }) => sum + Math.max(0, rowsOf(name.length, 20) - 2), 0);
  const one = heading + tableHead + rows.length * weightRow + lines * textLine + textLine;
  return one * rowsOf(loads.length, loadsBeside);
}

function sectionHeight({ blocks }: Section): number {
  return heading + blocks.reduce((sum, block) => sum + blockHeight(block), 0);
}

function blockHeight(block: Block): number {
  switch (block.kind) {
    case "table":
      return block.rows.reduce(
        (sum, { cells }) =>
          sum + Math.max(...cells.map(({ text }) => rowsOf(text.length, lettersOfCell)), 1) * tableRow,
        tableHead,
      );
    case "text":
      return linesOf(block.lines, lettersOfLine) * textLine;
    case "figures":
    case "working":
      return rowsOf(block.figures.length, figuresBeside) * figuresRow;
    case "picture":
      return picture;
  }
}

function linesOf(texts: readonly string[], letters: number): number {
  return texts.reduce((sum, text) => sum + rowsOf(text.length, letters), 0);
}

function rowsOf(count: number, beside: number): number {
  return Math.ceil(count / beside);
}
