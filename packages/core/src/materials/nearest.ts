/** A name brought to what counts in it: letters, digits, `.` and `%`, in lower case. @example plainName("Bread  Flour") // => "breadflour" */
export function plainName(name: string): string {
  return name
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}.%]/gu, "");
}

/** The words of a name, in lower case. @example wordsOf("Soft flour, grade 1") // => ["soft", "flour", "grade", "1"] */
export function wordsOf(name: string): readonly string[] {
  return name.toLowerCase().match(/[\p{L}\p{N}.%]+/gu) ?? [];
}

const LONGEST = 60;

/**
 * The names most like a name, best first; those that have nothing to do with it are left out.
 *
 * Counted are the letters to change between the whole names, and between each word and its best counterpart, so that
 * both a slip of the finger and another order of words find their name.
 *
 * @param most - how many at most
 * @example nearestNames("flour bread", ["rye flour", "bread flour", "salt"]) // => ["bread flour", "rye flour"]
 */
export function nearestNames(name: string, names: readonly string[], most = 3): readonly string[] {
  const sought = name.slice(0, LONGEST);
  return [...new Set(names)]
    .map((candidate) => ({ candidate, distance: unlikeness(sought, candidate) }))
    .filter(({ distance }) => distance <= 0.5)
    .sort((a, b) => a.distance - b.distance || a.candidate.length - b.candidate.length || compare(a, b))
    .slice(0, most)
    .map(({ candidate }) => candidate);
}

function compare(a: { readonly candidate: string }, b: { readonly candidate: string }): number {
  return a.candidate < b.candidate ? -1 : 1;
}

/** From 0, the same, to 1, nothing in common. */
function unlikeness(sought: string, candidate: string): number {
  const whole = relativeDistance(plainName(sought), plainName(candidate));
  const [asked, offered] = [wordsOf(sought), wordsOf(candidate)];
  if (asked.length === 0 || offered.length === 0) return whole;
  const distances = asked.map((word) => offered.map((other) => relativeDistance(word, other)));
  const fromAsked = mean(distances.map((row) => Math.min(...row)));
  const fromOffered = mean(offered.map((_, column) => Math.min(...distances.map((row) => row[column] ?? 1))));
  return Math.min(whole, (fromAsked * 3 + fromOffered) / 4);
}

function mean(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0) / values.length;
}

/** Texts of which one is more than twice as long as the other count as having nothing in common. */
function relativeDistance(a: string, b: string): number {
  if (a === b) return 0;
  const longest = Math.max(a.length, b.length);
  return Math.abs(a.length - b.length) * 2 > longest ? 1 : editDistance(a, b) / longest;
}

/** Letters to insert, delete, replace or swap with their neighbour to get from one text to the other. @example editDistance("bred", "bread") // => 1 */
export function editDistance(a: string, b: string): number {
  const width = b.length + 1;
  const rows = new Uint16Array(3 * width);
  for (let j = 0; j < width; j += 1) rows[j] = j;
  const at = (row: number, column: number): number => rows[(row % 3) * width + column] ?? 0;
  for (let i = 1; i <= a.length; i += 1) {
    rows[(i % 3) * width] = i;
    for (let j = 1; j < width; j += 1) {
      let least = Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, at(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, at(i - 2, j - 2) + 1);
      rows[(i % 3) * width + j] = least;
    }
  }
  return at(a.length, b.length);
}
