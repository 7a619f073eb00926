import { type Decimal, type DecimalText, dec, decimalText, sum, ZERO } from "./decimal.ts";
import { type Dimension, findUnit, type Unit } from "./units.ts";

/** A quantity as somebody wrote it, with its value in the base unit of its dimension (g, mm, mL, °C, %, s, g/mL, meq, m/min, kW, kJ/kg, K). */
export interface Quantity {
  readonly text: string;
  readonly dimension: Dimension;
  readonly value: DecimalText;
  /** Symbol of the unit it was written in; of the first one where several were added up. */
  readonly unit: string;
}

/** Why a text is not the quantity that is wanted. */
export interface QuantityFault {
  readonly why:
    | "below zero"
    | "decimal comma"
    | "too long"
    | "no unit"
    | "no quantity"
    | "kitchen measure"
    | "unknown unit"
    | "wrong unit"
    | "order of parts";
  /** The number or the unit that is meant. */
  readonly about: string;
  /** What it may measure, most usual first. */
  readonly dimensions: readonly Dimension[];
}

/** Either the quantity or why it is none. */
export type QuantityReading =
  | { readonly ok: true; readonly quantity: Quantity }
  | { readonly ok: false; readonly fault: QuantityFault };

const numberPart = String.raw`\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?|\.\d+`;
const term = new RegExp(
  String.raw`^\s*(${numberPart})\s*(°?[^\d\s.,;+-][^\d,;+]*?(?:(?:\/ ?| per )100 ?g(?:(?: of)? flour)?|(?<=\/c?m)3)?)\s*(?=$|\d|\.\d)`,
  "u",
);
const vulgar: Readonly<Record<string, string>> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅛": "1/8",
};

/** Spoons, cups and their kin, which hold more or less of a powder by how they are filled. `T` and `t` are spoons in recipes, and never tonnes here. */
const kitchenMeasure = /^(?:t|tsp|teaspoons?|tbsp?|tbl|tablespoons?|spoons?|cups?|fl oz|pints?|quarts?)\.?$/iu;

/**
 * Reads a quantity written the way people write it: `350 g`, `1 lb 4 oz`, `1 1/2 oz`, `36 %`, `1.4 mm`, `100 F`, `1 h 30 min`,
 * in wide letters too.
 *
 * A negative number is taken for temperatures only. A number without unit, a unit of another kind and a decimal comma are
 * answered with what would be right.
 *
 * @param dimensions - what the quantity may measure, most usual first
 * @example parseQuantity("1 lb 4 oz", ["mass"]) // => { ok: true, quantity: { text: "1 lb 4 oz", dimension: "mass", value: "566.9904625", unit: "lb" } }
 */
export function parseQuantity(input: string | number, dimensions: readonly Dimension[]): QuantityReading {
  const written = String(input).trim();
  const refused = (why: QuantityFault["why"], about = ""): QuantityReading => ({
    ok: false,
    fault: { why, about, dimensions },
  });
  const plain = written.replace(/[！-～]/gu, (wide) => wide.normalize("NFKC"));
  const negative = /^[-−]/u.test(plain);
  if (negative && !dimensions.includes("temperature")) return refused("below zero");
  const text = spellFractions(negative ? plain.slice(1) : plain);
  if (/\d,\d/u.test(text)) return refused("decimal comma");
  if (text.length > 80) return refused("too long");
  if (/^(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/iu.test(text)) return refused("no unit", text);
  const parts = readTerms(text, dimensions);
  if (parts === undefined) return refused("no quantity");
  for (const { name, unit } of parts) {
    if (unit === undefined) return refused(kitchenMeasure.test(name) ? "kitchen measure" : "unknown unit", name);
    if (!dimensions.includes(unit.dimension)) return refused("wrong unit", unit.symbol);
  }
  const known = parts.filter((part): part is KnownTerm => part.unit !== undefined);
  const first = known[0];
  if (first === undefined) return refused("no quantity");
  const { dimension } = first.unit;
  const addable = dimension === "mass" || dimension === "length" || dimension === "time";
  const falling = known.every((part, index) => {
    const before = known[index - 1];
    return before === undefined || (part.unit.dimension === dimension && dec(part.unit.factor).lt(before.unit.factor));
  });
  if (known.length > 1 && !(addable && falling)) return refused("order of parts");
  const amounts = known.map((part) => toBase(negative ? part.amount.negated() : part.amount, part.unit));
  return {
    ok: true,
    quantity: { text: written, dimension, value: decimalText(sum(amounts)), unit: first.unit.symbol },
  };
}

/**
 * What a text with commas in its numbers may mean, written as it would be read: with points for decimal commas, without
 * commas where they may stand between thousands.
 *
 * @example commaReadings("1,000 lb") // => ["1.000 lb", "1000 lb"]
 */
export function commaReadings(written: string): readonly string[] {
  const others = written.replace(/(?<![\d.,])[1-9]\d{0,2}(?:,\d{3})+(?!\d|,\d)/gu, "");
  const marks = /\d,\d/u.test(others) ? ["."] : [".", ""];
  const readings = marks.map((mark) => written.replace(/(?<=\d),(?=\d)/gu, mark));
  return readings.filter((reading) => reading !== written && !/\d\.\d+\.\d/u.test(reading));
}

interface Term {
  readonly amount: Decimal;
  readonly name: string;
  readonly unit: Unit | undefined;
}

interface KnownTerm extends Term {
  readonly unit: Unit;
}

function readTerms(text: string, dimensions: readonly Dimension[]): readonly Term[] | undefined {
  const terms: Term[] = [];
  let rest = text;
  while (rest.trim() !== "") {
    const match = term.exec(rest);
    if (match?.[1] === undefined || match[2] === undefined) return undefined;
    const amount = readNumber(match[1]);
    if (amount === undefined) return undefined;
    const name = match[2].trim();
    terms.push({ amount, name, unit: findUnit(name, dimensions) });
    rest = rest.slice(match[0].length);
  }
  return terms.length === 0 ? undefined : terms;
}

function readNumber(text: string): Decimal | undefined {
  return text.split(" ").reduce<Decimal | undefined>((total, part) => {
    const [over, under] = part.split("/");
    if (total === undefined || over === undefined) return undefined;
    if (under === undefined) return total.plus(dec(over));
    return dec(under).isZero() ? undefined : total.plus(dec(over).div(dec(under)));
  }, ZERO);
}

function spellFractions(text: string): string {
  return text.replace(/\s*([½¼¾⅓⅔⅛])/gu, (_, sign: string) => ` ${vulgar[sign] ?? sign}`).trim();
}

/** Turns an amount of a unit into the base unit. @example toBase(dec(212), findUnit("F")).toString() // => "100" */
export function toBase(amount: Decimal, unit: Unit): Decimal {
  return fahrenheit(unit) ? amount.minus(freezing(unit)).times(5).div(9) : amount.times(unit.factor);
}

/** Turns an amount of the base unit into a unit. @example fromBase(dec(100), findUnit("F")).toString() // => "212" */
export function fromBase(amount: Decimal, unit: Unit): Decimal {
  return fahrenheit(unit) ? amount.times(9).div(5).plus(freezing(unit)) : amount.div(unit.factor);
}

/** A time in days. @example inDays({ text: "36 h", dimension: "time", value: "129600", unit: "h" }) // => "1.5" */
export function inDays(time: Quantity): DecimalText {
  return decimalText(dec(time.value).div(86400));
}

function fahrenheit(unit: Unit): boolean {
  return unit.symbol === "°F";
}

/** Where the scale begins to count from, which differences do not. */
function freezing({ dimension }: Unit): number {
  return dimension === "temperature" ? 32 : 0;
}
