import { textWidth } from "./text-width.ts";

/** Where a line may end: at blanks, but not between a number and its unit. */
export const lineEnds = /\s+(?!%|°|(?<=\d )(?:[km]?g|mm|m?L|meq|min|h)\b)/u;

/** Where a word may end in a narrow column: after a hyphen too. */
export const wordEnds = new RegExp(`${lineEnds.source}|(?<=-)`, "u");

/**
 * Breaks a text into lines at spaces; a word longer than a line keeps its own line. A text that is indented stays so, and
 * what follows of it is indented further, as YAML wants it.
 */
export function wrapText(text: string, width: number): readonly string[] {
  const indent = /^ */u.exec(text)?.[0] ?? "";
  if (indent === "") return wrapWords(text, width);
  return wrapWords(text.trim(), width - indent.length - 2).map(
    (line, index) => indent + (index === 0 ? "" : "  ") + line,
  );
}

function wrapWords(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(lineEnds)) {
    if (line !== "" && textWidth(line) + 1 + textWidth(word) > width) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return line === "" && lines.length > 0 ? lines : [...lines, line];
}
