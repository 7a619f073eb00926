import { usualTolerance } from "../batch/weighing.ts";
import { type DecimalText, dec, decimalText } from "../number/decimal.ts";
import type { Bounds } from "../spec/blend-schema.ts";
import type { Spec } from "../spec/spec.ts";

type Tolerance = Pick<Spec, "weighingTolerance">;

/**
 * How far off a wanted value is met: by the share that the weights of the spec may be off (`weighingTolerance`, 1 % unless
 * stated). A `±` that is written makes a range of its own.
 *
 * @example roomAround("36", {}) // => "0.36"
 */
export function roomAround(value: DecimalText, { weighingTolerance }: Tolerance): DecimalText {
  return decimalText(
    dec(value)
      .times(weighingTolerance?.value ?? usualTolerance)
      .div(100),
  );
}

/**
 * What meets that which is wanted: its range, or its value with the room around it.
 *
 * @example roomOf({ text: "36 %", value: "36" }, {}) // => { least: "35.64", most: "36.36", plusMinus: "0.36" }
 */
export function roomOf(
  { value, least, most }: Bounds,
  spec: Tolerance,
): { readonly least?: DecimalText; readonly most?: DecimalText; readonly plusMinus?: DecimalText } {
  if (value === undefined) return { ...(least !== undefined && { least }), ...(most !== undefined && { most }) };
  const plusMinus = roomAround(value, spec);
  return { least: decimalText(dec(value).minus(plusMinus)), most: decimalText(dec(value).plus(plusMinus)), plusMinus };
}
