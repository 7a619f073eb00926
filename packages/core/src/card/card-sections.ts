import { dec, ONE } from "../number/decimal.ts";
import { row, wordColumn } from "../report/build.ts";
import type { Block, Report, Section, Table } from "../report/schema.ts";
import { words } from "../report/show.ts";

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
]);

/** What is set and seen at the machine, the sheet drawn beside its thickness; the rest of the table is how it was found. */
const shownColumns: readonly string[] = [
  "pass",
  "work",
  "setting",
  "gap",
  "thickness",
  "drawn",
  "speed",
  "even",
  "time",
];

/** Signs of a bar as tall as the thickest sheet. */
const longestBar = 10;

/** The sections about the sheet that belong on paper, less what nobody works by; the sheet is drawn beside its passes. */
export function sheetSections({ sections }: Report): readonly Section[] {
  return sections
    .filter(({ id }) => shownSections.has(id))
    .map((section) => ({ ...section, blocks: section.blocks.flatMap(paperBlocks) }))
    .filter(({ blocks }) => blocks.length > 0);
}

function paperBlocks(block: Block): readonly Block[] {
  if (block.kind === "table") return [passesOf(block)];
  if (block.kind !== "figures") return [];
  const figures = block.figures.filter(({ id }) => shownFigures.has(id));
  return figures.length > 0 ? [{ ...block, figures }] : [];
}

/** The passes with a bar as long as the sheet is thick, to scale. */
function passesOf({ columns, rows, ...table }: Table): Table {
  const at = (id: string) => columns.findIndex((column) => column.id === id);
  const thick = rows.map(({ cells }) => dec(cells[at("thickness")]?.value ?? 0));
  const thickest = thick.reduce((most, one) => (one.gt(most) ? one : most), ONE);
  const bars = thick.map((one) => words("█".repeat(one.div(thickest).times(longestBar).round().toNumber())));
  const kept = shownColumns.filter((id) => id === "drawn" || at(id) !== -1);
  return {
    ...table,
    columns: kept.map((id) => columns[at(id)] ?? wordColumn(id, "")),
    rows: rows.flatMap(({ cells, role }, index) =>
      role === "total" && at("time") === -1
        ? []
        : [
            row(
              kept.map((id) => (id === "drawn" ? bars[index] : cells[at(id)]) ?? words("")),
              role,
            ),
          ],
    ),
  };
}
