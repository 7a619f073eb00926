import { exact, type Figure } from "../figure/figure.ts";
import { answer, inputProblem, type Outcome, type Problem, refuse } from "../figure/problem.ts";
import { commonPractice, definition, type Source } from "../figure/source.ts";
import { decimalText, HUNDRED } from "../number/decimal.ts";
import { type CompoundStep, compoundingSteps } from "./compounding.ts";
import { asked, askedOr } from "./inputs.ts";
import { lengthFigure, reductionFigure, timed, totalTime, tripsFigure } from "./pass-figures.ts";
import { type PassRequest, passRequestProblems } from "./pass-request.ts";
import type { PassStep } from "./pass-step.ts";
import { stepsFor } from "./steps-for-gaps.ts";

/** One pass between the rolls. The crumb of the first rough pass has no thickness before. */
export interface Pass {
  readonly number: number;
  readonly kind: "rough" | "compound" | "reduce";
  readonly layers: number;
  readonly setting?: string;
  readonly gap: Figure;
  readonly thickness: Figure;
  readonly reduction?: Figure;
  readonly length?: Figure;
  readonly runningTime?: Figure;
}

/** All passes of a sheet. */
export interface PassSchedule {
  readonly passes: readonly Pass[];
  readonly largestReduction: Figure;
  readonly springBack: Figure;
  /** From the first thickness to the last, compounding left out. */
  readonly totalReduction: Figure;
  readonly trips: Figure;
  readonly runningTime?: Figure;
}

const gapLists: Source = {
  cite: "laboratory gap lists 3.5-3-2.5-2-1.5-1 mm (appendix text of a Chinese sensory noodle method) and 2.75-2.5-2.0-1.5 mm (textbook copy), whose largest pass takes off one third",
  standing: "copy",
};
const ONE_THIRD = decimalText(HUNDRED.div(3));

/**
 * Plans the passes that take a dough to its final thickness.
 *
 * With a free gap: the fewest passes of equal ratio. With fixed settings: the fewest passes, then the most even ones. With
 * a list of gaps: the passes as listed, with a note where one goes beyond the limit. Lengths are of the sheet after the pass,
 * its mass and width unchanged; running time is that length at the roll speed.
 * Problems: `sheet.out-of-range`, `passes.not-thinner`, `passes.first-thickness`, `passes.no-gaps`, `passes.list-misses-final`, `passes.step-too-big`,
 * `passes.first-too-thick`, `passes.final-not-on-setting`, `passes.final-outside-gap`, `compounding.gap-not-there`, and those of the gaps.
 * Source: the limit of one third from published laboratory gap lists.
 *
 * @example passSchedule({ gaps: { kind: "free", least: "0.3", greatest: "12" }, firstThickness: "10", finalThickness: "1" }).ok // => true
 */
export function passSchedule(request: PassRequest): Outcome<PassSchedule> {
  const problems = passRequestProblems(request);
  if (problems.length > 0) return refuse(...problems);
  const springBack = askedOr(
    { id: "passes.spring-back", label: "spring-back", unit: "", places: 2 },
    request.springBack,
    { value: "1", source: { ...definition, cite: "no spring-back until the kitchen has measured its own" } },
  );
  const folded = request.compounding === undefined ? [] : compoundingSteps(request.compounding, springBack);
  const first =
    folded.at(-1)?.thickness ??
    asked({ id: "passes.first", label: "first thickness", unit: "mm", places: 2 }, request.firstThickness ?? "0");
  const final = asked({ id: "passes.final", label: "final thickness", unit: "mm", places: 2 }, request.finalThickness);
  if (exact(final).gte(exact(first))) return refuse(notThinner(exact(first).toString(), exact(final).toString()));
  const largestReduction = askedOr(
    { id: "passes.largest-reduction", label: "largest reduction of a pass", unit: "%", places: 1 },
    request.largestReduction,
    { value: ONE_THIRD, source: gapLists },
  );
  const finalTolerance = askedOr(
    { id: "passes.final-tolerance", label: "tolerance of the final thickness", unit: "mm", places: 2 },
    request.finalTolerance,
    { value: "0.1", source: commonPractice },
  );
  const steps = stepsFor(request.gaps, {
    first,
    final,
    largestReduction,
    springBack,
    finalTolerance,
    passesBefore: folded.length,
  });
  if (!steps.ok) return steps;
  const passes = numbered(request, folded, first, steps.value);
  const last = steps.value.at(-1)?.thickness ?? first;
  const times = passes.map((pass) => pass.runningTime).filter((time) => time !== undefined);
  return answer(
    {
      passes,
      largestReduction,
      springBack,
      totalReduction: reductionFigure("passes.total-reduction", "total reduction", first, last),
      trips: tripsFigure(folded.length, steps.value.length, request.stands ?? 1),
      ...(times.length > 0 ? { runningTime: totalTime(times) } : {}),
    },
    steps.notes,
  );
}

function notThinner(first: string, final: string): Problem {
  const found = `${final} mm from a dough of ${first} mm`;
  const advice = "lower the final thickness or start thicker";
  return inputProblem("passes.not-thinner", ["finalThickness"], found, "a final thickness below the first", advice);
}

function numbered(
  request: PassRequest,
  folded: readonly CompoundStep[],
  first: Figure,
  steps: readonly PassStep[],
): readonly Pass[] {
  const reduced = steps.map((step, index) => {
    const before = steps[index - 1]?.thickness ?? first;
    const pass = folded.length + index + 1;
    const reduction = reductionFigure(`pass-${pass}.reduction`, `reduction of pass ${pass}`, before, step.thickness);
    return { ...step, kind: "reduce" as const, layers: 1, reduction };
  });
  return [...folded, ...reduced].map((step, index) => {
    const number = index + 1;
    const length = lengthFigure(request, step.thickness, number);
    return { ...step, number, ...(length === undefined ? {} : { length, ...timed(request, length, number) }) };
  });
}
