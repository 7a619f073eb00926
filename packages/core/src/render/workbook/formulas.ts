import { type Expression, type FunctionName, type Operator, parseExpression } from "../../figure/expression.ts";
import type { Fed, Figure } from "../../figure/figure.ts";
import { printable } from "../../figure/printable.ts";
import { type DecimalInput, dec } from "../../number/decimal.ts";

/** A formula of a spreadsheet, and how tightly its outermost operator binds. */
interface Term {
  readonly text: string;
  readonly binds: number;
}

/** One term, or one for each item of a list. */
type Terms = Term | readonly Term[];

const strengths: Readonly<Record<Operator, number>> = { "+": 1, "-": 1, "*": 2, "/": 2, "^": 3 };
const atom = 4;

/** Doubles that are whole to this many parts of themselves count as whole, as in the exact formulas. */
const wholeWithin = "0.000000000001";

/** Factors for comparisons that the noise of doubles must not decide. */
export const justMore = "1.000000000001";
export const justLess = "0.999999999999";

/**
 * The formula of a figure over the cells of what went into it; undefined for a figure that was given or found.
 *
 * @param cellOf - the cell of a figure
 */
export function cellFormula({ working }: Figure, cellOf: (id: string) => string): string | undefined {
  if (working.kind !== "formula") return undefined;
  const names = Object.fromEntries(Object.entries(working.from).map(([name, fed]) => [name, fedTerms(fed, cellOf)]));
  const term = write(parseExpression(working.formula), names);
  if (isList(term)) throw new RangeError("a formula gave a list where a number was wanted");
  return term.text;
}

/** A number as a formula holds it: to the digits of a double, without an exponent, which not every reader takes. */
export function literal(value: DecimalInput): string {
  const text = dec(dec(value).toNumber()).toFixed();
  return text.startsWith("-") ? `(${text})` : text;
}

/** A text as a formula holds it, in pieces of what a program takes as one. */
export function textIn(text: string): string {
  const pieces = printable(text).match(/.{1,100}/gsu) ?? [""];
  return pieces.map((piece) => `"${piece.replaceAll('"', '""')}"`).join("&");
}

/** The whole number below a formula, without INT, which not every engine rounds down; noise of doubles does not count. */
export function floorOf(text: string): string {
  return `(ROUND(${text},0)-IF(ROUND(${text},0)-(${text})>${noiseOf(text)},1,0))`;
}

/** The whole number above. */
export function ceilOf(text: string): string {
  return `(ROUND(${text},0)+IF((${text})-ROUND(${text},0)>${noiseOf(text)},1,0))`;
}

function noiseOf(text: string): string {
  return `ABS(${text})*${wholeWithin}`;
}

/** The nearest whole number of steps, halves away from zero, in spite of the noise of doubles. */
export function stepsOf(value: string, step: string): string {
  return `ROUND(ROUND((${value})/${step},9),0)`;
}

function fedTerms(fed: Fed, cellOf: (id: string) => string): Terms {
  const cell = (id: string): Term => ({ text: cellOf(id), binds: atom });
  if ("constant" in fed) return { text: literal(fed.constant), binds: atom };
  return "figure" in fed ? cell(fed.figure) : fed.figures.map(cell);
}

function write(expression: Expression, names: Readonly<Record<string, Terms>>): Terms {
  switch (expression.kind) {
    case "number":
      return { text: literal(expression.text), binds: atom };
    case "name": {
      const terms = names[expression.name];
      if (terms === undefined) throw new RangeError(`a formula misses the value of "${expression.name}"`);
      return terms;
    }
    case "negative":
      return each([write(expression.of, names)], ([of]) => ({ text: `(-${inBrackets(of, atom)})`, binds: atom }));
    case "operation": {
      const { operator, left, right } = expression;
      return each([write(left, names), write(right, names)], ([a, b]) => operation(operator, a, b));
    }
    case "call":
      return call(
        expression.name,
        expression.of.map((part) => write(part, names)),
      );
  }
}

function operation(operator: Operator, left: Term | undefined, right: Term | undefined): Term {
  const binds = strengths[operator];
  const tight = operator === "+" || operator === "*" ? binds : binds + 1;
  return {
    text: `${inBrackets(left, operator === "^" ? atom : binds)}${operator}${inBrackets(right, tight)}`,
    binds,
  };
}

function inBrackets(term: Term | undefined, least: number): string {
  if (term === undefined) throw new RangeError("a formula misses a part");
  return term.binds < least ? `(${term.text})` : term.text;
}

function call(name: FunctionName, parts: readonly Terms[]): Terms {
  const function_ = (text: string): Term => ({ text, binds: atom });
  switch (name) {
    case "sum":
    case "min":
    case "max":
      return function_(
        joined(
          name.toUpperCase(),
          parts.flat().map(({ text }) => text),
        ),
      );
    case "sqrt":
    case "exp":
    case "ln":
      return each(parts.slice(0, 1), ([of]) => function_(`${name.toUpperCase()}(${of?.text ?? ""})`));
    case "ceil":
    case "floor":
      return each(parts.slice(0, 1), ([of]) => function_((name === "ceil" ? ceilOf : floorOf)(of?.text ?? "")));
  }
}

/** Most values that one call takes in a file of Office Open XML. */
const mostValues = 200;

/** A call over any number of values, in calls of calls where they are too many for one. */
export function joined(name: string, texts: readonly string[]): string {
  if (texts.length <= mostValues) return `${name}(${texts.join(",")})`;
  const groups = Array.from({ length: Math.ceil(texts.length / mostValues) }, (_, index) =>
    texts.slice(index * mostValues, (index + 1) * mostValues),
  );
  return `${name}(${groups.map((group) => `${name}(${group.join(",")})`).join(",")})`;
}

function each(parts: readonly Terms[], work: (terms: readonly Term[]) => Term): Terms {
  const lengths = parts.flatMap((part) => (isList(part) ? [part.length] : []));
  const [length] = lengths;
  if (length === undefined) return work(parts.flat());
  if (lengths.some((other) => other !== length)) throw new RangeError("a formula joins lists of unlike length");
  return Array.from({ length }, (_, index) =>
    work(parts.flatMap((part) => (isList(part) ? part.slice(index, index + 1) : [part]))),
  );
}

function isList(terms: Terms): terms is readonly Term[] {
  return Array.isArray(terms);
}
