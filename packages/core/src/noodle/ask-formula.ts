import type { StyleCheck } from "../blend/style-notes.ts";
import { formulaStyle } from "../explore/spec-style.ts";
import { frozen } from "../figure/frozen.ts";
import { answer, type Outcome } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { formulaReport } from "../report/formula-report.ts";
import { type Answer, answered } from "./answer.ts";
import { asRead, type Noodle } from "./noodle.ts";
import { missedWants } from "./planned-batch.ts";

/**
 * The formula on 100 of flour, held against what is published for its style where the spec names one.
 *
 * Problems: those of `askStyle`.
 * @example shown(askFormula(example("school-noodle")).value.water.added) // => "35.00 % of flour"
 */
export function askFormula(noodle: Noodle): Answer<Formula> {
  const style = askStyle(noodle);
  return answered(style.ok ? answer(noodle.formula, style.notes) : style, {
    notes: (own) => [...noodle.notes, ...missedWants(noodle), ...own],
    report: (formula, notes) => formulaReport(formula, { notes, units: noodle.units }),
  });
}

/**
 * Holds the formula against what is published for the `style:` of its spec; nothing where the spec names none.
 *
 * Problems: `style.unknown`.
 * @example askStyle(example("school-noodle")).value // => []
 */
export function askStyle(noodle: Noodle): Outcome<readonly StyleCheck[]> {
  const { spec, formula } = asRead(noodle);
  return frozen(formulaStyle(spec, formula));
}
