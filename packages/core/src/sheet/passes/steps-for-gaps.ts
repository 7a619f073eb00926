import { exact, type Figure } from "../../figure/figure.ts";
import { answer, type Note, note, type Outcome, type Problem, problem, refuse } from "../../figure/problem.ts";
import { type DecimalText, dec, HUNDRED } from "../../number/decimal.ts";
import { fixedSteps } from "./fixed-steps.ts";
import { freeSteps } from "./free-steps.ts";
import { keepsTo, reductionOf } from "./gap-choice.ts";
import type { Gaps } from "./machine.ts";
import { mm, type PassStep, percent, type Reduction, stepAt, type Way } from "./pass-step.ts";

/** Gaps that are given one by one, widest first, mm. */
export interface GapList {
  readonly kind: "list";
  readonly gaps: readonly DecimalText[];
}

/** Works out the way for whatever kind of gaps there are. */
export function stepsFor(gaps: Gaps | GapList, reduction: Reduction): Outcome<Way> {
  switch (gaps.kind) {
    case "free":
      return freeSteps(dec(gaps.least), dec(gaps.greatest), reduction);
    case "list":
      return wayOf(reduction, listedSteps(gaps.gaps, reduction));
    case "dial":
    case "line":
    case "sticks":
      return wayOf(reduction, fixedSteps(gaps, reduction));
  }
}

function wayOf({ first }: Reduction, steps: Outcome<readonly PassStep[]>): Outcome<Way> {
  if (!steps.ok) return steps;
  const last = steps.value.at(-1)?.thickness ?? first;
  return answer({ last, steps: () => steps.value }, steps.notes);
}

function listedSteps(gaps: readonly DecimalText[], reduction: Reduction): Outcome<readonly PassStep[]> {
  const { first, largestReduction, springBack, passesBefore } = reduction;
  const steps = gaps.map((gap, index) => stepAt(passesBefore + index + 1, gap, springBack));
  const problems: Problem[] = [...endProblems(steps, reduction)];
  const notes: Note[] = [];
  for (const [index, { thickness }] of steps.entries()) {
    const before = exact(steps[index - 1]?.thickness ?? first);
    const path = ["gaps", "gaps", index];
    if (exact(thickness).gt(before)) {
      problems.push(problem("passes.not-thinner", path, { thickness: mm(exact(thickness)), before: mm(before) }));
    } else if (!keepsTo(exact(largestReduction), before, exact(thickness))) {
      const limit = percent(exact(largestReduction).div(HUNDRED));
      const reduction = percent(reductionOf(before, exact(thickness)));
      notes.push(note("passes.above-limit", path, { pass: passesBefore + index + 1, reduction, limit }));
    }
  }
  return problems.length > 0 ? refuse(...problems) : answer(steps, notes);
}

function endProblems(steps: readonly PassStep[], { final, finalTolerance }: Reduction): readonly Problem[] {
  const last = steps.at(-1);
  if (last === undefined) return [problem("passes.no-gaps", ["gaps", "gaps"], {})];
  const off = exact(last.thickness).minus(exact(final)).abs();
  if (off.lte(exact(finalTolerance))) return [];
  const shown = (figure: Figure) => mm(exact(figure));
  const facts = { last: shown(last.thickness), final: shown(final), within: shown(finalTolerance) };
  return [problem("passes.list-misses-final", ["gaps", "gaps"], facts)];
}
