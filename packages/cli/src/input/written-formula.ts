import { ownProblem } from "./problem.ts";
import { plainText, type TextOrNot } from "./read-file.ts";
import type { BookSpec } from "./workbook-spec.ts";

/** A formula that somebody wrote down, and what there is to know of how it was read. */
interface Written {
  readonly text: TextOrNot;
  readonly remarks: readonly string[];
}

/**
 * A formula that somebody wrote down: the text of a text file, each cell of a table on one line, or the lines of a workbook;
 * a problem where it is a workbook that cannot be read.
 */
export async function writtenFormula(bytes: Uint8Array, name = ""): Promise<TextOrNot> {
  return (await written(bytes, name)).text;
}

/** The same, and of a workbook that was written here nothing: its spec is read for itself. */
export async function writtenOutsideBook(bytes: Uint8Array, name = ""): Promise<TextOrNot> {
  return (await writtenBook(bytes)) === undefined ? writtenFormula(bytes, name) : "";
}

/** What there is to know of how a formula was read: sheets that were left out, a column of notes. */
export async function writtenRemarks(bytes: Uint8Array): Promise<readonly string[]> {
  return (await written(bytes, "")).remarks;
}

/** The spec of a workbook that was written here; undefined where the bytes are none. */
export async function writtenBook(bytes: Uint8Array): Promise<BookSpec | undefined> {
  return isPacked(bytes) ? (await import("./workbook-spec.ts")).specOfWorkbook(bytes) : undefined;
}

async function written(bytes: Uint8Array, name: string): Promise<Written> {
  if (!isPacked(bytes) && !/\.xlsx$/iu.test(name)) {
    const text = wideText(bytes);
    const why = isOlder(bytes) ? "older" : ownHeading.test(text ?? "") ? "cells alone" : undefined;
    if (why !== undefined) return { text: ownProblem("file.workbook", { why }), remarks: [] };
    if (text === undefined) return { text, remarks: [] };
    return notesApart(text.replace(separatorLine, "").replace(quotedCell, onOneLine));
  }
  const { linesOfWorkbook } = await import("./workbook-lines.ts");
  const lines = linesOfWorkbook(bytes);
  if ("why" in lines) return { text: ownProblem("file.workbook", { why: lines.why }), remarks: [] };
  const { text, remarks } = notesApart(lines.text);
  const unread = lines.unread.map((sheet) => `"${sheet}"`).join(", ");
  return {
    text,
    remarks: unread === "" ? remarks : [`read from the sheet "${lines.sheet}"; not read: ${unread}`, ...remarks],
  };
}

/** The heading of the inputs on a first sheet that was written here, as a line of a table. */
const ownHeading = /[,;\t]"?change here"?[,;\t]"?unit"?[,;\t]"?in the spec"?[,;\t]/u;
/** What some spreadsheets put above a table to name what separates its cells. */
const separatorLine = /^\uFEFF?"?sep=.?"?\r?\n/iu;

/** Whether bytes begin as the compound files do in which older spreadsheets keep a workbook. */
function isOlder([first, second, third, fourth]: Uint8Array): boolean {
  return first === 0xd0 && second === 0xcf && third === 0x11 && fourth === 0xe0;
}

function isPacked(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b;
}

/** A text in UTF-8, or in UTF-16 where its first bytes say so, or every other of them is nothing: as spreadsheets write it. */
function wideText(bytes: Uint8Array): string | undefined {
  const [first = 0, second = 0] = bytes;
  const wide =
    (first === 0xff && second === 0xfe) || (first !== 0 && second === 0)
      ? "utf-16le"
      : (first === 0xfe && second === 0xff) || (first === 0 && second !== 0)
        ? "utf-16be"
        : undefined;
  if (wide === undefined || bytes.length < 4) return plainText(bytes);
  try {
    const text = new TextDecoder(wide, { fatal: true }).decode(bytes);
    return text.includes("\0") ? undefined : text;
  } catch {
    return undefined;
  }
}

const quotedCell = /(?<=^|[,;\t])"[^"]{1,300}"(?=[ ]*(?:[,;\t\r\n]|$))/gmu;

function onOneLine(cell: string): string {
  return cell.replace(/\s*[\r\n]\s*/gu, " ");
}

/** A table with what stands below a heading of notes taken out of its rows, and put below it as notes. */
function notesApart(text: string): { readonly text: string; readonly remarks: readonly string[] } {
  const rows = text.split(/\r?\n/u);
  const isNotes = (cell: string): boolean => /^"?\s*(?:notes?|comments?|remarks?)\s*"?$/iu.test(cell);
  const top = rows.findIndex(
    (row) =>
      !/\d/u.test(row) &&
      row
        .split(/[\t;,]/u)
        .slice(1)
        .some(isNotes),
  );
  const heading = rows[top] ?? "";
  const sign = ["\t", ";", ","].find((one) => heading.includes(one));
  if (sign === undefined) return { text, remarks: [] };
  const column = cellsOf(heading, sign).findIndex(isNotes);
  const notes: string[] = [];
  const left = rows.map((row, index) => {
    const cells = cellsOf(row, sign);
    const plain = (cell = ""): string => cell.trim().replace(/^"|"$/gu, "").replaceAll('""', "'");
    const note = index > top ? plain(cells[column]).replaceAll(sign, " –") : "";
    if (note !== "") notes.push(`${plain(cells.find((cell) => /\p{L}/u.test(cell)))}: ${note}`);
    return index < top ? row : cells.filter((_, at) => at !== column).join(sign);
  });
  if (notes.length === 0) return { text: left.join("\n"), remarks: [] };
  const named = cellsOf(heading, sign)[column]?.replaceAll('"', "").trim();
  return { text: [...left, "Notes", ...notes].join("\n"), remarks: [`the column "${named}" is kept as notes`] };
}

/** The cells of a row; what separates them may stand within quotes. */
function cellsOf(row: string, sign: string): readonly string[] {
  const cells = [""];
  let quoted = false;
  for (const letter of row) {
    if (letter === '"') quoted = !quoted;
    if (letter === sign && !quoted) cells.push("");
    else cells[cells.length - 1] += letter;
  }
  return cells;
}
