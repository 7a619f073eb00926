import { plainText } from "./read-file.ts";

/** A formula that somebody wrote down: the text of a text file, or the lines of a workbook; undefined where it is neither. */
export async function writtenFormula(bytes: Uint8Array): Promise<string | undefined> {
  const packed = bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;
  if (!packed) return plainText(bytes);
  const { linesOfWorkbook } = await import("./workbook-lines.ts");
  return linesOfWorkbook(bytes);
}
