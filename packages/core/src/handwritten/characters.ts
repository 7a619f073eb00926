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

const countedMeasure = new RegExp(String.raw`(?<![\p{L}\p{N}])(?:an?|one) (?=${measure})`, "iu");
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
  return line
    .replace(/ ?\.{2,} ?/gu, " ")
    .replace(/(?<=\d) (?:and|&|\+) (?=\d+\/\d)/giu, " ")
    .replace(/(?<![\d.,])(\d{1,3}) ?kg ?(\d{3})(?![\d.,]| ?[%\p{L}])/giu, "$1$2 g")
    .replace(/(\d ?%) (?:of|on) (?:the )?(?:total )?flour(?: weight)?(?!\p{L})/iu, "$1")
    .replace(/(?<!\p{L})half (?:an? )?(?=tea|table|tsp|tbsp|cup|spoon)/iu, "1/2 ")
    .replace(/(大さじ|小さじ|大匙|小匙|カップ) ?(\d+(?: ?\/ ?\d+)?)/gu, "$2 $1 ")
    .replace(countedMeasure, "1 ")
    .replace(bareMeasure, "1 ")
    .trim();
}
