import { ownProblem } from "./problem.ts";
import { plainText, type TextOrNot } from "./read-file.ts";

/**
 * A formula that somebody wrote down: the text of a text file, each cell of a table on one line, or the lines of a workbook;
 * a problem where it is a workbook that cannot be read.
 */
export async function writtenFormula(bytes: Uint8Array, name = ""): Promise<TextOrNot> {
  if (!isPacked(bytes) && !/\.xlsx$/iu.test(name)) return wideText(bytes)?.replace(quotedCell, onOneLine);
  const { linesOfWorkbook } = await import("./workbook-lines.ts");
  const lines = linesOfWorkbook(bytes);
  return typeof lines === "string" ? lines : ownProblem("file.workbook", { why: lines.why });
}

/** What a workbook does not hold of a spec. */
export const notInWorkbook =
  "a workbook holds no sheeting, temperatures, plan or machines, and of own materials no allergens and nutrition but those of wheat: write them in anew";

/** The spec of a workbook that was written here; undefined where the bytes are none. */
export async function writtenBook(bytes: Uint8Array): Promise<Readonly<Record<string, unknown>> | undefined> {
  return isPacked(bytes) ? (await import("./workbook-spec.ts")).specOfWorkbook(bytes) : undefined;
}

function isPacked(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b;
}

/** A text in UTF-8, or in UTF-16 where its first bytes say so, as spreadsheets write it. */
function wideText(bytes: Uint8Array): string | undefined {
  const [first, second] = bytes;
  const wide =
    first === 0xff && second === 0xfe ? "utf-16le" : first === 0xfe && second === 0xff ? "utf-16be" : undefined;
  if (wide === undefined) return plainText(bytes);
  try {
    return new TextDecoder(wide, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

const quotedCell = /(?<=^|[,;\t])"[^"]{1,300}"(?=[ ]*(?:[,;\t\r\n]|$))/gmu;

function onOneLine(cell: string): string {
  return cell.replace(/\s*[\r\n]\s*/gu, " ");
}
