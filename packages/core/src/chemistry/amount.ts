import { answer, type Outcome } from "../figure/problem.ts";
import { type DecimalInput, type DecimalText, dec, decimalText } from "../number/decimal.ts";
import type { Composition } from "./composition.ts";
import type { Amount } from "./make-up.ts";
import { massOfVolume } from "./strength.ts";

/** Grams of an amount stated by mass or by volume; problems as in `solutionDensity`. @example gramsOf({ species: {}, water: "100", inert: "0" }, { grams: 5 }, 20).value // => "5" */
export function gramsOf(composition: Composition, amount: Amount, temperature: DecimalInput): Outcome<DecimalText> {
  if ("grams" in amount) return answer(decimalText(dec(amount.grams)));
  const mass = massOfVolume(composition, amount.millilitres, temperature);
  return mass.ok ? answer(mass.value.value, mass.notes) : mass;
}
