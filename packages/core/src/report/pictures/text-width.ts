/** Widths of a letter at the size of the pictures' text, px: generous, since the font is the reader's own. */
const letter = 9;
const wideLetter = 15;

/** Letters that fill a square: East Asian scripts and most pictographs. */
const wide =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60\uffe0-\uffe6]|[\u{10000}-\u{10ffff}]/u;

/** Most that a text is wide in a picture, px. @example textWidth("12.5 %") // => 54 */
export function textWidth(text: string): number {
  return [...text].reduce((width, one) => width + (wide.test(one) ? wideLetter : letter), 0);
}

/** A text as lines that are no wider than they may be; a word longer than a line is cut. */
export function wrapText(text: string, most: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/u).flatMap((whole) => cutWord(whole, most))) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer) > most) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}

function cutWord(word: string, most: number): readonly string[] {
  const pieces: string[] = [];
  let piece = "";
  for (const one of word) {
    if (piece !== "" && textWidth(piece + one) > most) {
      pieces.push(piece);
      piece = "";
    }
    piece += one;
  }
  return [...pieces, piece];
}
