import type { Decimal } from "@noodlewright/core/figure";
import { evaluate, parseExpression } from "#core/figure/expression.ts";

/** Works out a printed formula such as `(60 × 12.5 + 40 × 9) ÷ 100`, as a reader with a calculator would. */
export function evaluateText(numbers: string): Decimal {
  const plain = numbers.replaceAll("×", "*").replaceAll("÷", "/").replaceAll("−", "-");
  return evaluate(parseExpression(plain), () => undefined);
}
