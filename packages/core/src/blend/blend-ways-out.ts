import { found } from "../figure/figure.ts";
import { type Note, note } from "../figure/problem.ts";
import { onMoisture } from "../materials/moisture.ts";
import { type Decimal, dec, decimalText, HUNDRED, ZERO } from "../number/decimal.ts";
import { questionProblems } from "./blend-checks.ts";
import { best } from "./blend-extreme.ts";
import { lookedAt } from "./blend-figures.ts";
import { atBasis, toHundredths, unitAt } from "./blend-limits.ts";
import type { FlourNeeded } from "./blend-question.ts";
import { inStep, type Setup, stepProblem } from "./blend-setup.ts";
import type { Budget } from "./step-budget.ts";
import { anyFractions, anySteps } from "./step-search.ts";

/** For each flour that may be in the blend: the least protein it would have to hold, all else as it is. */
export function floursNeeded(setup: Setup, budget: Budget): readonly FlourNeeded[] {
  const { flours, targets } = setup.question;
  const limit = setup.targets.find(({ id }) => id === "protein.least");
  if (limit === undefined || targets.protein === undefined) return [];
  const { basis } = targets.protein;
  const ones = flours.map(() => dec(1));
  const { top } = atBasis(flours, ones, basis);
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
    if (extra === undefined || !extra.gt(0) || extra.plus(flour.protein).gt(HUNDRED)) return [];
    const told = (asIs: Decimal): Decimal =>
      basis.kind === "as is" ? asIs : onMoisture(asIs, flour.moisture, basis.moisture);
    const protein = found(
      { id: `flour-needed.${index + 1}`, label: `protein ${flour.name} would need`, unit: unitAt(basis), places: 2 },
      // rounded up, so that a flour of just that much will do
      dec(toHundredths(told(dec(flour.protein).plus(extra)), "up")),
      "search in whole steps, all other figures as they are",
      lookedAt(setup.question),
    );
    const { name, moisture } = flour;
    return [{ name, moisture, basis, has: decimalText(told(dec(flour.protein))), protein }];
  });
  return needed.toSorted((a, b) => rise(a).cmp(rise(b)));
}

function rise({ has, protein }: FlourNeeded): Decimal {
  return dec(protein.value).minus(has);
}

/** The coarsest finer step at which there is an answer: none where not even fractions of the finest hold. */
export function finerStepOf(setup: Setup, budget: Budget): string | undefined {
  const finer = ["2", "1", "0.5", "0.2", "0.1"].filter((step) => dec(step).lt(setup.question.step ?? 1));
  if (finer.length === 0 || !anyFractions(stepProblem(inStep(setup, "0.1")))) return undefined;
  return finer.find((step) => {
    const one = inStep(setup, step);
    return questionProblems(one.question).length === 0 && anySteps(stepProblem(one), budget).kind === "found";
  });
}

export function notesOf(setup: Setup): readonly Note[] {
  if (setup.question.targets.protein === undefined) return [];
  return [note("blend.whole-steps", ["step"], {})];
}
