import { Decimal as DecimalBase } from "decimal.js";

/**
 * The project's own number: 40 significant digits, half-even, never written with an exponent.
 * Nothing else imports decimal.js, so no other precision can slip in.
 */
const Exact = DecimalBase.clone({
  precision: 40,
  rounding: DecimalBase.ROUND_HALF_EVEN,
  toExpNeg: -9e15,
  toExpPos: 9e15,
  defaults: true,
});

/** An exact decimal number. It is immutable. */
export type Decimal = InstanceType<typeof Exact>;

/** What can be read as a decimal: decimal text such as `"12.50"`, a number with a short exact text, or a decimal. */
export type DecimalInput = string | number | Decimal;

/** A decimal written as text without exponent, as it travels in results: `"36.25"`. */
export type DecimalText = string;

const plainNumber = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/**
 * Reads a decimal.
 *
 * @throws {RangeError} when the text is no finite number: a bug of the caller, since outside text goes through `parseQuantity`.
 * @example dec("0.1").plus(dec("0.2")).toString() // => "0.3"
 */
export function dec(input: DecimalInput): Decimal {
  if (input instanceof Exact) return input;
  const text = String(input);
  const known = read.get(text);
  if (known !== undefined) return known;
  if (!plainNumber.test(text)) throw new RangeError(`not a finite number: ${text}`);
  const value = new Exact(text);
  remember(text, value);
  return value;
}

/**
 * Reads a decimal that was handed over under a name.
 *
 * @throws {RangeError} that names it, as `dec`
 * @example decOf("sample", "1.06").toString() // => "1.06"
 */
export function decOf(name: string, input: DecimalInput): Decimal {
  const value = maybeDec(input);
  if (value !== undefined) return value;
  throw new RangeError(`${name}: ${JSON.stringify(input) ?? String(input)} is no decimal number`);
}

/** Reads a decimal where there is one. @example maybeDec("a lot") // => undefined */
export function maybeDec(input: DecimalInput): Decimal | undefined {
  if (input instanceof Exact) return input;
  return typeof input !== "object" && plainNumber.test(String(input)) ? dec(input) : undefined;
}

/** Texts that were read or written of late: a figure travels as text, and most are read several times. */
const read = new Map<string, Decimal>();
const mostRemembered = 4096;

function remember(text: string, value: Decimal): void {
  if (read.size >= mostRemembered) read.clear();
  read.set(text, value);
}

export const ZERO = dec(0);
export const ONE = dec(1);
export const HUNDRED = dec(100);

/**
 * Writes a decimal as it travels in results: no exponent, no trailing zeros, at most 30 significant digits
 * (ten fewer than are calculated with). A remainder that earlier roundings left, as in three times 0.333…, is taken off.
 *
 * @throws {RangeError} when the number is not finite: a bug of the caller.
 * @example decimalText(dec(1).div(3)) // => "0.333333333333333333333333333333"
 */
export function decimalText(value: Decimal): DecimalText {
  if (!value.isFinite()) throw new RangeError("a result is not a finite number");
  if (value.isZero()) return "0";
  if (value.d.length <= shortWords || value.precision() <= 20) return value.toFixed();
  const short = value.toSignificantDigits(30);
  const text = short.toFixed();
  const whole = remainder.test(text) ? value.toSignificantDigits(26) : short;
  if (whole.precision() <= 20) return whole.toFixed();
  remember(text, short);
  return text;
}

/** Words of seven digits each that come to fewer than 20. */
const shortWords = 2;

/** What a number that differs from a short one by a remainder has among its digits. */
const remainder = /0{5}|9{5}/;

const roundings = { half: DecimalBase.ROUND_HALF_UP, up: DecimalBase.ROUND_CEIL, down: DecimalBase.ROUND_FLOOR };

/**
 * Writes a decimal with a fixed number of places, halves away from zero unless told, and never as "-0.0".
 *
 * @param toward - "up" or "down" for what must not pass a limit
 * @example fixedText(dec("2.345"), 2) // => "2.35"
 */
export function fixedText(value: DecimalInput, places: number, toward: keyof typeof roundings = "half"): DecimalText {
  const rounded = dec(value).toDecimalPlaces(places, roundings[toward]);
  return (rounded.isZero() ? ZERO : rounded).toFixed(places);
}

/** Writes a decimal to at most so many places, without zeros at its end. @example shortText("0.88184904873951", 4) // => "0.8818" */
export function shortText(value: DecimalInput, places: number): DecimalText {
  return decimalText(dec(fixedText(value, places)));
}

/** Writes a decimal in so many digits that tell, halves away from zero. @example digitsText("223.016911764", 10) // => "223.0169118" */
export function digitsText(value: DecimalInput, digits: number): DecimalText {
  return decimalText(dec(value).toSignificantDigits(digits, DecimalBase.ROUND_HALF_UP));
}

/** A number down to its first digit that tells. @example leadingDigit(dec("0.000564")).toString() // => "0.0005" */
export function leadingDigit(value: Decimal): Decimal {
  return value.toSignificantDigits(1, DecimalBase.ROUND_DOWN);
}

/**
 * Rounds to the nearest whole multiple of a division, halves away from zero.
 *
 * @param division - step, above zero
 * @example roundToDivision(dec("12.34"), dec("0.5")).toString() // => "12.5"
 */
export function roundToDivision(value: Decimal, division: Decimal): Decimal {
  return stepsIn(value, division).toDecimalPlaces(0, DecimalBase.ROUND_HALF_UP).times(division);
}

/** Rounds up to a whole multiple of a division. @example ceilToDivision(dec("12.1"), dec("0.5")).toString() // => "12.5" */
export function ceilToDivision(value: Decimal, division: Decimal): Decimal {
  return stepsIn(value, division).ceil().times(division);
}

/** Rounds down to a whole multiple of a division. @example floorToDivision(dec("12.9"), dec("0.5")).toString() // => "12.5" */
export function floorToDivision(value: Decimal, division: Decimal): Decimal {
  return stepsIn(value, division).floor().times(division);
}

/** Figures carry 30 digits: what is equal to this many is equal. */
export const equalDigits = 20;

/** How many divisions a value has; digits beyond those that tell decide nothing. */
function stepsIn(value: Decimal, division: Decimal): Decimal {
  return value.div(division).toSignificantDigits(equalDigits);
}

/** Adds decimals. @example sum([dec("0.1"), dec("0.2")]).toString() // => "0.3" */
export function sum(values: readonly Decimal[]): Decimal {
  return values.reduce((total, value) => total.plus(value), ZERO);
}
