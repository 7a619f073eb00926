import { type DecimalText, dec } from "../number/decimal.ts";
import { type Amount, amountsOf, type CommaUse } from "./amounts.ts";
import { madeOf, takeBeside } from "./beside.ts";
import { inDigits, type WrittenLine, wordsInDigits } from "./characters.ts";
import {
  handled,
  isAlkali,
  productOf,
  type Thing,
  thingOf,
  thingsWithin,
  trimmed,
  verbs,
  verbWords,
} from "./things.ts";

/** What a line is. */
export type ReadLine =
  | { readonly kind: "heading"; readonly part: "dough" | "dusting" | "method"; readonly title: string }
  /** What is no ingredient; some open the steps, as `Method: mix and rest` does. */
  | { readonly kind: "note"; readonly opensSteps: boolean }
  | { readonly kind: "total" }
  /** `each` is what a bowl weighs raw; `aside` a weight that may be another one, such as that of cooked noodles. */
  | {
      readonly kind: "yield";
      readonly bowls: DecimalText;
      readonly each?: string;
      readonly aside?: string;
      readonly title: string;
    }
  | { readonly kind: "amount"; readonly amounts: readonly Amount[] }
  | Item;

/** An ingredient and its amounts. */
export interface Item {
  readonly kind: "item";
  readonly line: WrittenLine;
  readonly thing: Thing;
  /** The name as written, without what stands in brackets. */
  readonly name: string;
  readonly amounts: readonly Amount[];
  /** Whether the amount was written before the name. */
  readonly amountFirst: boolean;
  readonly figures: Readonly<Record<string, unknown>>;
  readonly inBrackets: readonly string[];
  readonly dusting: boolean;
  readonly remarks: readonly string[];
  /** What it costs, as a spec has it. */
  readonly price?: string;
}

const bullet = new RegExp(
  String.raw`^(?:(?:flour|mehl|farine|粉) ?[A-Z\d] ?[:.)–-] ?(?=\p{L})|(?:per|for|on|to|auf|pour) (?=\d[\d.,]* ?k?g (?:of )?(?:the )?\p{L})|${verbs} (?=\d)|[–*•·‣◦▪□☐✓✔>+-]+\s+|[•·‣◦▪□☐✓✔]|\[[ x]?\]\s*|\(?\d{1,2}[.)]\s+(?=\S))+`,
  "iu",
);
const brackets = /[([]([^()[\]]*)[)\]]/gu;
const method =
  /^(?:method|directions?|instructions?|preparation|procedure|steps?|how to|process|notes?|tips?|zubereitung|préparation|作り方|做法|만드는)(?!\p{L})/iu;
const ofDough =
  "(?:the )?ingredients?|(?:for )?(?:the )?(?:dough|noodles?)|formula|recipe|you need|zutaten|材料|flours|liquids?|dry|wet|salts";
/** Between ingredients. */
const joiners = "and|und|et|plus|&";
/** Before an ingredient: `Process: salt 5 g`, `Dough: flour 1 kg`. */
const stepsBefore = new RegExp(`(?:${method.source}|^(?:${ofDough})(?= ?:))[\\s:.–-]*[:.][\\s:.–-]*(?=\\S)`, "iu");
const countWords =
  "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty".split(
    " ",
  );
const dusting =
  /(?<!\p{L})(?:(?:for|as) )?dusting(?: (?:starch|flour))?(?!\p{L})|(?<!\p{L})(?:for|to) dust(?!\p{L})|打ち粉|手粉/iu;
const people =
  "bowls?|portions?|portionen|porzioni|raciones|servings?|people|persons?|personen|personnes|persone|personas|pers\\.?|children|guests|pupils|人前|人分|人份|份|인분";
const yields = new RegExp(
  `^(?:.*?(?<![\\p{L}\\d.,])(\\d+) ?(?:${people})(?!\\p{L})|(?:(?:.*\\()?for|(?:.*(?<!\\p{L}))?(?:serves|feeds|servings|portions|portionen|people|bowls|makes|ergibt|yields?|enough for))[ :\\t]*(\\d+)(?![\\d.,/]*\\d))(.*)$`,
  "iu",
);
const yieldAtEnd = new RegExp(
  `[\\s(,]*(?:(?<!\\p{L})(?:number of |yields? )?(?:(?:enough )?for|für|pour|para|makes|ergibt|serves|feeds|yields?|portions|portionen|servings|people|bowls)\\s*:?\\s*)?\\d+ ?(?:${people})?$`,
  "iu",
);
/** Bowls or people that are counted in a word: `serves four`, `ten bowls`. */
const bowlsInWords = new RegExp(
  `(?<=(?:^|enough )for |(?:serves|feeds|makes|yields?:?) )(?:${countWords.join("|")})(?!\\p{L})|(?<!\\p{L})(?:${countWords.join("|")})(?= (?:${people})(?!\\p{L}))`,
  "iu",
);
const total =
  /^[\s(]*(?:dough(?=[\s:]+[\d.,]+(?: ?(?:k?g|oz|lb|%))?$)|(?:(?:flour|dough|sub)[ -]?)?total|sum|in all|dough weight|gesamt|summe|合計|总量|合计|총)(?!\p{L})/iu;

/** Reads one line of a formula. */
export function readLine(line: WrittenLine, comma: CommaUse): ReadLine {
  const written = inDigits(line.text)
    .replace(/^#+\s*/u, "")
    .replace(bullet, "")
    .replace(/[*_]{2}/gu, "");
  const afterSteps = written.replace(stepsBefore, "");
  const ofSteps = readText({ line, text: counted(afterSteps) }, comma);
  if (afterSteps !== written && ofSteps.kind === "item" && ofSteps.amounts.length > 0) return ofSteps;
  return readText({ line, text: counted(written) }, comma);
}

/** `two eggs`, `an egg` and `enough for two` with a digit, where what is counted is known. */
function counted(written: string): string {
  const text = written.replace(bowlsInWords, (word) => String(countWords.indexOf(word.toLowerCase()) + 1));
  const [, word = "", name = ""] = /^(an?|\p{L}{3,6}) (?=\p{L})(.*)$/iu.exec(text) ?? [];
  const count = /^an?$/iu.test(word) ? 1 : countWords.indexOf(word.toLowerCase()) + 1;
  return count > 0 && thingOf(name.replace(brackets, " ").replace(/\d.*$/u, ""), []).is !== "unknown"
    ? `${count} ${name}`
    : text;
}

/** Words before or behind what one of several weighs; kitchen usage, from memory. */
const beforeEach = /(?<!\p{L})(?:of|at|à|de|da|di|je|zu|cada|@) ?$/iu;
const behindEach =
  /^ ?(?:each|apiece|je|pro Stück|chacune?|ciascun[oa]|l'un[oa]?|cada una?|\/ ?(?:pc|piece|Stück))(?!\p{L})/iu;

/** So many of so much each, such as `2 eggs (55 g each)`, as `2 x 55 g eggs`. */
function timesEach(text: string, comma: CommaUse): string {
  const [counted, ...others] = amountsOf(text, comma);
  const [each, second] = others.filter(({ is }) => is.by === "mass");
  const [, count] = /^(\d{1,3})(?: ?x)?(?: ?\p{L}+)?$/iu.exec(counted?.written ?? "") ?? [];
  if (counted?.start !== 0 || count === undefined || each === undefined || second !== undefined) return text;
  if (counted.is.by === "mass" || counted.is.by === "share") return text;
  const [before, after] = [text.slice(counted.end, each.start), text.slice(each.end)];
  if (!beforeEach.test(before) && !behindEach.test(after)) return text;
  return `${count} x ${each.written} ${before.replace(beforeEach, "")} ${after.replace(behindEach, "")}`;
}

function readText(
  { line, text: asWritten }: { readonly line: WrittenLine; readonly text: string },
  comma: CommaUse,
): ReadLine {
  const text = yields.test(asWritten) ? asWritten : timesEach(asWritten, comma);
  const isHeading = line.text.startsWith("#") || text.endsWith(":");
  const { rest: read, figures, remarks, price } = takeBeside(text);
  const made = [...read.matchAll(brackets)].filter(([, words = ""]) => madeOf(words, true) !== undefined);
  const rest = made.reduce((left, [whole]) => left.replace(whole, " "), read);
  const amounts = amountsOf(rest, comma).filter(({ is }) => is.by !== "other");
  const measured = amounts.filter(({ is }) => is.by !== "number");
  const heading = headingOf(trimmed(text));
  if (heading === "method" && measured.length === 0 && trimmed(trimmed(text).replace(method, "")) !== "") {
    return { kind: "note", opensSteps: true };
  }
  if (heading !== undefined && measured.length === 0 && (isHeading || heading !== "dusting")) {
    return { kind: "heading", part: heading, title: trimmed(text) };
  }
  const served = yields.exec(text);
  const [bowls, each = ""] = [served?.[1] ?? served?.[2], served?.[3]];
  if (bowls !== undefined && dec(bowls).gt(0) && measured.length <= (/\d/u.test(each) ? 1 : 0)) {
    const raw = amountsOf(each, comma).find(({ is }) => is.by === "mass");
    const title = trimmed(text.slice(0, text.length - each.length).replace(yieldAtEnd, ""));
    return {
      kind: "yield",
      bowls,
      title,
      ...(raw?.is.by === "mass" && (isRaw(each, raw.written) ? { each: raw.is.text } : { aside: raw.written })),
    };
  }
  if (total.test(text) && amounts.length > 0) return { kind: "total" };
  const used = measured.length > 0 ? measured : atAnEnd(amounts, rest);
  const name = used.reduceRight((left, { start, end }) => `${left.slice(0, start)} \t ${left.slice(end)}`, rest);
  const inBrackets = [...made, ...name.matchAll(brackets)].map((match) => trimmed(match[1] ?? "")).filter(Boolean);
  const outside = name.replace(brackets, " ").replace(dusting, " ");
  const plain = trimmed(outside);
  if (plain === "" && used.length > 0) return { kind: "amount", amounts: used };
  if (isHeading && used.length === 0) return { kind: "heading", part: "dough", title: trimmed(text) };
  const whole = used.reduce((left, { written }) => left.replace(written, " "), text);
  const named = Object.keys(figures).length > 0 ? thingOf(whole, []) : undefined;
  const known = named !== undefined && named.is !== "unknown";
  const product = productIn(rest, used);
  const thing = product?.thing ?? (known ? named : thingOf(plain, inBrackets));
  if (used.length === 0 && (thing.is === "unknown" || isSentence(plain))) return { kind: "note", opensSteps: false };
  return {
    kind: "item",
    line,
    thing,
    name: plain,
    amounts: product?.amounts ?? used,
    amountFirst: (used[0]?.start ?? 0) === 0 || trimmed(rest.slice(0, used[0]?.start)) === "",
    figures: known ? {} : figures,
    inBrackets,
    dusting: dusting.test(rest),
    remarks,
    ...(price !== undefined && { price }),
  };
}

/** Salts with their strength, and the amount beside it: the weights of a line, or the per cent at one of its ends. */
function productIn(text: string, used: readonly Amount[]) {
  const alone = used.filter(({ is }) => is.by !== "number" && is.by !== "other").length === 1;
  const weights = used.filter(({ is }) => is.by === "mass" || is.by === "volume");
  const shares = used.filter(({ is }) => is.by === "share");
  const choices = weights.length > 0 ? [weights] : [shares.slice(-1), shares.slice(0, 1)];
  for (const amounts of choices) {
    const beside = amounts.reduceRight((left, { start, end }) => `${left.slice(0, start)} ${left.slice(end)}`, text);
    const thing = amounts.length > 0 ? productOf(beside, alone) : undefined;
    if (thing !== undefined && (weights.length > 0 || thing.ask === undefined)) return { thing, amounts };
  }
  return undefined;
}

/** Between the ingredients of one line, and before the last of them. */
const betweenIngredients = new RegExp(
  String.raw`\s*(?!(?<=\([^()]*)[^()]*\))(?:;|\t|\||•|,(?!\d)|(?<=\p{L}),(?=\d)| \/ |(?<joined> (?=(?:${joiners}|with|mit|avec|in|into|to) \d))| (?=(?:and )?${verbs} \d))\s*(?:(?:${joiners}) |(?:with|mit|avec|in|into|to) (?=\d))?(?:${verbs} )?`,
  "gu",
);
/** A full stop behind a name and its amount ends what is said of them: not one in an abbreviation, or behind a bare number. */
const sentenceEnd =
  /(?<=[\p{L}\d%)])(?<!(?:^|[,;.] ?)\d[\d.,/ ]*\p{L}{0,5}|(?<!\p{L})(?:[Aa]pprox|[Cc]a|[Nn]os?|[Nn]r|[Tt]sp|[Tt]bsp|oz|lbs?|[Tt]yp|[Mm]ax|St|c|[a-z]\.[a-z]))\. (?=[\p{Lu}\d])(?![^(]*\))/gu;

/**
 * Several ingredients on one line are a line each, and so is what they make: `flour 1 kg, water 350 g, makes 10`. What
 * names nothing and has no amount of its own, as in `flour, strong, 1 kg, sifted`, belongs to what it stands behind.
 */
export function ingredientsOf(written: WrittenLine, comma: CommaUse): readonly WrittenLine[] {
  const lines = partedLine({ ...written, text: wordsInDigits(written.text) }, comma);
  return lines.length > 1 ? lines : [written];
}

function partedLine(line: WrittenLine, comma: CommaUse): readonly WrittenLine[] {
  const sentences = line.text.replace(sentenceEnd, ".\n").split("\n");
  const read = (text: string): readonly WrittenLine[] => {
    const told = verbWords.test(text) && thingsWithin(text).length > 0;
    return partsOf({ ...line, text, ...(told && { sentence: text }) }, comma);
  };
  const parted = sentences.flatMap(read);
  return sentences.length === 1 || parted.some(({ text }) => pieceOf(text, comma).whole) ? parted : read(line.text);
}

function partsOf(line: WrittenLine, comma: CommaUse): readonly WrittenLine[] {
  const product = productIn(line.text, amountsOf(line.text, comma));
  if (product !== undefined && (product.thing.ask === undefined || thingsWithin(product.thing.name).every(isAlkali)))
    return [line];
  const cuts = [...line.text.matchAll(betweenIngredients)];
  const ends = [...cuts.map(({ index }) => index), line.text.length];
  const starts = [0, ...cuts.map(({ index, 0: cut }) => index + cut.length)];
  const groups: { readonly start: number; readonly end: number; readonly whole: boolean; readonly known?: boolean }[] =
    [];
  let anyKnown = false;
  for (const [index, start] of starts.entries()) {
    const end = ends[index] ?? start;
    if (end <= start) continue;
    const { named, amount, whole } = pieceOf(line.text.slice(start, end), comma);
    anyKnown ||= named === "known";
    const last = groups.at(-1);
    const apart = cuts[index - 1]?.groups?.["joined"] === undefined || last?.known === true;
    const ofItsOwn =
      apart && (whole || (named === "known" && !amount) || (named !== "no" && amount && last?.whole === true));
    if (last === undefined || ofItsOwn) groups.push({ start, end, whole: whole || amount, known: whole });
    else groups.splice(-1, 1, { ...last, end, whole: last.whole || amount });
  }
  const parted = groups.filter(({ whole }) => whole).length > 1 && (anyKnown || readLine(line, comma).kind !== "yield");
  const lines = parted ? groups.map(({ start, end }) => ({ ...line, text: line.text.slice(start, end) })) : [line];
  return lines.flatMap((one) => sideBySide(one, comma));
}

/** What a piece of a line has: a name, known or not, an amount, or all that a line of its own needs. */
function pieceOf(text: string, comma: CommaUse) {
  const { rest } = takeBeside(inDigits(text).replace(bullet, ""));
  if (readLine({ number: 0, text }, comma).kind === "yield")
    return { named: "no", amount: false, whole: true } as const;
  const amounts = amountsOf(rest, comma).filter(({ is }) => is.by !== "other");
  const measured = amounts.filter(({ is }) => is.by !== "number");
  const used = measured.length > 0 ? measured : atAnEnd(amounts, rest);
  const name = trimmed(used.reduce((left, { written }) => left.replace(written, " "), rest).replace(brackets, " "));
  if (measured.length > 0 && /^(?!\d{1,2} \p{L}{2})(?:$|\P{L})/u.test(handled(name).replace(behindEach, "")))
    return { named: "no", amount: true, whole: false } as const;
  const known = name !== "" && thingOf(name, []).is !== "unknown";
  const amount = measured.length > 0 || (known && used.length > 0);
  return { named: known ? "known" : name === "" ? "no" : "yes", amount, whole: known && amount } as const;
}

/** `salt 6 g, starch 4 g` without the comma: each name that is known, with the amount behind or before it, is a line. */
function sideBySide(line: WrittenLine, comma: CommaUse): readonly WrittenLine[] {
  const amounts = amountsOf(line.text, comma).filter(({ is }) => is.by === "mass" || is.by === "volume");
  if (amounts.length < 2 || /[(%[]/u.test(line.text)) return [line];
  const cuts = [
    [0, ...amounts.map(({ end }) => end)],
    [...amounts.map(({ start }) => start), line.text.length],
  ];
  const known = cuts
    .map((at) => at.slice(1).map((end, index) => line.text.slice(at[index], end).replace(joining, "").trim()))
    .find((pieces) =>
      pieces.every((text, index) => {
        const name = trimmed(text.replace(amounts[index]?.written ?? "", " "));
        return thingOf(name, []).is !== "unknown";
      }),
    );
  return known !== undefined && withoutJoining(line.text) === withoutJoining(known.join(" "))
    ? known.map((text) => ({ ...line, text }))
    : [line];
}

const joining = /^\s*(?:and|und|et|plus|&) | (?:and|und|et|plus|&)\s*$/iu;

function withoutJoining(text: string): string {
  return trimmed(text.replace(/ (?:and|und|et|plus|&) /giu, " "));
}

/** `of 130 g` and `130 g each` are what a bowl weighs raw, unless other words stand there, such as `cooked`. */
function isRaw(each: string, written: string): boolean {
  return /raw/iu.test(each) || rawWords.test(trimmed(each.replace(written, " ").replace(/[()]/gu, " ")));
}

const rawWords = new RegExp(
  `^(?:of|at|à|zu)?(?: ?je)?(?: ?of)?(?: ?(?:each|apiece|(?:(?:an?|per|/) ?)(?:${people})))?$`,
  "iu",
);

function headingOf(text: string): "method" | "dusting" | "dough" | undefined {
  if (method.test(text)) return "method";
  if (dusting.test(text) && trimmed(text.replace(dusting, "")) === "") return "dusting";
  return new RegExp(`^(?:${ofDough})$`, "iu").test(text) ? "dough" : undefined;
}

/** A bare number is an amount only where a line begins or ends. */
function atAnEnd(amounts: readonly Amount[], line: string): readonly Amount[] {
  return amounts.filter(
    ({ start, end }) =>
      trimmed(line.slice(0, start)) === "" || /^[\s|)\]]*$/u.test(line.slice(end)) || line.includes("\t"),
  );
}

function isSentence(text: string): boolean {
  return text.split(" ").length > 5;
}
