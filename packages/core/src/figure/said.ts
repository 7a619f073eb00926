/**
 * What somebody wrote, in words; a long text is cut.
 *
 * @example said("12") // => "\"12\""
 */
export function said(input: unknown): string {
  if (input === undefined) return "nothing";
  if (input === null) return "nothing after the key";
  if (Array.isArray(input)) return `a list of ${input.length}`;
  if (typeof input === "object") return "a section with keys";
  const text = saidPlain(input);
  return typeof input === "string" ? `"${text.length > 60 ? `${text.slice(0, 57)}…` : text}"` : text;
}

/** Words as they stand in a sentence. @example inWords(["a", "b", "c"]) // => "a, b and c" */
export function inWords(words: readonly string[]): string {
  return [words.slice(0, -1).join(", "), ...words.slice(-1)].filter((part) => part !== "").join(" and ");
}

/** The same without quotes and as long as it is. @example saidPlain(12) // => "12" */
export function saidPlain(input: unknown): string {
  if (typeof input === "string") return input;
  // A whole number is written out, however large.
  if (typeof input === "number") return Number.isInteger(input) ? String(BigInt(input)) : String(input);
  if (typeof input === "bigint") return String(input);
  return JSON.stringify(input) ?? "something that is no data";
}
