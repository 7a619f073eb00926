import { textWidth } from "./text-width.ts";
import { lineEnds, wrapText } from "./wrap.ts";

/** A column of a grid: how wide it is, and to which side its texts go. */
export interface Column {
  readonly width: number;
  readonly align: "left" | "right";
}

/** Blanks between two columns. */
export const gap = 2;

/** The lines of a row: each text broken to fit its column, the columns side by side. */
export function gridLines(texts: readonly string[], columns: readonly Column[]): readonly string[] {
  const cells = columns.map(({ width }, column) => fitted(texts[column] ?? "", width));
  const height = Math.max(...cells.map((lines) => lines.length));
  return Array.from({ length: height }, (_, line) =>
    columns.map((column, index) => padded(cells[index]?.[line] ?? "", column)).join(" ".repeat(gap)),
  );
}

function padded(text: string, { width, align }: Column): string {
  const blanks = " ".repeat(Math.max(0, width - textWidth(text)));
  return align === "left" ? text + blanks : blanks + text;
}

/** Lines no wider than a column: broken at spaces, within a word after a hyphen, or where there is none, anywhere. */
function fitted(text: string, width: number): readonly string[] {
  if (textWidth(text) <= width) return [text];
  const broken = text.split(lineEnds).map((word) => (textWidth(word) <= width ? word : pieces(word, width).join("\n")));
  return broken
    .join(" ")
    .split("\n")
    .flatMap((line) => wrapText(line, width));
}

function pieces(word: string, width: number): readonly string[] {
  const parts = word.split(/(?<=-)/u).flatMap((part) => (textWidth(part) <= width ? [part] : [...part]));
  const lines: string[] = [];
  let line = "";
  for (const part of parts) {
    if (line !== "" && textWidth(line + part) > width) {
      lines.push(line);
      line = part;
    } else line += part;
  }
  return [...lines, line];
}
