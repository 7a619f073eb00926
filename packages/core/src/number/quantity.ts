import { type Decimal, type DecimalText, dec, decimalText, sum, ZERO } from "./decimal.ts";
import { type Dimension, findUnit, type Unit, unitsFor } from "./units.ts";

/** A quantity as somebody wrote it, with its value in the base unit of its dimension (g, mm, mL, °C, %, s, g/mL, meq, m/min, kW, kJ/kg, K). */
export interface Quantity {
  readonly text: string;
  readonly dimension: Dimension;
  readonly value: DecimalText;
  /** Symbol of the unit it was written in; of the first one where several were added up. */
  readonly unit: string;
}

/** Either the quantity or, in words, what was expected and what to do. */
export type QuantityReading =
  | { readonly ok: true; readonly quantity: Quantity }
  | { readonly ok: false; readonly expected: string; readonly advice: string };

const numberPart = String.raw`\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?|\.\d+`;
const term = new RegExp(
  String.raw`^\s*(${numberPart})\s*(°?[^\d\s.,;+-][^\d,;+]*?(?:100 g|(?<=\/c?m)3)?)\s*(?=$|\d|\.\d)`,
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
 * Reads a quantity written the way people write it: `350 g`, `1 lb 4 oz`, `1 1/2 oz`, `36 %`, `1.4 mm`, `100 F`, `1 h 30 min`.
 *
 * A negative number is taken for temperatures only. A number without unit, a unit of another kind and a decimal comma are
 * answered with what would be right.
 *
 * @param dimensions - what the quantity may measure, most usual first
 * @example parseQuantity("1 lb 4 oz", ["mass"]) // => { ok: true, quantity: { text: "1 lb 4 oz", dimension: "mass", value: "566.9904625", unit: "lb" } }
 */
export function parseQuantity(input: string | number, dimensions: readonly Dimension[]): QuantityReading {
  const fits = unitsFor(dimensions).join(", ");
  const example = exampleOf(dimensions[0] ?? "mass");
  const expected = `a quantity with its unit (${fits}), such as "${example}"`;
  const written = String(input).trim();
  const negative = /^[-−]/u.test(written);
  if (negative && !dimensions.includes("temperature")) {
    return { ok: false, expected: `${expected}, not below zero`, advice: "write a number of zero or more" };
  }
  const text = spellFractions(negative ? written.slice(1) : written);
  if (/\d,\d/u.test(text)) {
    return { ok: false, expected, advice: "write a point before decimals and nothing between thousands: 1.5 or 1500" };
  }
  if (text.length > 80) return { ok: false, expected, advice: "write one short quantity" };
  if (/^(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/iu.test(text)) {
    const usual =
      dimensions.length === 1 ? unitsFor(dimensions).slice(0, 2) : dimensions.map((one) => unitsFor([one])[0]);
    const choices = usual.map((symbol) => `"${text} ${symbol}"`);
    return { ok: false, expected, advice: `add the unit: ${choices.join(" or ")}` };
  }
  const parts = readTerms(text);
  if (parts === undefined) return { ok: false, expected, advice: `write it like "${example}"` };
  for (const { name, unit } of parts) {
    if (unit === undefined) {
      const why = kitchenMeasure.test(name) ? "measures by volume: weigh it" : "is not a unit known here";
      return { ok: false, expected, advice: `"${name}" ${why}; use one of: ${fits}` };
    }
    if (!dimensions.includes(unit.dimension)) {
      return { ok: false, expected, advice: `"${unit.symbol}" measures ${unit.dimension}; use one of: ${fits}` };
    }
  }
  const known = parts.filter((part): part is KnownTerm => part.unit !== undefined);
  const first = known[0];
  if (first === undefined) return { ok: false, expected, advice: `write it like "${example}"` };
  const { dimension } = first.unit;
  const addable = dimension === "mass" || dimension === "length" || dimension === "time";
  const falling = known.every((part, index) => {
    const before = known[index - 1];
    return before === undefined || (part.unit.dimension === dimension && dec(part.unit.factor).lt(before.unit.factor));
  });
  if (known.length > 1 && !(addable && falling)) {
    return {
      ok: false,
      expected,
      advice: 'several parts may follow each other only from large to small, as in "1 lb 4 oz"',
    };
  }
  const amounts = known.map((part) => toBase(negative ? part.amount.negated() : part.amount, part.unit));
  return {
    ok: true,
    quantity: { text: written, dimension, value: decimalText(sum(amounts)), unit: first.unit.symbol },
  };
}

interface Term {
  readonly amount: Decimal;
  readonly name: string;
  readonly unit: Unit | undefined;
}

interface KnownTerm extends Term {
  readonly unit: Unit;
}

function readTerms(text: string): readonly Term[] | undefined {
  const terms: Term[] = [];
  let rest = text;
  while (rest.trim() !== "") {
    const match = term.exec(rest);
    if (match?.[1] === undefined || match[2] === undefined) return undefined;
    const amount = readNumber(match[1]);
    if (amount === undefined) return undefined;
    const name = match[2].trim();
    terms.push({ amount, name, unit: findUnit(name) });
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
  return fahrenheit(unit) ? amount.minus(32).times(5).div(9) : amount.times(unit.factor);
}

/** Turns an amount of the base unit into a unit. @example fromBase(dec(100), findUnit("F")).toString() // => "212" */
export function fromBase(amount: Decimal, unit: Unit): Decimal {
  return fahrenheit(unit) ? amount.times(9).div(5).plus(32) : amount.div(unit.factor);
}

/** A time in days. @example inDays({ text: "36 h", dimension: "time", value: "129600", unit: "h" }) // => "1.5" */
export function inDays(time: Quantity): DecimalText {
  return decimalText(dec(time.value).div(86400));
}

function fahrenheit(unit: Unit): boolean {
  return unit.symbol === "°F";
}

function exampleOf(dimension: Dimension): string {
  const examples: Readonly<Record<Dimension, string>> = {
    mass: "350 g",
    length: "1.4 mm",
    volume: "500 mL",
    temperature: "20 °C",
    share: "36 %",
    time: "30 min",
    density: "1.25 g/mL",
    alkalinity: "18 meq",
    speed: "6 m/min",
    power: "9 kW",
    heat: "12 kJ/kg",
    "temperature difference": "8 K",
  };
  return examples[dimension];
}
