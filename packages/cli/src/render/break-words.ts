import textWidth from "string-width";

/** Breaks the words of a text that are wider than a column: after a hyphen, or where there is none, anywhere. */
export function breakWords(text: string, width: number): string {
  return text
    .split(" ")
    .map((word) => (textWidth(word) <= width ? word : pieces(word, width).join("\n")))
    .join(" ");
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
