/** A name brought to what counts in it: letters, digits, `.` and `%`, in lower case, ß as ss. @example plainName("Bread  Flour") // => "breadflour" */
export function plainName(name: string): string {
  if (/^[ -~]*$/u.test(name)) return name.toLowerCase().replace(/[^a-z0-9.%]+/gu, "");
  return name
    .normalize("NFKC")
    .toLowerCase()
    .replaceAll("ß", "ss")
    .replace(/[^\p{L}\p{N}.%]/gu, "");
}

/** The words of a name, in lower case. @example wordsOf("Soft flour, grade 1") // => ["soft", "flour", "grade", "1"] */
export function wordsOf(name: string): readonly string[] {
  return name.toLowerCase().match(/[\p{L}\p{N}.%]+/gu) ?? [];
}

/** Most letters and words of a name, and most names, that are looked at: what is longer only takes time. */
const mostLooked = { letters: 60, words: 8, names: 500 };

/**
 * The names most like a name, best first; those that have nothing to do with it are left out.
 *
 * Counted are the letters to change between each word and its best counterpart, so that both a slip of the finger and
 * another order of words find their name. A word that few of the names have tells more than one that many have: spelt flour
 * is rather spelt than another flour, and where a tenth of the names or fewer have it, only those are taken. Names that are
 * all but the same run together are near, however they are divided. The first five hundred names are looked at.
 *
 * @param most - how many at most
 * @example nearestNames("flour bread", ["rye flour", "bread flour", "salt"]) // => ["bread flour"]
 */
export function nearestNames(name: string, names: readonly string[], most = 3): readonly string[] {
  const looked = [...new Set(names.slice(0, mostLooked.names))];
  const sought = name.slice(0, mostLooked.letters);
  const unlikeness = unlikenessTo(sought, looked);
  const telling = tellingNames(sought, looked);
  return telling
    .map((candidate) => ({ candidate, distance: unlikeness(candidate) }))
    .filter(({ distance }) => distance <= (telling === looked ? 0.5 : 0.6))
    .sort((a, b) => a.distance - b.distance || a.candidate.length - b.candidate.length || compare(a, b))
    .slice(0, most)
    .map(({ candidate }) => candidate);
}

function compare(a: { readonly candidate: string }, b: { readonly candidate: string }): number {
  return a.candidate < b.candidate ? -1 : 1;
}

/** Whether a word stands in a name; its letters are looked for first, which is quick. */
function hasWord(name: string, word: string): boolean {
  return name.toLowerCase().includes(word) && wordsOf(name.slice(0, mostLooked.letters)).includes(word);
}

/** The names that have the rarest word that was asked for and that any has, where few have it; else all. */
function tellingNames(sought: string, names: readonly string[]): readonly string[] {
  const having = wordsOf(sought)
    .slice(0, mostLooked.words)
    .map((word) => names.filter((name) => hasWord(name, word)))
    .filter((some) => some.length > 0 && some.length * 10 <= names.length);
  return having.toSorted((one, other) => one.length - other.length)[0] ?? names;
}

/** Names that differ in no more of their letters are the same but for a slip, however they are divided into words. */
const slip = 0.25;

/** How unlike a name one of several is: from 0, the same, to 1, nothing in common. */
function unlikenessTo(sought: string, names: readonly string[]): (candidate: string) => number {
  const wholeDistance = distanceTo(plainName(sought));
  const words = wordsOf(sought).slice(0, mostLooked.words);
  const asked = words.map((word) => distanceTo(word));
  const weights = rarities(words, names);
  /** Names of one list share most of their words. */
  const known = new Map<string, readonly number[]>();
  const toEachAsked = (word: string): readonly number[] => {
    const distances = known.get(word) ?? asked.map((distance) => distance(word));
    known.set(word, distances);
    return distances;
  };
  return (name) => {
    const candidate = name.slice(0, mostLooked.letters);
    const whole = wholeDistance(plainName(candidate));
    const offered = wordsOf(candidate).slice(0, mostLooked.words).map(toEachAsked);
    if (asked.length === 0 || offered.length === 0) return whole;
    const fromOffered = mean(offered.map(least));
    const nearest = asked.map((_, index) => least(offered.map((distances) => distances[index] ?? 1)));
    const fromAsked = sum(nearest.map((distance, index) => distance * (weights[index] ?? 0))) / sum(weights);
    const byWords = (fromAsked * 3 + fromOffered) / 4;
    return whole <= slip ? Math.min(whole, byWords) : byWords;
  };
}

/** How much each word tells: the more, the fewer of the names have it. */
function rarities(words: readonly string[], names: readonly string[]): readonly number[] {
  if (words.length < 2) return words.map(() => 1);
  return words.map((word) => Math.log(1 + names.length / (1 + names.filter((name) => hasWord(name, word)).length)));
}

function least(values: readonly number[]): number {
  return values.reduce((one, other) => Math.min(one, other), 1);
}

/**
 * Letters to change, as a share of the longer of two texts; texts that differ in more than a share of them have nothing in
 * common, 1; of short words no more than one letter may differ. A count of the letters that they share tells most of those without a closer look.
 *
 * @example distanceTo("pottash")("potash").toFixed(2) // => "0.14"
 */
export function distanceTo(text: string, most = 0.5): (other: string) => number {
  const shared = sharedWith(text);
  return (other) => {
    if (text === other) return 0;
    const longest = Math.max(text.length, other.length);
    if (longest - shared(other) > most * longest) return 1;
    const distance = editDistance(text, other) / longest;
    return distance > (longest <= shortest ? mostOfShort : most) ? 1 : distance;
  };
}

/** Words of so few letters are alike where no more of them than this differ: one of three. */
const shortest = 3;
const mostOfShort = 0.34;

/** The most letters that a text can have in common with another one; a few rare ones count as the same. */
function sharedWith(text: string): (other: string) => number {
  const left = new Int16Array(128);
  const put = (from: string, at: number, more: number): number =>
    (left[from.charCodeAt(at) % 128] = (left[from.charCodeAt(at) % 128] ?? 0) + more);
  for (let i = 0; i < text.length; i += 1) put(text, i, 1);
  return (other) => {
    let shared = 0;
    for (let i = 0; i < other.length; i += 1) if (put(other, i, -1) >= 0) shared += 1;
    for (let i = 0; i < other.length; i += 1) put(other, i, 1);
    return shared;
  };
}

function mean(values: readonly number[]): number {
  return sum(values) / values.length;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** Letters to insert, delete, replace or swap with their neighbour to get from one text to the other. @example editDistance("bred", "bread") // => 1 */
export function editDistance(a: string, b: string): number {
  const row = (): Uint16Array => new Uint16Array(b.length + 1);
  let [before, last, next] = [row(), row(), row()];
  for (let j = 0; j <= b.length; j += 1) last[j] = j;
  for (let i = 1; i <= a.length; i += 1) {
    next[0] = i;
    for (let j = 1; j <= b.length; j += 1) {
      let least = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      least = Math.min(least, (last[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, (before[j - 2] ?? 0) + 1);
      next[j] = least;
    }
    [before, last, next] = [last, next, before];
  }
  return last[b.length] ?? 0;
}
