/** A line as somebody wrote it, with its number from 1, and the same in plain characters. */
export interface WrittenLine {
  readonly number: number;
  /** In plain characters, for reading and for a comment. */
  readonly text: string;
  /** Of a row of a table, which: from 1, and 0 where it has no head. */
  readonly table?: number;
  /** The whole sentence of which it is a part, where that tells what to do with an ingredient. */
  readonly sentence?: string;
}

/** Most lines and letters of a line that are looked at. */
export const mostLines = 400;
const mostLetters = 300;
export const mostText = mostLines * mostLetters;
export const lineEnds = /\r\n|[\n\r\u0085\u2028\u2029]/u;

/**
 * The lines of a text in plain characters: full-width digits, narrow and fixed spaces, fractions in one sign, curly
 * quotes and dashes as on a typewriter. Tabs stay, for they part columns. Empty lines are left out.
 *
 * @example plainLines("１ ½ kg")[0]?.text // => "1 1/2 kg"
 */
export function plainLines(text: string): readonly WrittenLine[] {
  return text
    .slice(0, mostText)
    .split(lineEnds)
    .map((line, index) => ({ number: index + 1, text: plainLine(line) }))
    .filter((line) => line.text.trim() !== "");
}

/** A line in plain characters. @example plainLine("１ ½ kg") // => "1 1/2 kg" */
export function plainLine(line: string): string {
  return line
    .slice(0, mostLetters)
    .replace(/[^\S\t]?([¼-¾⅐-⅞])[^\S\t]?/gu, (_, sign: string) => ` ${sign.normalize("NFKC").replace("⁄", "/")} `)
    .normalize("NFKC")
    .replace(/⁄/gu, "/")
    .replace(/[‐‑‒–—―−〜]/gu, "–")
    .replace(/[‘’ʼ]/gu, "'")
    .replace(/[“”„«»]/gu, '"')
    .replace(/[×✕✖]/gu, "x")
    .replace(/、/gu, ", ")
    .replace(/[^\S\t]/gu, " ")
    .replace(/(?!\t)[\p{C}]/gu, "")
    .replace(/ +(?=\t)|(?<=\t) +/gu, "")
    .replace(/(?<=\d) {2,}(?=\d)/gu, "\t")
    .replace(/ +/gu, " ")
    .replace(/^ +|\s+$/gu, "");
}

const measure =
  "(?:(?:heaped|level|small|large|big|good|generous) )?(?:(?:tea|table)?spoon|cup|pinch|dash|handful|knob|pack|sachet|drop)";

/** Numbers in words. */
const numberWords: Readonly<Record<string, number>> = Object.fromEntries([
  ..."one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen"
    .split(" ")
    .map((word, index) => [word, index + 1] as const),
  ..."twenty thirty forty fifty sixty seventy eighty ninety".split(" ").map((word, index) => [word, 20 + 10 * index]),
  ["a", 1],
  ["an", 1],
]);
const manyWords: Readonly<Record<string, number>> = { dozen: 12, hundred: 100, thousand: 1000 };
const partWords: Readonly<Record<string, number>> = { half: 2, third: 3, quarter: 4, fifth: 5, eighth: 8 };

const anyOf = (words: Readonly<Record<string, number>>): string => Object.keys(words).join("|");
const parts = `(?:${anyOf(partWords).replace("half", "half|halve")})s?`;
/** What is counted in words: what is measured, and eggs. */
const counted = String.raw`(?=(?:of )?(?:an? )?(?:${measure}|(?:milli|centi|deci)?lit(?:er|re)|(?:kilo|milli)?gram|kilo|k?g|ml|lb|oz|pound|ounce|fluid ounce|pint|quart|tsp|tbsp|part|(?:large |medium |small )?(?:whole )?(?:egg|yolk))(?:s|ful|fuls)?(?!\p{L}))(?:of )?(?:an? )?`;
const inWords = String.raw`(?:\d+|(?:${anyOf(numberWords)})(?:[ -](?:and )?(?:${anyOf(numberWords)}|${anyOf(manyWords)}))*)`;
const wordedNumber = new RegExp(
  String.raw`(?<![\p{L}\p{N}.,/]|half )(?:(?<whole>${inWords}) and (?:a )?(?<beside>${parts}) |(?<half>half )|(?<times>${inWords}) ?(?<part>${parts}) |(?<count>(?:${anyOf(numberWords)})(?:[ -](?:and )?(?:${anyOf(numberWords)}|${anyOf(manyWords)}))*) )${counted}`,
  "giu",
);
/** `a kilo and a half` is `one and a half kilos`. */
const halfBehind = new RegExp(
  String.raw`(?<![\p{L}\p{N}.,/])(${inWords}) (\p{L}+) and (a (?:half|quarter|third))(?= of | ?$|,)`,
  "giu",
);

function numberIn(words: string): number {
  let [whole, part] = [0, 0];
  for (const word of words.toLowerCase().split(/[ -]/u)) {
    const many = manyWords[word];
    if (many === undefined) part += numberWords[word] ?? (Number(word) || 0);
    else if (many === 1000) [whole, part] = [whole + Math.max(1, part) * many, 0];
    else part = Math.max(1, part) * many;
  }
  return whole + part;
}

/** A line with digits for the numbers in words that count a measure or eggs. @example wordsInDigits("a third of a cup") // => "1/3 cup" */
export function wordsInDigits(line: string): string {
  const under = (word: string): number =>
    partWords[
      word
        .toLowerCase()
        .replace(/^halve/u, "half")
        .replace(/s$/u, "")
    ] ?? 1;
  return line
    .replace(/half a dozen/giu, "six")
    .replace(halfBehind, "$1 and $3 $2")
    .replace(wordedNumber, (...match) => {
      const { whole, beside, half, times, part, count } = match.at(-1) as Readonly<Record<string, string | undefined>>;
      if (whole !== undefined && beside !== undefined) return `${numberIn(whole)} 1/${under(beside)} `;
      if (half !== undefined) return "1/2 ";
      if (times !== undefined && part !== undefined) return `${numberIn(times)}/${under(part)} `;
      return `${numberIn(count ?? "")} `;
    });
}

/** A measure without a number, where an amount stands: `pinch of salt`, `salt: pinch`. */
const bareMeasure = new RegExp(
  String.raw`(?<=^\W*|[:=,\t–-] ?)(?=pinch(?!\p{L})|${measure}(?:s|ful|fuls)? of |(?:pinch|dash|handful|knob)$)`,
  "iu",
);

/**
 * A line for reading: without leading dots, with digits for the words that count a measure.
 *
 * @example inDigits("salt ..... a pinch") // => "salt 1 pinch"
 */
export function inDigits(line: string): string {
  return wordsInDigits(line.replace(/ ?\.{2,} ?/gu, " "))
    .replace(/(?<=\d) (?:and|&|\+) (?=\d+\/\d)/giu, " ")
    .replace(/(?<![\d.,])(\d{1,3}) ?kg ?(\d{3})(?![\d.,]| ?[%\p{L}])/giu, "$1$2 g")
    .replace(/(\d ?%) (?:of|on) (?:the )?(?:total )?flour(?: weight)?(?!\p{L})/iu, "$1")
    .replace(/(大さじ|小さじ|大匙|小匙|カップ) ?(\d+(?: ?\/ ?\d+)?)/gu, "$2 $1 ")
    .replace(bareMeasure, "1 ")
    .trim();
}
