import { answer, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import { type DecimalInput, type DecimalText, dec, decimalText } from "../number/decimal.ts";
import type { Composition } from "./composition.ts";
import type { Amount } from "./make-up.ts";
import { massOfVolume } from "./strength.ts";

/** Grams of an amount stated by mass or by volume. Problems: `density.powder`, and those of `solutionDensity`. @example gramsOf({ species: {}, water: "100", inert: "0" }, { grams: 5 }, 20).value // => "5" */
export function gramsOf(composition: Composition, amount: Amount, temperature: DecimalInput): Outcome<DecimalText> {
  if ("grams" in amount) return answer(decimalText(dec(amount.grams)));
  const mass = massOfVolume(composition, amount.millilitres, temperature);
  if (mass.ok) return answer(mass.value.value, mass.notes);
  const isPowder = ({ code }: Problem): boolean => code === "density.too-strong";
  return refuse(...mass.problems.map((one) => (isPowder(one) ? problem("density.powder", [], {}) : one)));
}
