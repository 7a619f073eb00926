import { answer, inputProblem, type Outcome, refuse } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import type { FormulaLine } from "../formula/lines.ts";
import { massField, quantityField } from "../materials/fields.ts";
import { dec } from "../number/decimal.ts";
import { type Trial, waterTrial } from "./water-trial.ts";

/** Flour of a trial dough and the step of its water unless asked otherwise. */
const usual = { flour: "200 g", step: "1 %" } as const;

/**
 * Lays out the trial of the water of a formula: its flours and all else, the poured water a step less, as it is, a step more.
 *
 * @param asked - flour of a dough and step of the water, as text with units
 * Problems: `quantity.unreadable`, `quantity.out-of-range`, and those of `waterTrial`.
 * Source: common practice.
 */
export function formulaTrial(
  formula: Formula,
  asked: { readonly flour?: string; readonly step?: string },
): Outcome<Trial> {
  const flour = massField("Flour of a dough", [usual.flour]).safeParse(asked.flour ?? usual.flour);
  const step = quantityField(["share"], "Step of the water", [usual.step], {
    above: "0",
    most: "10",
    words: "a step above 0 and at most 10 % of flour",
  }).safeParse(asked.step ?? usual.step);
  if (!flour.success) return refuse(unread("flour", asked.flour, "a mass above zero", usual.flour));
  if (!step.success) return refuse(unread("step", asked.step, "a step above 0 and at most 10 % of flour", usual.step));
  const shares = (lines: readonly FormulaLine[]) =>
    lines.filter(({ parts }) => !dec(parts.value).isZero()).map(({ name, parts }) => ({ name, percent: parts.value }));
  const { lines, water } = formula;
  const outcome = waterTrial({
    flour: flour.data.value,
    flours: shares(lines.filter(({ role }) => role === "flour")),
    water: water.tap.value,
    step: step.data.value,
    others: shares(lines.filter(({ role }) => role !== "flour" && role !== "water")),
  });
  return outcome.ok ? answer(outcome.value) : outcome;
}

function unread(key: string, text: string | undefined, expected: string, example: string) {
  return inputProblem("spec.quantity", [key], `"${text ?? ""}"`, expected, `write it like "${example}"`);
}
