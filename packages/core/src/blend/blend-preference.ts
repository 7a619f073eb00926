import { dec, sum, ZERO } from "../number/decimal.ts";
import { wholeNumbers } from "./blend-limits.ts";
import type { Setup } from "./blend-setup.ts";
import { unlikeness } from "./blend-unlike.ts";
import type { Objective, StepProblem } from "./step-problem.ts";

/** A preference in whole steps. */
export interface Order {
  readonly words: string;
  readonly objectives: readonly Objective[];
}

const tie = "then more of the flour listed first, then of the second, and so on";

/** Turns the preference of a question into an order of blends. */
export function orderOf({ question, unit }: Setup): Order {
  const { flours, prefer } = question;
  switch (prefer.kind) {
    case "cheapest": {
      const weights = wholeNumbers(flours.map(({ price }) => dec(price ?? 0)));
      return { words: `lowest price first; ${tie}`, objectives: [{ kind: "weighted", weights }] };
    }
    case "most": {
      const weights = flours.map(({ name }) => (name === prefer.flour ? -1 : 0));
      return { words: `most ${prefer.flour} first; ${tie}`, objectives: [{ kind: "weighted", weights }] };
    }
    case "use up": {
      const weights = flours.map(({ name }) => (prefer.flours.includes(name) ? -1 : 0));
      const words = `most of ${prefer.flours.join(" and ")} together first; ${tie}`;
      return { words, objectives: [{ kind: "weighted", weights }] };
    }
    case "fewest": {
      const used: Objective = { kind: "changed", from: flours.map(() => 0), perStep: 1 };
      return { words: `fewest flours first; ${tie}`, objectives: [used] };
    }
    case "nearest": {
      const shares = new Map(prefer.to.map(({ name, share }) => [name, dec(share)]));
      const total = sum([...shares.values()]);
      const from = flours.map(({ name }) => (shares.get(name) ?? ZERO).times(100).div(total));
      const steps = from.map((share) => share.div(unit).toDecimalPlaces(6));
      const perStep = dec(10).pow(Math.max(0, ...steps.map((count) => count.decimalPlaces())));
      const blend = { from: steps.map((count) => count.times(perStep).toNumber()), perStep: perStep.toNumber() };
      return {
        words: `least flour moved first, a part of a flour counting the more the less it is like the blend as it is; then fewest flours changed; ${tie}`,
        objectives: [
          { kind: "moved", ...blend, weights: unlikeness(flours, from) },
          { kind: "changed", ...blend },
        ],
      };
    }
  }
}

/** Brings one row as near to zero as the steps allow, and keeps it there from then on. */
export function nearestTo(problem: StepProblem, weights: readonly number[], reached: number): StepProblem {
  const over = { id: "nearest.over", coefficients: weights.map((weight) => -weight), constant: reached };
  const under = { id: "nearest.under", coefficients: weights, constant: reached };
  return { ...problem, rows: [...problem.rows, over, under] };
}

/** Steps moved that make two blends differ in a way that matters: of most flours five parts, of dry gluten one. */
export function stepsThatMatter({ question, unit }: Setup): readonly number[] {
  return question.flours.map(({ dryGluten }) =>
    dec(dryGluten === true ? 1 : 5)
      .div(unit)
      .ceil()
      .toNumber(),
  );
}
