import fc from "fast-check";
import { describe, expect, expectTypeOf, it } from "vitest";
import {
  type Expression,
  evaluate,
  type NamesIn,
  parseExpression,
  type Value,
  writeExpression,
} from "#core/figure/expression.ts";
import { worked } from "#core/figure/figure.ts";
import { dec } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { evaluateText } from "./evaluate-text.ts";

const worth = (text: string, values: Readonly<Record<string, Value>> = {}) =>
  evaluate(parseExpression(text), (name) => values[name]);
const plainly = (text: string): string => writeExpression(parseExpression(text), (name) => name);

it("has names that the compiler reads, so that one which nothing is fed under does not compile", () => {
  expectTypeOf<NamesIn<"100 * sum(old_share / 1e-3) - max(by5, x)">>().toEqualTypeOf<"old_share" | "by5" | "x">();
  expectTypeOf<NamesIn<`x * ${string} / y`>>().toEqualTypeOf<"x" | "y">();
  expectTypeOf(worked<"befor + water", { before: 1; water: 2 }>)
    .parameter(2)
    .toHaveProperty("befor");
  expectTypeOf(worked<"before + water", { before: 1; water: 2 }>)
    .parameter(2)
    .not.toHaveProperty("befor");
});

describe("evaluate", () => {
  it.each([
    ["1 + 2 * 3", "7"],
    ["(1 + 2) * 3", "9"],
    ["10 - 4 - 3", "3"],
    ["100 / 10 / 5", "2"],
    ["100 / (10 / 5)", "50"],
    ["2 * 3 ^ 2", "18"],
    ["-2 ^ 2", "-4"],
    ["(-2) ^ 2", "4"],
    ["2 ^ 3 ^ 2", "64"],
    ["2 ^ (3 ^ 2)", "512"],
    ["-3 + 5", "2"],
    ["-3 * 2", "-6"],
    ["2 - -3", "5"],
    ["1.5e2", "150"],
    ["25e-1", "2.5"],
    ["sqrt(16) + exp(0) + ln(1)", "5"],
    ["ceil(2.1) * 10 + floor(2.9)", "32"],
    ["ceil(-2.1)", "-2"],
    ["sum(1, 2, 3)", "6"],
    ["min(3, 1, 2)", "1"],
    ["max(3, 1, 2)", "3"],
    ["0.1 + 0.2", "0.3"],
  ])("%s is %s", (text, expected) => {
    expect(worth(text).toString()).toBe(expected);
  });

  it("works item by item through lists", () => {
    const lists = { share: [dec(60), dec(40)], content: [dec(12), dec(10)], factor: dec(2) };
    expect(worth("sum(share * content) / 100", lists).toString()).toBe("11.2");
    expect(worth("sum(factor * share)", lists).toString()).toBe("200");
    expect(worth("max(share * content)", lists).toString()).toBe("720");
    expect(worth("min(-content)", lists).toString()).toBe("-12");
    expect(worth("sum(nothing)", { nothing: [] }).toString()).toBe("0");
  });

  it.each([
    ["2.000000000000000000000000000001", "2", "2"],
    ["1.999999999999999999999999999999", "2", "2"],
    ["2.0000001", "3", "2"],
    ["1.9999999", "2", "1"],
  ])("takes %s for whole only where the last digits say no more: %s above, %s below", (value, above, below) => {
    const a = dec(value);
    expect(worth("ceil(a)", { a }).toString()).toBe(above);
    expect(worth("floor(a)", { a }).toString()).toBe(below);
  });

  it.each([
    ["a + 1", {}, "a"],
    ["1 / (a - a)", { a: dec(1) }, "divides by zero"],
    ["a", { a: [dec(1)] }, "list"],
    ["sum(a * b)", { a: [dec(1)], b: [dec(1), dec(2)] }, "unlike length"],
    ["ln(a)", { a: dec(0) }, "finite"],
    ["sqrt(a)", { a: dec(-1) }, "finite"],
  ])("refuses %s with %o", (text, values, why) => {
    expect(() => worth(text, values)).toThrow(RangeError);
    expect(() => worth(text, values)).toThrow(why);
  });
});

describe("parseExpression", () => {
  it.each(["", "1 +", "(1", "1)", "1 2", "a b", "* 2", "sin(1)", "sum()", "sum(1,)", "1 $ 2", "min(1 2)"])(
    "refuses %j",
    (text) => {
      expect(() => parseExpression(text)).toThrow(SyntaxError);
    },
  );
});

describe("writeExpression", () => {
  it.each([
    ["a * (b - 1)", "a × (b − 1)"],
    ["(a * b) - 1", "a × b − 1"],
    ["a - (b - c)", "a − (b − c)"],
    ["a - b - c", "a − b − c"],
    ["a / (b * c)", "a ÷ (b × c)"],
    ["a / b * c", "a ÷ b × c"],
    ["(a + b) / (c + d)", "(a + b) ÷ (c + d)"],
    ["-(a + b)", "−(a + b)"],
    ["a + -b", "a + (−b)"],
    ["a ^ 2", "a^2"],
    ["(a + 1) ^ 2", "(a + 1)^2"],
    ["a ^ (b ^ c)", "a^(b^c)"],
    ["(a ^ b) ^ c", "(a^b)^c"],
    ["ceil(a / b)", "ceil(a ÷ b)"],
    ["min(a, b)", "min(a, b)"],
  ])("writes %s as %s", (text, written) => {
    expect(plainly(text)).toBe(written);
  });

  it("writes a sum over a list as its items", () => {
    const lists: Readonly<Record<string, readonly string[]>> = { share: ["60", "40"], content: ["12", "10"] };
    const write = (name: string, index: number | undefined): string => lists[name]?.[index ?? 0] ?? name;
    const lengths = { share: 2, content: 2 };
    const written = (text: string): string => writeExpression(parseExpression(text), write, lengths);
    expect(written("sum(share * content) / 100")).toBe("(60 × 12 + 40 × 10) ÷ 100");
    expect(written("max(share - content)")).toBe("max(60 − 12, 40 − 10)");
    expect(writeExpression(parseExpression("sum(none) / 100"), write, { none: 0 })).toBe("0 ÷ 100");
  });

  const expressions = fc.letrec<{ any: Expression }>((tie) => ({
    any: fc.oneof(
      { maxDepth: 5, withCrossShrink: true },
      fc.integer({ min: 0, max: 99 }).map((n): Expression => ({ kind: "number", text: String(n) })),
      tie("any").map((of): Expression => ({ kind: "negative", of })),
      fc
        .tuple(fc.constantFrom("+", "-", "*", "/"), tie("any"), tie("any"))
        .map(([operator, left, right]): Expression => ({ kind: "operation", operator, left, right })),
      tie("any").map(
        (left): Expression => ({ kind: "operation", operator: "^", left, right: { kind: "number", text: "2" } }),
      ),
    ),
  })).any;

  it("writes what is calculated", () => {
    always(400, [expressions], (expression) => {
      let value: ReturnType<typeof evaluate>;
      try {
        value = evaluate(expression, () => undefined);
      } catch {
        return;
      }
      const again = evaluateText(writeExpression(expression, (name) => name));
      const size = value.abs().plus(1);
      expect(again.minus(value).abs().div(size).lt("1e-25")).toBe(true);
    });
  });
});
