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

/** What there is to know of how a workbook was read: sheets that were left out. */
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
    return { text: text.replace(quotedCell, onOneLine), remarks: [] };
  }
  const { linesOfWorkbook } = await import("./workbook-lines.ts");
  const lines = linesOfWorkbook(bytes);
  if ("why" in lines) return { text: ownProblem("file.workbook", { why: lines.why }), remarks: [] };
  const unread = lines.unread.map((sheet) => `"${sheet}"`).join(", ");
  return {
    text: lines.text,
    remarks: unread === "" ? [] : [`read from the sheet "${lines.sheet}"; not read: ${unread}`],
  };
}

/** The heading of the inputs on a first sheet that was written here, as a line of a table. */
const ownHeading = /[,;\t]"?change here"?[,;\t]"?unit"?[,;\t]"?in the spec"?[,;\t]/u;

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

const quotedCell = /(?<=^|[,;\t|])"(?:[^"]|""){1,2000}"(?=[ ]*(?:[,;\t|\r\n]|$))/gmu;

function onOneLine(cell: string): string {
  return cell.replace(/\s*[\r\n]\s*/gu, " ");
}
