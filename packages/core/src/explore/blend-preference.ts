import { dec, ZERO } from "../number/decimal.ts";
import { wholeNumbers } from "./blend-limits.ts";
import type { Setup } from "./blend-setup.ts";
import type { Objective, StepAnswer, StepProblem } from "./step-problem.ts";
import { bestSteps } from "./step-search.ts";
import { fewestChanged, isBetter } from "./step-subsets.ts";

/** A preference in whole steps: how to find the best blend, and which of two comes first. */
export interface Order {
  readonly words: string;
  readonly best: (problem: StepProblem) => StepAnswer;
  readonly comesFirst: (one: readonly number[], other: readonly number[]) => boolean;
}

const tie = "then more of the flour listed first, then of the second, and so on";

/** Turns the preference of a question into an order of blends. */
export function orderOf({ question, step }: Setup): Order {
  const { flours, prefer } = question;
  switch (prefer.kind) {
    case "cheapest": {
      const weights = wholeNumbers(flours.map(({ price }) => dec(price ?? 0)));
      return byObjectives(`lowest price first; ${tie}`, [{ kind: "weighted", weights }]);
    }
    case "most": {
      const weights = flours.map(({ name }) => (name === prefer.flour ? -1 : 0));
      return byObjectives(`most ${prefer.flour} first; ${tie}`, [{ kind: "weighted", weights }]);
    }
    case "fewest":
      return byChanges(
        `fewest flours first; ${tie}`,
        flours.map(() => 0),
        [],
      );
    case "nearest": {
      const shares = new Map(prefer.to.map(({ name, share }) => [name, dec(share)]));
      const from = flours.map(({ name }) => (shares.get(name) ?? ZERO).div(step).toDecimalPlaces(6));
      const perStep = dec(10).pow(Math.max(0, ...from.map((count) => count.decimalPlaces())));
      const moved: Objective = {
        kind: "moved",
        from: from.map((count) => count.times(perStep).toNumber()),
        perStep: perStep.toNumber(),
      };
      const words = `fewest flours changed first, then least flour moved; ${tie}`;
      return byChanges(
        words,
        from.map((count) => count.toNumber()),
        [moved],
      );
    }
  }
}

/** Brings one row as near to zero as the steps allow, and keeps it there from then on. */
export function nearestTo(problem: StepProblem, weights: readonly number[], reached: number): StepProblem {
  const over = { id: "nearest.over", coefficients: weights.map((weight) => -weight), constant: reached };
  const under = { id: "nearest.under", coefficients: weights, constant: reached };
  return { ...problem, rows: [...problem.rows, over, under] };
}

function byObjectives(words: string, objectives: readonly Objective[]): Order {
  return {
    words,
    best: (problem) => bestSteps(problem, objectives),
    comesFirst: (one, other) => isBetter(one, other, objectives),
  };
}

function byChanges(words: string, from: readonly number[], objectives: readonly Objective[]): Order {
  const changed = (steps: readonly number[]): number => steps.filter((count, index) => count !== from[index]).length;
  return {
    words,
    best: (problem) => fewestChanged(problem, from, objectives),
    comesFirst: (one, other) => {
      const difference = changed(one) - changed(other);
      return difference === 0 ? isBetter(one, other, objectives) : difference < 0;
    },
  };
}

/** Steps moved that make two blends differ in a way that matters: five hundredths of the blend. */
export function stepsThatMatter(setup: Setup): number {
  return dec(5).div(setup.step).ceil().toNumber();
}
