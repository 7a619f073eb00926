import { stripVTControlCharacters } from "node:util";
import { wrapText } from "./wrap.ts";

// The bundle puts these in place of the width and wrapping packages that the parser's help brings along: those set up a
// text segmenter of the whole of Unicode at every start, and the help of this command is plain words.

/** Columns that a plain text takes. */
export function stringWidth(text: string): number {
  return [...stripVTControlCharacters(text)].length;
}

/** Wraps plain text, line by line, its indent kept. */
export function wrapAnsi(text: string, columns: number): string {
  return text
    .split("\n")
    .map((line) => {
      const indent = /^\s*/u.exec(line)?.[0] ?? "";
      return wrapText(line.trim(), Math.max(1, columns - indent.length))
        .map((part) => indent + part)
        .join("\n");
    })
    .join("\n");
}

export { stripVTControlCharacters as stripAnsi };
