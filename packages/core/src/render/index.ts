// The door to print an answer: reports and cards as text.

export { isDay } from "../card/card.ts";
export { inSystem, shownGrouped } from "../figure/in-system.ts";
export { printable } from "../figure/printable.ts";
export { onlyFigure, toldNote, withWorking } from "../report/build.ts";
export { escapeMarkup } from "../report/pictures/svg.ts";
export type { Block, Cell, Section, Table } from "../report/schema.ts";
export { weightCell } from "../report/show.ts";
export { withWords } from "../report/words-report.ts";
export { checksumOf, renderCard } from "./card-html.ts";
export { longCard, mostPages } from "./card-pages.ts";
export type { Paper } from "./card-style.ts";
export { renderCsv } from "./csv.ts";
export { page, renderHtml } from "./html.ts";
export { byLoudness, type Head } from "./loud.ts";
export { renderMarkdown } from "./markdown.ts";
export { ownMark } from "./own-mark.ts";
export { printableData, printableJson, printableReport } from "./printable.ts";
export type { Rendering } from "./rendering.ts";
export { renderSvg } from "./svg.ts";
export {
  addressOf,
  type CellRole,
  columnLetters,
  type DefinedName,
  type InputLimits,
  type Workbook,
  type WorkbookCell,
  type WorkbookSheet,
} from "./workbook/cells.ts";
export { workings } from "./working.ts";
