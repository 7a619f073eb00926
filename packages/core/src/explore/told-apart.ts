/**
 * Keys with which of its like each is before them: so of two lists the first of one key meets the first, the second the second.
 *
 * @example toldApart(["rye", "salt", "rye"]) // => ["1 rye", "1 salt", "2 rye"]
 */
export function toldApart(keys: readonly string[]): readonly string[] {
  const seen = new Map<string, number>();
  return keys.map((key) => {
    const nth = (seen.get(key) ?? 0) + 1;
    seen.set(key, nth);
    return `${nth} ${key}`;
  });
}
