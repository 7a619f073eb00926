/** Breaks a text into lines at spaces; a word longer than a line keeps its own line. */
export function wrapText(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/u)) {
    if (line !== "" && [...line].length + 1 + [...word].length > width) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return line === "" && lines.length > 0 ? lines : [...lines, line];
}
