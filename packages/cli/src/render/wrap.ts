import { textWidth } from "./text-width.ts";

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
  for (const word of text.split(/\s+/u)) {
    if (line !== "" && textWidth(line) + 1 + textWidth(word) > width) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return line === "" && lines.length > 0 ? lines : [...lines, line];
}
