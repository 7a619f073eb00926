import { problem } from "../figure/problem.ts";
import { told } from "../figure/told.ts";
import { type DecimalText, dec, decimalText, sum } from "../number/decimal.ts";
import { parseQuantity } from "../number/quantity.ts";
import { type Measure, measureOf, measureWords } from "./measures.ts";

/** An amount as somebody wrote it. */
export interface Amount {
  /** In words, as written. */
  readonly written: string;
  readonly start: number;
  readonly end: number;
  readonly is:
    | { readonly by: "mass"; readonly text: string; readonly value: DecimalText }
    | { readonly by: "share"; readonly text: string; readonly value: DecimalText }
    | { readonly by: "volume"; readonly millilitres: readonly [DecimalText, DecimalText] }
    /** A number without a unit. */
    | { readonly by: "number"; readonly text: string; readonly value: DecimalText; readonly pieces?: true }
    | { readonly by: "other" }
    | { readonly by: "unclear"; readonly why: string };
}

/** What a comma between digits is in a text: known from its other numbers. */
export type CommaUse = "decimal" | "thousands" | undefined;

/** `3:50 g` is no number that a scale shows. */
const number = String.raw`\d+ \d+\/\d+|\d+(?::\d+)+(?= ?(?:${measureWords}))|\d+\/\d+|\d{1,3}(?:'\d{3})+|\d+(?:[.,]\d+)*|[.,]\d+`;
/** Groups of three digits with spaces, `1 000 g`, are a number only where nothing else could stand before. */
const grouped = String.raw`(?:(?<=\p{L}[ ,]+)(?<!(?:type?|tipo) +)[1-9]\d?(?: \d{3})+|(?<=^|[:=\t–-] *)\d{1,3}(?: \d{3})+|\d{1,3}(?: 000)+)(?:[.,]\d+)?(?= ?(?:k?g|%)(?!\p{L}))`;
const amountForm = new RegExp(
  String.raw`(?<![\p{Script=Latin}\p{N}.,/]|\d:)(?:(?<times>\d+) ?x ?)?(?<first>${grouped}|${number})(?: ?(?:[–~-]|to|or|bis|oder) ?(?<last>${number}))? ?(?:(?<measure>${measureWords})(?! ?\/ ?m?l(?!\p{L}))(?: ?x ?(?<after>\d+)(?![\p{L}\p{N}.,]))?|(?![\p{L}\p{N}%/.,]))`,
  "giu",
);

/** Whether the numbers of a text have decimal commas, or commas between thousands. */
export function commaUse(text: string): CommaUse {
  const decimals = /(?<![\d.,])(?:\d+,\d{1,2}|0,\d+)(?![\d,.]*\d)/u.test(text);
  const points = /(?<![\d.,])(?:\d+\.\d{1,2}|0\.\d+)(?![\d,.]*\d)/u.test(text);
  if (decimals === points) return undefined;
  return decimals ? "decimal" : "thousands";
}

/** The amounts of a line from left to right; parts of one amount, as in `1 lb 4 oz`, are put together. */
export function amountsOf(line: string, comma: CommaUse): readonly Amount[] {
  const amounts: Amount[] = [];
  for (const match of line.matchAll(amountForm)) {
    const amount = amountFrom(match, comma);
    const last = amounts.at(-1);
    const joined = last && together(last, amount, line.slice(last.end, amount.start));
    if (joined === undefined) amounts.push(amount);
    else amounts.splice(-1, 1, joined);
  }
  return amounts;
}

function amountFrom(match: RegExpExecArray, comma: CommaUse): Amount {
  const [written] = match;
  const { times, first = "", last, measure: word, after } = match.groups ?? {};
  const place = { written: written.trim(), start: match.index, end: match.index + written.trimEnd().length };
  const measure = word === undefined ? undefined : measureOf(word);
  if (measure?.by === "other") return { ...place, is: { by: "other" } };
  if (first.includes(":"))
    return unclear(place, `"${place.written}" is not one number: write the amount that you weigh`);
  if (last !== undefined) return unclear(place, `"${place.written}" is a range: write the amount that you weigh`);
  if (measure?.by === "unknown") {
    return unclear(place, `nobody can tell what "${place.written}" weighs: weigh it once and write the grams`);
  }
  if (
    /^\d{1,2} \d{3}/u.test(first) &&
    !/ 000\b/u.test(first) &&
    /\p{L}[ ,]+$/u.test(match.input.slice(0, match.index))
  ) {
    const unit = word === undefined ? "" : ` ${word}`;
    const [whole, last] = [first.replaceAll(" ", "") + unit, first.split(" ").slice(1).join("") + unit];
    return unclear(
      place,
      `"${place.written}" may be ${whole}, or ${last} of something whose name ends in a number: write it without blanks, such as ${whole}`,
    );
  }
  const plain = plainNumber(first, comma, countsThousands(measure));
  if (plain === undefined) {
    return unclear(
      place,
      `"${first}" may be a whole number or a decimal one: write ${eitherNumber(first)}, with nothing between thousands`,
    );
  }
  const count = times ?? after ?? "1";
  if (measure?.by === "volume") {
    const [least, most] = measure.millilitres.map((one) => decimalText(dec(one).times(count).times(value(plain))));
    return { ...place, is: { by: "volume", millilitres: [least ?? "0", most ?? "0"] } };
  }
  const shown = count === "1" ? plain : decimalText(dec(count).times(value(plain)));
  if (measure?.by === "mass" || measure?.by === "share") {
    const text = `${shown} ${measure.unit}`;
    const reading = parseQuantity(text, ["mass", "share"]);
    if (reading.ok) return { ...place, is: { by: measure.by, text, value: reading.quantity.value } };
    const { advice } = told(problem("quantity.unreadable", [], { written: text, ...reading.fault }));
    return unclear(place, `"${place.written}" cannot be read: ${advice}`);
  }
  const pieces = measure?.by === "pieces" && ({ pieces: true } as const);
  return { ...place, is: { by: "number", text: shown, value: decimalText(value(shown)), ...pieces } };
}

type Place = Pick<Amount, "written" | "start" | "end">;

function unclear(place: Place, why: string): Amount {
  return { ...place, is: { by: "unclear", why } };
}

/** `1 lb 4 oz` and `500 g + 250 g` are one amount. */
function together(one: Amount, other: Amount, between: string): Amount | undefined {
  const place = { written: `${one.written}${between}${other.written}`, start: one.start, end: other.end };
  if (one.is.by === "volume" && other.is.by === "volume" && isSum(one.is.millilitres, other.is.millilitres, between)) {
    const [first, second] = [one.is.millilitres, other.is.millilitres];
    const added = (end: 0 | 1): DecimalText => decimalText(dec(first[end]).plus(second[end]));
    return { ...place, is: { by: "volume", millilitres: [added(0), added(1)] } };
  }
  if (one.is.by !== "mass" || other.is.by !== "mass") return undefined;
  const added = /^ ?\+ ?$/u.test(between);
  const falling =
    /^(?: ?| and )$/u.test(between) && /(?:kg|lb)$/u.test(one.is.text) && /(?: g| oz)$/u.test(other.is.text);
  if (!added && !falling) return undefined;
  const total = decimalText(sum([dec(one.is.value), dec(other.is.value)]));
  const asWritten = falling && !/\//u.test(one.is.text);
  const text = asWritten ? `${one.is.text} ${other.is.text}` : `${total} g`;
  return { ...place, is: { by: "mass", text, value: total } };
}

/** `1 cup + 3 tbsp`, and `2 gal 1 qt`, where the second is less than one of the first and no such volume said in mL. */
function isSum([least]: Volume, [from, to]: Volume, between: string): boolean {
  return /^ ?(?:\+|plus) ?$/iu.test(between) || (/^,? (?:and )?$/iu.test(between) && from !== to && dec(to).lte(least));
}

type Volume = readonly [DecimalText, DecimalText];

/** Whether there may be thousands of it in a formula: grams and millilitres, and what has no unit; of kg, lb or % there are seldom. */
function countsThousands(measure: Measure | undefined): boolean {
  if (measure?.by === "mass") return measure.unit === "g" || measure.unit === "mg";
  return measure?.by === "volume" ? dec(measure.millilitres[1]).lt(1000) : measure?.by !== "share";
}

/** A number with a decimal point, or a fraction; undefined where it may be one of two numbers. */
function plainNumber(written: string, comma: CommaUse, thousands: boolean): string | undefined {
  if (written.includes("/")) return /\/0+$/u.test(written) ? undefined : written;
  const text = written.replace(/[' ]/gu, "");
  const marks = text.replace(/\d/gu, "");
  const [whole = "", rest = ""] = text.split(/[.,]/u);
  if (marks === "") return text;
  if (marks.length > 1) {
    const last = marks.at(-1) ?? "";
    const same = [...marks].every((mark) => mark === last);
    const [before, after] = same
      ? [text, ""]
      : [text.slice(0, text.lastIndexOf(last)), text.slice(text.lastIndexOf(last))];
    if (!/^\d{1,3}(?:[.,]\d{3})+$/u.test(before) || new Set(marks.slice(0, same ? undefined : -1)).size > 1)
      return undefined;
    return `${before.replace(/[.,]/gu, "")}${after.replace(",", ".")}`;
  }
  const likeThousands = rest.length === 3 && /^[1-9]\d{0,2}$/u.test(whole);
  const decimal = `${whole === "" ? "0" : whole}.${rest}`;
  if (!likeThousands) return decimal;
  if (comma === undefined) return marks === "," || thousands ? undefined : decimal;
  if (marks === (comma === "decimal" ? "," : ".")) return thousands ? undefined : decimal;
  return marks === "," || thousands ? `${whole}${rest}` : undefined;
}

/** Both numbers that `1,500` may be; of what is neither, what such numbers look like. */
function eitherNumber(written: string): string {
  return /^\d{1,3}[.,]\d{3}$/u.test(written)
    ? `${written.replace(/[.,]/u, "")} or ${decimalText(dec(written.replace(",", ".")))}`
    : "1000 or 1.5";
}

function value(number: string) {
  return number.split(" ").reduce((total, part) => {
    const [over = "0", under = "1"] = part.split("/");
    return total.plus(dec(over).div(under));
  }, dec(0));
}
