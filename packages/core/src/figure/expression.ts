import { type Decimal, dec, sum, ZERO } from "../number/decimal.ts";

/**
 * A formula as data: it is calculated, printed with names and printed with numbers from the one text, so that the
 * working shown cannot differ from the working done.
 *
 * Operators `+ - * / ^` (whole exponents), brackets, decimal numbers, names, and the functions
 * `sum min max sqrt exp ln ceil floor`. A name may stand for a list; then every operation works item by item
 * and `sum`, `min` or `max` brings the items together.
 */
export type Expression =
  | { readonly kind: "number"; readonly text: string }
  | { readonly kind: "name"; readonly name: string }
  | { readonly kind: "negative"; readonly of: Expression }
  | { readonly kind: "operation"; readonly operator: Operator; readonly left: Expression; readonly right: Expression }
  | { readonly kind: "call"; readonly name: FunctionName; readonly of: readonly Expression[] };

export type Operator = "+" | "-" | "*" | "/" | "^";
export type FunctionName = "sum" | "min" | "max" | "sqrt" | "exp" | "ln" | "ceil" | "floor";

type SignsOf<Text extends string> = Text extends `${infer Sign}${infer Rest}` ? Sign | SignsOf<Rest> : never;
type Lower = SignsOf<"abcdefghijklmnopqrstuvwxyz">;
type Digit = SignsOf<"0123456789">;
type WordSign = Lower | Uppercase<Lower> | Digit | "_";
type NameOf<Word extends string> = Word extends "" | FunctionName | `${Digit}${string}` ? never : Word;

/** The names in the text of a formula, as far as the compiler knows the text. */
export type NamesIn<
  Text extends string,
  Word extends string = "",
  Found = never,
> = Text extends `${infer Sign}${infer Rest}`
  ? Sign extends WordSign
    ? NamesIn<Rest, `${Word}${Sign}`, Found>
    : NamesIn<Rest, "", Found | NameOf<Word>>
  : Found | NameOf<Word>;

/** A number or a list of numbers. */
export type Value = Decimal | readonly Decimal[];

const functionNames: ReadonlySet<string> = new Set(["sum", "min", "max", "sqrt", "exp", "ln", "ceil", "floor"]);
const strength: Readonly<Record<Operator, number>> = { "+": 1, "-": 1, "*": 2, "/": 2, "^": 3 };
/** Figures carry 30 digits, so what is whole to this many counts as whole: 2.000…01 loads are 2, not 3. */
const wholeDigits = 26;
const parsed = new Map<string, Expression>();

/**
 * Reads a formula. Each text is read once and kept.
 *
 * @throws {SyntaxError} when the text is no formula: formulas are part of the program, so this is a bug.
 */
export function parseExpression(text: string): Expression {
  const known = parsed.get(text);
  if (known !== undefined) return known;
  const reader = new Reader(text);
  const expression = reader.expression(0);
  reader.end();
  parsed.set(text, expression);
  return expression;
}

class Reader {
  readonly #tokens: readonly string[];
  readonly #text: string;
  #next = 0;

  constructor(text: string) {
    this.#text = text;
    this.#tokens = text.match(/\d+(?:\.\d+)?(?:e-?\d+)?|[A-Za-z_]\w*|\S/gu) ?? [];
  }

  expression(least: number): Expression {
    let left = this.operand();
    for (;;) {
      const operator = this.#tokens[this.#next];
      if (!isOperator(operator) || strength[operator] < least) return left;
      this.#next += 1;
      const right = this.expression(strength[operator] + 1);
      left = { kind: "operation", operator, left, right };
    }
  }

  operand(): Expression {
    const token = this.#tokens[this.#next++];
    if (token === undefined) throw this.wrong("ends too early");
    if (token === "-") return { kind: "negative", of: this.expression(strength["*"]) };
    if (token === "(") {
      const inner = this.expression(0);
      this.take(")");
      return inner;
    }
    if (/^\d/u.test(token)) return { kind: "number", text: token };
    if (!/^[A-Za-z_]/u.test(token)) throw this.wrong(`has "${token}" where a value should be`);
    if (this.#tokens[this.#next] !== "(") return { kind: "name", name: token };
    if (!isFunction(token)) throw this.wrong(`calls the unknown function "${token}"`);
    this.take("(");
    const of = [this.expression(0)];
    while (this.#tokens[this.#next] === ",") {
      this.#next += 1;
      of.push(this.expression(0));
    }
    this.take(")");
    return { kind: "call", name: token, of };
  }

  take(token: string): void {
    if (this.#tokens[this.#next++] !== token) throw this.wrong(`misses "${token}"`);
  }

  end(): void {
    if (this.#next !== this.#tokens.length) throw this.wrong(`goes on with "${this.#tokens[this.#next]}"`);
  }

  wrong(what: string): SyntaxError {
    return new SyntaxError(`the formula "${this.#text}" ${what}`);
  }
}

function isOperator(token: string | undefined): token is Operator {
  return token !== undefined && token in strength;
}

function isFunction(token: string): token is FunctionName {
  return functionNames.has(token);
}

/**
 * Calculates a formula with the values of its names.
 *
 * @throws {RangeError} on a missing name, lists of unlike length or a division by zero: bugs of the caller, who has to rule them out.
 * @example evaluate(parseExpression("sum(a * b) / 100"), (name) => ({ a: [dec(60), dec(40)], b: [dec(12), dec(10)] })[name]).toString() // => "11.2"
 */
export function evaluate(expression: Expression, named: (name: string) => Value | undefined): Decimal {
  const result = resolve(expression, named);
  if (isList(result)) throw new RangeError("a formula gave a list where a number was wanted");
  if (!result.isFinite()) throw new RangeError("a formula gave no finite number");
  return result;
}

function resolve(expression: Expression, named: (name: string) => Value | undefined): Value {
  switch (expression.kind) {
    case "number":
      return dec(expression.text);
    case "name": {
      const value = named(expression.name);
      if (value === undefined) throw new RangeError(`a formula misses the value of "${expression.name}"`);
      return value;
    }
    case "negative":
      return each(resolve(expression.of, named), (a) => a.negated());
    case "operation":
      return joined(expression.operator, resolve(expression.left, named), resolve(expression.right, named));
    case "call":
      return call(
        expression.name,
        expression.of.map((part) => resolve(part, named)),
      );
  }
}

function operate(operator: Operator, a: Decimal, b: Decimal): Decimal {
  switch (operator) {
    case "+":
      return a.plus(b);
    case "-":
      return a.minus(b);
    case "*":
      return a.times(b);
    case "/":
      if (b.isZero()) throw new RangeError("a formula divides by zero");
      return a.div(b);
    case "^":
      return a.pow(b);
  }
}

function call(name: FunctionName, values: readonly Value[]): Value {
  const [first = ZERO] = values;
  switch (name) {
    case "sum":
      return sum(values.length === 1 && isList(first) ? first : values.flat());
    case "min":
    case "max":
      return values.flat().reduce((best, value) => ((name === "min" ? value.lt(best) : value.gt(best)) ? value : best));
    case "sqrt":
    case "exp":
    case "ln":
      return each(first, (a) => a[name]());
    case "ceil":
    case "floor":
      return each(first, (a) => a.toSignificantDigits(wholeDigits)[name]());
  }
}

function each(value: Value, work: (number: Decimal) => Decimal): Value {
  return isList(value) ? value.map(work) : work(value);
}

/** Two sides of an operation: list and list item by item, a list and a number each item with the number. */
function joined(operator: Operator, left: Value, right: Value): Value {
  if (!isList(left))
    return isList(right) ? right.map((b) => operate(operator, left, b)) : operate(operator, left, right);
  if (!isList(right)) return left.map((a) => operate(operator, a, right));
  if (left.length !== right.length) throw new RangeError("a formula joins lists of unlike length");
  return left.map((a, index) => operate(operator, a, right[index] ?? ZERO));
}

function isList(value: Value): value is readonly Decimal[] {
  return Array.isArray(value);
}

const signs: Readonly<Record<Operator, string>> = { "+": " + ", "-": " − ", "*": " × ", "/": " ÷ ", "^": "^" };

/** How to write a name: the whole of it, or one item of its list. */
type NameWriter = (name: string, index: number | undefined) => string;

/**
 * Writes a formula out. With `lengths`, a `sum` over lists is written as its items added up.
 *
 * @example writeExpression(parseExpression("a * (b - 1)"), (name) => name) // => "a × (b − 1)"
 */
export function writeExpression(
  expression: Expression,
  write: NameWriter,
  lengths: Readonly<Record<string, number>> = {},
  index?: number,
): string {
  const inner = (part: Expression, least: number): string => {
    const text = writeExpression(part, write, lengths, index);
    const weak = part.kind === "operation" && strength[part.operator] < least;
    return weak || part.kind === "negative" ? `(${text})` : text;
  };
  switch (expression.kind) {
    case "number":
      return expression.text;
    case "name":
      return write(expression.name, index);
    case "negative":
      return `−${inner(expression.of, strength["*"])}`;
    case "operation": {
      const own = strength[expression.operator];
      const power = expression.operator === "^";
      const tight = power || expression.operator === "-" || expression.operator === "/" ? own + 1 : own;
      return `${inner(expression.left, power ? tight : own)}${signs[expression.operator]}${inner(expression.right, tight)}`;
    }
    case "call": {
      const [first] = expression.of;
      const length = first === undefined ? undefined : listLength(first, lengths);
      if (
        length !== undefined &&
        index === undefined &&
        first !== undefined &&
        ["sum", "min", "max"].includes(expression.name)
      ) {
        if (length === 0) return "0";
        const items = Array.from({ length }, (_, i) => writeExpression(first, write, lengths, i));
        return expression.name === "sum" ? `(${items.join(" + ")})` : `${expression.name}(${items.join(", ")})`;
      }
      return `${expression.name}(${expression.of.map((part) => writeExpression(part, write, lengths, index)).join(", ")})`;
    }
  }
}

function listLength(expression: Expression, lengths: Readonly<Record<string, number>>): number | undefined {
  switch (expression.kind) {
    case "number":
      return undefined;
    case "name":
      return lengths[expression.name];
    case "negative":
      return listLength(expression.of, lengths);
    case "operation":
      return listLength(expression.left, lengths) ?? listLength(expression.right, lengths);
    case "call":
      return undefined;
  }
}
