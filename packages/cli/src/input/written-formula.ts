import type { NoWorkbook } from "../render/problem-texts.ts";
import { ownProblem } from "./problem.ts";
import { isPacked, largest, largestWorkbook, plainText, type TextOrNot, tooLarge } from "./read-file.ts";
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

/** What there is to know of how a workbook was read: sheets and cells that were left out. */
export async function writtenRemarks(bytes: Uint8Array): Promise<readonly string[]> {
  return (await written(bytes, "")).remarks;
}

/** The spec of a workbook that was written here; undefined where the bytes are none. */
export async function writtenBook(bytes: Uint8Array): Promise<BookSpec | undefined> {
  return isPacked(bytes) ? (await import("./workbook-spec.ts")).specOfWorkbook(bytes) : undefined;
}

async function written(bytes: Uint8Array, name: string): Promise<Written> {
  const refused = (problem: NoWorkbook): Written => ({ text: ownProblem("file.workbook", problem), remarks: [] });
  if (bytes.length > largestWorkbook) return refused({ why: "too large" });
  if (isOlder(bytes)) return refused({ why: holds(bytes, "EncryptedPackage", 2) ? "locked" : "older" });
  if (!isPacked(bytes) && !/\.xlsx$/iu.test(name)) {
    if (bytes.length > largest) return { text: tooLarge(), remarks: [] };
    const plain = wideText(bytes);
    const text = plain ?? westernText(bytes);
    if (ownHeading.test(text ?? "")) return refused({ why: "cells alone" });
    const remarks = plain === undefined && text !== undefined ? [western] : [];
    return { text: text?.replace(quotedCell, (cell) => cell.replace(/\s*[\r\n]\s*/gu, " ")), remarks };
  }
  if (holds(bytes.subarray(0, 200), "application/vnd.oasis.opendocument", 1)) return refused({ why: "open document" });
  const { linesOfWorkbook } = await import("./workbook-lines.ts");
  const lines = linesOfWorkbook(bytes);
  return "why" in lines ? refused(lines) : lines;
}

/** Whether letters of so many bytes each stand in a file. */
function holds(bytes: Uint8Array, letters: string, width: number): boolean {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).includes(
    letters,
    0,
    width === 1 ? "latin1" : "utf16le",
  );
}

/** The heading of the inputs on a first sheet that was written here, as a line of a table. */
const ownHeading = /[,;\t]"?change here"?[,;\t]"?unit"?[,;\t]"?(?:as written|in the spec)"?[,;\t]/u;

/** Whether bytes begin as the compound files do in which older spreadsheets keep a workbook. */
function isOlder([first, second, third, fourth]: Uint8Array): boolean {
  return first === 0xd0 && second === 0xcf && third === 0x11 && fourth === 0xe0;
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

const western =
  "the letters are read as Windows-1252, as spreadsheets in Western Europe write a CSV: look at those with accents";

/** The letters of Windows-1252 from 0x80 on, a blank where it has none: WHATWG, Encoding Standard, index windows-1252. */
const westernLetters = "€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ";

/** A text in Windows-1252; nothing where control characters or many letters beyond ASCII in a row say that it is none. */
function westernText(bytes: Uint8Array): string | undefined {
  // Some versions of Node's own decoder give these letters as control characters.
  const text = Buffer.from(bytes)
    .toString("latin1")
    .replace(/[\x80-\x9f]/gu, (letter) => westernLetters[letter.charCodeAt(0) - 0x80]?.trim() || letter);
  return /[^\P{Cc}\t\r\n]|[^\p{ASCII}]{4}/u.test(text) ? undefined : text;
}

const quotedCell = /(?<=^|[,;\t|])"(?:[^"]|""){1,2000}"(?=[ ]*(?:[,;\t|\r\n]|$))/gmu;
