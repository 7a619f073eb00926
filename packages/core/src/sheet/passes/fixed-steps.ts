import { exact } from "../../figure/figure.ts";
import { answer, type Outcome, type Problem, problem, refuse } from "../../figure/problem.ts";
import { type Decimal, dec, HUNDRED, ONE } from "../../number/decimal.ts";
import { bestWay, reductionOf, type Stop, type TooBigStep, thinnestAfter, tooBigSteps } from "./gap-choice.ts";
import type { Gaps } from "./machine.ts";
import { downwards, mm, type PassStep, percent, type Reduction, stepAt } from "./pass-step.ts";

/** The best steps among fixed settings, ending at the one nearest to the final thickness. */
export function fixedSteps(gaps: Exclude<Gaps, { kind: "free" }>, reduction: Reduction): Outcome<readonly PassStep[]> {
  const [first, final, limit] = [exact(reduction.first), exact(reduction.final), exact(reduction.largestReduction)];
  const stops = gaps.settings
    .map(({ name, gap }) => ({ name, gap: dec(gap), thickness: dec(gap).times(exact(reduction.springBack)) }))
    .sort((a, b) => b.thickness.comparedTo(a.thickness));
  const thinner = stops.filter((stop) => stop.thickness.lt(first));
  const last = nearest(thinner, final);
  if (last === undefined || last.thickness.minus(final).abs().gt(exact(reduction.finalTolerance))) {
    return refuse(noSuchSetting(stops, final));
  }
  const useful = thinner.filter((stop) => stop.thickness.gte(last.thickness));
  const end = useful.findIndex((stop) => stop.thickness.eq(last.thickness)) + 1;
  const way = bestWay(first, useful.slice(0, end), limit);
  const on = [reduction.first, reduction.final, reduction.largestReduction, reduction.springBack];
  if (way === undefined) return refuse(...tooBigSteps(first, useful, limit).map((step) => stepProblem(step, limit)));
  const { passesBefore, springBack } = reduction;
  return answer(
    way.map(({ gap, name }, index) => stepAt(passesBefore + index + 1, gap, springBack, { setting: name, on })),
  );
}

function nearest(stops: readonly Stop[], final: Decimal): Stop | undefined {
  const distance = (stop: Stop) => stop.thickness.minus(final).abs();
  return stops.reduce<Stop | undefined>(
    (best, stop) => (best === undefined || distance(stop).lt(distance(best)) ? stop : best),
    undefined,
  );
}

function noSuchSetting(stops: readonly Stop[], final: Decimal): Problem {
  const thicker = stops.findLast((stop) => stop.thickness.gt(final));
  const thinner = stops.find((stop) => stop.thickness.lt(final));
  const near = [thicker, thinner].filter((stop) => stop !== undefined);
  const choices = near.map(({ name, thickness }) => ({ setting: name, thickness: mm(thickness) }));
  return problem("passes.final-not-on-setting", ["finalThickness"], {
    final: mm(final),
    choices,
    ...(choices[0] && { meant: `${choices[0].thickness} mm` }),
  });
}

function stepProblem({ from, before, to }: TooBigStep, limit: Decimal): Problem {
  return problem("passes.step-too-big", ["gaps"], {
    before: mm(before),
    to: to.name,
    after: mm(to.thickness),
    reduction: percent(reductionOf(before, to.thickness)),
    most: percent(limit.div(HUNDRED)),
    thickest: mm(downwards(to.thickness.div(ONE.minus(limit.div(HUNDRED))))),
    thinnest: mm(thinnestAfter(before, limit)),
    ...(from !== undefined && { from: from.name }),
  });
}
