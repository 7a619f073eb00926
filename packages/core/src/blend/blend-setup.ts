import type { Problem } from "../figure/problem.ts";
import { type Decimal, dec, HUNDRED, ZERO } from "../number/decimal.ts";
import { questionProblems } from "./blend-checks.ts";
import { gridOf, shapeOf } from "./blend-grid.ts";
import { type FlourLimit, type Limit, limitRow, storeLimits, targetLimits } from "./blend-limits.ts";
import type { BlendQuestion, Candidate } from "./blend-question.ts";
import type { Row, StepProblem } from "./step-problem.ts";

/** A question made ready: everything in whole steps. */
export interface Setup {
  readonly question: BlendQuestion;
  /** What shares are counted in, %: the step, or a finer one that the steps of all flours are whole multiples of. */
  readonly unit: Decimal;
  readonly total: number;
  /** What the whole-step problem asks of the shape of a blend. */
  readonly shape: Pick<StepProblem, "every" | "ifUsed" | "mostFlours">;
  readonly targets: readonly Limit[];
  readonly ratios: readonly Limit[];
  readonly flourLimits: readonly FlourLimit[];
  /** Targets, ratios and what is in the store, in whole numbers. */
  readonly rows: readonly Row[];
}

/** Makes a question ready, or says what is wrong with it. */
export function setUp(question: BlendQuestion): Setup | readonly Problem[] {
  const problems = questionProblems(question);
  if (problems.length > 0) return problems;
  const targets = targetLimits(question);
  const ratios = question.flours.flatMap((flour, index) => ratioLimits(question.flours, flour, index));
  const stored = storeLimits(question).map(({ limit }) => limit);
  const rows = [...targets, ...ratios, ...stored].map((limit) => limitRow(limit));
  return { ...inSteps(question), targets, ratios, rows };
}

/** The same question in another step, which the question may not allow. */
export function inStep(setup: Setup, step: string): Setup {
  return { ...setup, ...inSteps({ ...setup.question, step }) };
}

/** What depends on the steps of a question. */
function inSteps(question: BlendQuestion): Pick<Setup, "question" | "unit" | "total" | "shape" | "flourLimits"> {
  const grid = gridOf(question);
  const { unit } = grid;
  return {
    question,
    unit,
    total: HUNDRED.div(unit).toNumber(),
    shape: shapeOf(question, grid),
    flourLimits: question.flours.flatMap((flour, index) => {
      const stored = storeLimits(question).find((one) => one.index === index);
      return flourLimitsOf(flour, index, unit, stored?.share);
    }),
  };
}

/** Identities of the limits on the shape of a blend. */
export const shapeIds = { ifUsed: "least-share", mostFlours: "flours.most" } as const;

/** Identity of the limit that a flour comes in whole bags. */
export const bagId = (name: string): string => `bag:${name}`;

/** The whole-step problem of a setup, or of the part of its limits that `keep` lets through. */
export function stepProblem(setup: Setup, keep: (id: string) => boolean = () => true): StepProblem {
  const least = setup.question.flours.map(() => 0);
  const most = setup.question.flours.map(({ missing }) => (missing === true ? 0 : setup.total));
  for (const limit of setup.flourLimits.filter(({ id }) => keep(id))) {
    const now = (limit.side === "least" ? least : most)[limit.index] ?? 0;
    if (limit.side === "least") least[limit.index] = Math.max(now, limit.steps);
    else most[limit.index] = Math.min(now, limit.steps);
  }
  const rows = setup.rows.filter(({ id }) => keep(id));
  const { every, ifUsed, mostFlours } = setup.shape;
  return {
    total: setup.total,
    least,
    most,
    rows,
    ...(every && {
      every: every.map((steps, index) => {
        const { name, bag } = setup.question.flours[index] ?? {};
        return name === undefined || bag === undefined || keep(bagId(name)) ? steps : 1;
      }),
    }),
    ...(ifUsed && keep(shapeIds.ifUsed) && { ifUsed }),
    ...(mostFlours !== undefined && keep(shapeIds.mostFlours) && { mostFlours }),
  };
}

function flourLimitsOf(
  flour: Candidate,
  index: number,
  unit: Decimal,
  stored: Decimal | undefined,
): readonly FlourLimit[] {
  const { name, least, most, fixed } = flour;
  const limits: FlourLimit[] = [];
  const add = (what: string, side: "least" | "most", share: Decimal): void => {
    const steps = share.div(unit);
    const whole = (side === "least" ? steps.ceil() : steps.floor()).toNumber();
    limits.push({ id: `${what}:${name}:${side}`, label: `${what} share of ${name}`, index, side, steps: whole });
  };
  if (least !== undefined) add("least", "least", dec(least));
  if (most !== undefined) add("greatest", "most", dec(most));
  if (stored !== undefined) add("stored", "most", stored);
  if (fixed !== undefined) {
    add("fixed", "least", dec(fixed));
    add("fixed", "most", dec(fixed));
  }
  return limits;
}

/** Both ends of the ratio of a flour to another, where it has one. */
export function ratioLimits(flours: readonly Candidate[], flour: Candidate, index: number): readonly Limit[] {
  const { ratioTo } = flour;
  if (ratioTo === undefined) return [];
  const partner = flours.findIndex(({ name }) => name === ratioTo.name);
  const one = (at: number): readonly Decimal[] => flours.map((_, other) => (other === at ? dec(1) : ZERO));
  return (["least", "most"] as const).map((side) => ({
    id: `ratio:${flour.name}:${side}`,
    label: `ratio of ${flour.name} to ${ratioTo.name}`,
    unit: "times",
    side,
    bound: dec(ratioTo.times),
    top: one(index),
    bottom: one(partner),
  }));
}
