import {
  answer,
  type Note,
  type NoteFacts,
  note,
  type Outcome,
  type Problem,
  problem,
  refuse,
} from "../figure/problem.ts";
import { dec, decimalText, fixedText, HUNDRED } from "../number/decimal.ts";
import { bestBlends } from "./blend-alternatives.ts";
import { explainConflict, nearestBlend } from "./blend-conflict.ts";
import { describeBlend } from "./blend-figures.ts";
import { type Limit, limitRow } from "./blend-limits.ts";
import { nearestTo, type Order, orderOf, stepsThatMatter } from "./blend-preference.ts";
import type { BlendAnswer, BlendQuestion, OutOfReach } from "./blend-question.ts";
import { type Setup, setUp, stepProblem } from "./blend-setup.ts";
import { type Budget, wholeQuestion } from "./step-budget.ts";
import { measure, type Objective, type StepProblem, type StepsFound } from "./step-problem.ts";
import { anyFractions, smallestSteps } from "./step-search.ts";

/**
 * Finds the blends of flours that reach the targets within the limits of every flour, in whole steps, in the order asked for.
 *
 * Percentages are of the flour as it is, masses g. A protein value that the steps cannot come within is brought as near
 * as they allow, with a note; a question that no steps can answer gives the nearest blend and what would have to move.
 * Problems: `blend.step`, `blend.flours`, `blend.flour-mass`, `blend.name`, `blend.protein` and the like for a figure that
 * is missing or no percentage, `blend.fixed`, `blend.ratioTo`, `blend.unknown-flour`, `blend.shares-total`,
 * `blend.alternatives`. `blend.unfinished` is the problem of an answer with the nearest blend that was found.
 *
 * @example searchBlend({ flours: [{ name: "soft", protein: "9", moisture: "14" }, { name: "strong", protein: "12", moisture: "14" }], targets: { protein: { least: "10.5", basis: { kind: "as is" } } }, prefer: { kind: "most", flour: "soft" } }).value.blends[0].shares.map(({ share }) => share.value) // => ["50", "50"]
 */
export function searchBlend(question: BlendQuestion): Outcome<BlendAnswer> {
  const count = question.alternatives ?? 1;
  if (!Number.isInteger(count) || count < 1 || count > 20) {
    return refuse(problem("blend.alternatives", ["alternatives"], { count }));
  }
  const setup = setUp(question);
  if (!("question" in setup)) return refuse(...setup);
  const order = orderOf(setup);
  const budget = wholeQuestion();
  const search: Search = { setup, order, count, budget };
  const first = findBlends(search, stepProblem(setup), []);
  return first ?? nearestInSteps(search) ?? answer(explainConflict(setup, order, budget));
}

interface Search {
  readonly setup: Setup;
  readonly order: Order;
  readonly count: number;
  readonly budget: Budget;
}

/** `undefined` when there is no blend at all. */
function findBlends(
  { setup, order, count, budget }: Search,
  problem: StepProblem,
  notes: readonly Note[],
): Outcome<BlendAnswer> | undefined {
  const { shown, given, open } = bestBlends(problem, order, stepsThatMatter(setup), count, budget.part(0.8));
  if (shown.length === 0) return given ? answer(givenUp(setup, order, budget)) : undefined;
  const blends = shown.map((steps) => describeBlend(setup, steps));
  const found = { kind: "found" as const, blends, order: order.words };
  return answer({ ...found, ...(open && { notProven: true as const }) }, [
    ...notes,
    ...(open ? [note("blend.not-proven", [], howFar(order, open))] : []),
    ...(shown.length < count
      ? [note("blend.fewer-alternatives", ["alternatives"], { shown: shown.length, asked: count, given })]
      : []),
  ]);
}

/** How far the best blend found may be from the best there is. */
function howFar(
  order: Order,
  { objective, value, bound }: NonNullable<StepsFound["open"]>,
): NoteFacts["blend.not-proven"] {
  if (order.objectives.indexOf(objective) > 0) return { by: "later" };
  if (!Number.isFinite(bound)) return { by: "not known" };
  if (objective.kind === "changed") return { by: "flours", flours: decimalText(dec(bound)) };
  const gap = dec(value).minus(bound);
  const percent = fixedText(gap.times(HUNDRED).div(dec(value).abs().gt(0) ? dec(value).abs() : 1), 1);
  return { by: objective.kind, percent };
}

/** Where fractions of a step could meet a protein value, whole steps come as near to it as they can. */
function nearestInSteps(search: Search): Outcome<BlendAnswer> | undefined {
  const { setup, order, budget } = search;
  const { protein } = setup.question.targets;
  const limit = setup.targets.find(({ id }) => id === "protein.least");
  if (protein === undefined || !("value" in protein) || limit === undefined) return undefined;
  const whole = stepProblem(setup);
  if (!anyFractions(whole)) return undefined;
  const loose = stepProblem(setup, (id) => !id.startsWith("protein."));
  const weights = limitRow(limit, dec(protein.value)).coefficients;
  const objective: Objective = { kind: "off-zero", weights };
  const nearest = smallestSteps(loose, objective, budget.part(0.5));
  if (nearest.kind === "unfinished") return answer(givenUp(setup, order, budget));
  if (nearest.kind === "none") return undefined;
  const coarse = coarseSteps(setup, limit, protein.value, nearest.open === undefined);
  return findBlends(search, nearestTo(loose, weights, measure(objective, nearest.steps)), [coarse]);
}

function coarseSteps(setup: Setup, limit: Limit, value: string, proven: boolean): Note {
  const step = decimalText(dec(setup.question.step ?? 1));
  return note("blend.step-coarse", ["step"], { step, wanted: value, unit: limit.unit, proven });
}

/** No blend found before the budget ended: the nearest of those that the rest of it finds, with what it misses. */
function givenUp(setup: Setup, order: Order, budget: Budget): OutOfReach {
  const nearest = nearestBlend(setup, order, budget);
  const common = { kind: "out-of-reach" as const, problem: tooLong(), conflicts: [], reach: [], flourNeeded: [] };
  return { ...common, notes: [], ...(nearest && { nearest }) };
}

function tooLong(): Problem {
  return problem("blend.unfinished", [], {});
}
