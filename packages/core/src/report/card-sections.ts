import type { Block, Report, Section } from "./schema.ts";

/** What the card takes over from the answer about the sheet: the sections, and of their figures those to work by. */
const shownSections: ReadonlySet<string> = new Set(["passes", "sheets"]);

const shownFigures: ReadonlySet<string> = new Set([
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

/** The sections about the sheet that belong on paper, less the figures that nobody works by; pictures first. */
export function sheetSections({ sections }: Report): readonly Section[] {
  return sections
    .filter(({ id }) => shownSections.has(id))
    .map((section) => ({ ...section, blocks: picturesFirst(section.blocks.flatMap(paperBlocks)) }))
    .filter(({ blocks }) => blocks.length > 0);
}

function paperBlocks(block: Block): readonly Block[] {
  if (block.kind !== "figures") return [block];
  const figures = block.figures.filter(({ id }) => shownFigures.has(id));
  return figures.length > 0 ? [{ ...block, figures }] : [];
}

function picturesFirst(blocks: readonly Block[]): readonly Block[] {
  return [...blocks.filter(({ kind }) => kind === "picture"), ...blocks.filter(({ kind }) => kind !== "picture")];
}
