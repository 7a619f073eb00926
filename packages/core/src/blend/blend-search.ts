import { type Published, publish } from "../figure/graph.ts";
import { answer, type Note, type NoteFacts, note, type Outcome, problem, refuse } from "../figure/problem.ts";
import { dec, decimalText, fixedText, HUNDRED } from "../number/decimal.ts";
import { bestBlends } from "./blend-alternatives.ts";
import { explainConflict, nearestBlend } from "./blend-conflict.ts";
import { describeBlend } from "./blend-figures.ts";
import { type Limit, limitRow, valueLimit } from "./blend-limits.ts";
import { nearestTo, type Order, orderOf, stepsThatMatter } from "./blend-preference.ts";
import type { BlendAnswer, BlendQuestion, OutOfReach } from "./blend-question.ts";
import { bagId, type Setup, setUp, stepProblem } from "./blend-setup.ts";
import { type Budget, wholeQuestion } from "./step-budget.ts";
import { measure, type StepProblem, type StepsFound } from "./step-problem.ts";
import { anyFractions, anySteps, bestSteps, smallestSteps } from "./step-search.ts";

/**
 * Finds the blends of flours that reach the targets within the limits of every flour, in whole steps, in the order asked for.
 *
 * Percentages are of the flour as it is, masses g. A protein value that the steps cannot come within is brought as near
 * as they allow, with a note; a question that no steps can answer gives the nearest blend and what would have to move.
 * The figures of the first blend are named `alternative.1.` and their identity, and so on; those of the nearest, `nearest.`.
 * Problems: `blend.step`, `blend.flours`, `blend.flour-mass`, `blend.flour-twice`, `blend.percentage`,
 * `blend.figure-missing`, `blend.fixed`, `blend.ratio-to`, `blend.ratio-times`, `blend.unknown-flour`, `blend.shares-total`,
 * `blend.alternatives`. `blend.unfinished` is the problem of an answer with the nearest blend that was found.
 *
 * @example searchBlend({ flours: [{ name: "soft", protein: "9", moisture: "14" }, { name: "strong", protein: "12", moisture: "14" }], targets: { protein: { least: "10.5", basis: { kind: "as is" } } }, prefer: { kind: "most", flour: "soft" } }).value.blends[0].shares.map(({ share }) => share.value) // => ["50", "50"]
 */
export function searchBlend(question: BlendQuestion): Outcome<Published<BlendAnswer>> {
  const outcome = soughtBlends(question);
  if (!outcome.ok) return outcome;
  const { value } = outcome;
  return publish(value, outcome.notes);
}

/** The same with each blend under the names of the first, for who sets them beside others. */
export function soughtBlends(question: BlendQuestion): Outcome<BlendAnswer> {
  const count = question.alternatives ?? 1;
  if (!Number.isInteger(count) || count < 1 || count > 20) {
    return refuse(problem("blend.alternatives", ["alternatives"], { count }));
  }
  const setup = setUp(question);
  if (!("question" in setup)) return refuse(...setup);
  const order = orderOf(setup);
  const budget = wholeQuestion();
  const search: Search = { setup, order, count, budget };
  const first = nearestToValue(search) ?? findBlends(search, stepProblem(setup), []);
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
  first?: StepsFound,
): Outcome<BlendAnswer> | undefined {
  const { shown, given, open } = bestBlends(problem, order, stepsThatMatter(setup), count, budget.part(0.8), first);
  if (shown.length === 0) return given ? answer(givenUp(setup, order, budget)) : undefined;
  const blends = shown.map((steps, index) => describeBlend(setup, steps, `alternative.${index + 1}`));
  const found = { kind: "found" as const, blends, order: orderWords(setup, order) };
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

function orderWords({ question }: Setup, { words }: Order): string {
  const aim = valueLimit(question);
  if (!aim?.nearest) return words;
  return `nearest to ${decimalText(aim.bound)} ${aim.unit} protein, to two places; of blends as near, and of the others, ${words}`;
}

/**
 * The blend that comes nearest to a protein value, where one is wanted and any meets it: as near as is shown, where one
 * does, and else as near as can be; of those as near, the first in the order. Then the others that meet it, in that order.
 */
function nearestToValue(search: Search): Outcome<BlendAnswer> | undefined {
  const { setup, order, budget } = search;
  const aim = valueLimit(setup.question);
  if (!aim?.nearest) return undefined;
  const whole = stepProblem(setup);
  const asShown = [
    limitRow({ ...aim, side: "least" }, aim.bound.minus(halfShown)),
    limitRow({ ...aim, side: "most" }, aim.bound.plus(halfShown)),
  ];
  const close = bestSteps({ ...whole, rows: [...whole.rows, ...asShown] }, order.objectives, budget.part(0.3));
  if (close.kind === "found") return findBlends(search, whole, [], close);
  const objectives = [offValue(aim), ...order.objectives];
  const nearest = bestSteps(whole, objectives, budget.part(0.5));
  return nearest.kind === "found" ? findBlends(search, whole, [], nearest) : undefined;
}

/** Half of the last place in which protein is shown. */
const halfShown = dec("0.005");

function offValue(aim: Limit) {
  return { kind: "off-zero" as const, weights: limitRow(aim).coefficients };
}

/** Where fractions of a step could meet a protein value, whole steps come as near to it as they can. */
function nearestInSteps(search: Search): Outcome<BlendAnswer> | undefined {
  const { setup, order, budget } = search;
  const aim = valueLimit(setup.question);
  if (aim === undefined || !anyFractions(stepProblem(setup))) return undefined;
  const loose = stepProblem(setup, (id) => !id.startsWith("protein."));
  const objective = offValue(aim);
  const nearest = smallestSteps(loose, objective, budget.part(0.5));
  if (nearest.kind === "unfinished") return answer(givenUp(setup, order, budget));
  if (nearest.kind === "none") return undefined;
  const bags = setup.question.flours.flatMap(({ name, bag }) => (bag === undefined ? [] : [name]));
  const ids = new Set(bags.map(bagId));
  const byWeight = stepProblem(setup, (id) => !ids.has(id));
  const coarse = note("blend.step-coarse", ["step"], {
    step: decimalText(dec(setup.question.step ?? 1)),
    wanted: decimalText(aim.bound),
    unit: aim.unit,
    proven: nearest.open === undefined,
    bags,
    alone: bags.length > 0 && anySteps(byWeight, budget.part(0.2)).kind === "found",
  });
  return findBlends(search, nearestTo(loose, objective.weights, measure(objective, nearest.steps)), [coarse]);
}

/** No blend found before the budget ended: the nearest of those that the rest of it finds, with what it misses. */
function givenUp(setup: Setup, order: Order, budget: Budget): OutOfReach {
  const nearest = nearestBlend(setup, order, budget);
  const common = {
    kind: "out-of-reach" as const,
    problem: problem("blend.unfinished", [], {}),
    conflicts: [],
    reach: [],
    flourNeeded: [],
  };
  return { ...common, notes: [], ...(nearest && { nearest }) };
}
