import { found } from "../figure/figure.ts";
import { type Note, note } from "../figure/problem.ts";
import { type Decimal, dec, HUNDRED, ZERO } from "../number/decimal.ts";
import { best } from "./blend-extreme.ts";
import { atBasis } from "./blend-limits.ts";
import type { FlourNeeded } from "./blend-question.ts";
import { type Setup, setUp, stepProblem } from "./blend-setup.ts";
import type { Budget } from "./step-budget.ts";
import { anySteps } from "./step-search.ts";

/** For each flour that may be in the blend: the least protein it would have to hold, all else as it is. */
export function floursNeeded(setup: Setup, budget: Budget): readonly FlourNeeded[] {
  const { flours, targets } = setup.question;
  const limit = setup.targets.find(({ id }) => id === "protein.least");
  if (limit === undefined || targets.protein === undefined) return [];
  const { top } = atBasis(
    flours,
    flours.map(() => dec(1)),
    targets.protein.basis,
  );
  const needed = flours.flatMap((flour, index): readonly FlourNeeded[] => {
    const others = stepProblem(setup, (id) => !id.startsWith("protein."));
    const present = { ...others, least: others.least.with(index, Math.max(1, others.least[index] ?? 0)) };
    const lacking = {
      ...limit,
      side: "most" as const,
      top: limit.top.map((value, at) => limit.bound.times(limit.bottom[at] ?? ZERO).minus(value)),
      bottom: flours.map((_, at) => (at === index ? (top[at] ?? ZERO) : ZERO)),
    };
    const extra = best(present, lacking, budget);
    if (extra === undefined || !extra.value.gt(0) || extra.value.plus(flour.protein).gt(HUNDRED)) return [];
    const protein = found({
      id: `flour-needed.${index + 1}`,
      label: `protein ${flour.name} would need`,
      unit: "%",
      places: 2,
      value: dec(flour.protein).plus(extra.value),
      by: "search in whole steps, all other figures as they are",
      sources: [],
    });
    return [{ name: flour.name, has: flour.protein, protein }];
  });
  return needed.toSorted((a, b) => rise(a).cmp(rise(b)));
}

function rise({ has, protein }: FlourNeeded): Decimal {
  return dec(protein.value).minus(has);
}

/** The coarsest finer step at which there is an answer. */
export function finerStepOf(setup: Setup, budget: Budget): string | undefined {
  return ["2", "1", "0.5", "0.2", "0.1"]
    .filter((step) => dec(step).lt(setup.question.step ?? 1))
    .find((step) => {
      const finer = setUp({ ...setup.question, step });
      return "question" in finer && anySteps(stepProblem(finer), budget).kind === "found";
    });
}

export function notesOf(setup: Setup): readonly Note[] {
  if (setup.question.targets.protein === undefined) return [];
  return [note("blend.whole-steps", ["step"], {})];
}
