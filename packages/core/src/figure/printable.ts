/**
 * Control characters and the marks that turn the direction of writing: a terminal obeys them, whoever wrote them. Halves of
 * characters and what is none can stand in no markup.
 */
const unprintable = /[\p{Cc}\p{Cs}\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069\uFFFE\uFFFF]/gu;

/**
 * A text that a terminal prints and does not obey: each unprintable character is shown as one mark.
 *
 * @example printable("a\u0007b") // => "a·b"
 */
export function printable(text: string): string {
  return text.replace(unprintable, "·");
}
