import stringWidth from "string-width";

/** Letters, figures and signs of one column each; a test holds them against the package that knows all letters. */
const narrow =
  /^[ -~\u00a0-\u00a8\u00aa-\u00ac\u00af-\u02ff\u2000-\u200a\u2010-\u2027\u2030-\u203b\u2070-\u20bf\u2200-\u22ff\u2500-\u257f]*$/u;

/** Columns that a text takes on a terminal. */
export function textWidth(text: string): number {
  return narrow.test(text) ? text.length : stringWidth(text);
}
