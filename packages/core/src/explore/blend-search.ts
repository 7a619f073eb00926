import { answer, inputProblem, type Note, noAnswer, type Outcome, type Problem, refuse } from "../figure/problem.ts";
import { dec, decimalText } from "../number/decimal.ts";
import { bestBlends } from "./blend-alternatives.ts";
import { explainConflict } from "./blend-conflict.ts";
import { describeBlend } from "./blend-figures.ts";
import { type Limit, limitRow } from "./blend-limits.ts";
import { nearestTo, type Order, orderOf, stepsThatMatter } from "./blend-preference.ts";
import type { BlendAnswer, BlendQuestion } from "./blend-question.ts";
import { type Setup, setUp, stepProblem } from "./blend-setup.ts";
import { measure, type Objective, type StepProblem } from "./step-problem.ts";
import { relax } from "./step-relaxation.ts";
import { smallestSteps } from "./step-search.ts";

/**
 * Finds the blends of flours that reach the targets within the limits of every flour, in whole steps, in the order asked for.
 *
 * Percentages are of the flour as it is, masses g. A protein value that the steps cannot come within is brought as near
 * as they allow, with a note; a question that no steps can answer gives the nearest blend and what would have to move.
 * Problems: `blend.step`, `blend.flours`, `blend.flour-mass`, `blend.name`, `blend.protein` and the like for a figure that
 * is missing or no percentage, `blend.fixed`, `blend.ratioTo`, `blend.unknown-flour`, `blend.shares-total`,
 * `blend.alternatives`, `blend.unfinished`.
 *
 * @example searchBlend({ flours: [{ name: "soft", protein: "9", moisture: "14" }, { name: "strong", protein: "12", moisture: "14" }], targets: { protein: { least: "10.5", basis: { kind: "as is" } } }, prefer: { kind: "most", flour: "soft" } }).ok // => true
 */
export function searchBlend(question: BlendQuestion): Outcome<BlendAnswer> {
  const count = question.alternatives ?? 1;
  if (!Number.isInteger(count) || count < 1 || count > 20) {
    return refuse(
      inputProblem("blend.alternatives", ["alternatives"], `${count}`, "a whole number from 1 to 20", "ask for fewer"),
    );
  }
  const setup = setUp(question);
  if (!("question" in setup)) return refuse(...setup);
  const order = orderOf(setup);
  const first = findBlends(setup, stepProblem(setup), order, count, []);
  return first ?? nearestInSteps(setup, order, count) ?? answer(explainConflict(setup));
}

/** `undefined` when there is no blend at all. */
function findBlends(
  setup: Setup,
  problem: StepProblem,
  order: Order,
  count: number,
  notes: readonly Note[],
): Outcome<BlendAnswer> | undefined {
  const { shown, unfinished } = bestBlends(problem, order, stepsThatMatter(setup), count);
  if (unfinished) return refuse(tooLong());
  if (shown.length === 0) return undefined;
  const blends = shown.map((steps) => describeBlend(setup, steps));
  const fewer: Note[] =
    shown.length < count
      ? [
          {
            code: "blend.fewer-alternatives",
            path: ["alternatives"],
            text: `only ${shown.length} of ${count} blends differ in a way that matters`,
          },
        ]
      : [];
  return answer({ kind: "found", blends, order: order.words }, [...notes, ...fewer]);
}

/** Where fractions of a step could meet a protein value, whole steps come as near to it as they can. */
function nearestInSteps(setup: Setup, order: Order, count: number): Outcome<BlendAnswer> | undefined {
  const { protein } = setup.question.targets;
  const limit = setup.targets.find(({ id }) => id === "protein.least");
  if (protein === undefined || !("value" in protein) || limit === undefined) return undefined;
  const whole = stepProblem(setup);
  if (!meetsInFractions(whole)) return undefined;
  const loose = stepProblem(setup, (id) => !id.startsWith("protein."));
  const weights = limitRow(limit, dec(protein.value)).coefficients;
  const objective: Objective = { kind: "off-zero", weights };
  const nearest = smallestSteps(loose, objective);
  if (nearest.kind === "unfinished") return refuse(tooLong());
  if (nearest.kind === "none") return undefined;
  return findBlends(setup, nearestTo(loose, weights, measure(objective, nearest.steps)), order, count, [
    coarseSteps(setup, limit, protein.value),
  ]);
}

function meetsInFractions(problem: StepProblem): boolean {
  const roomLeft = problem.least.every((count, index) => count <= (problem.most[index] ?? 0));
  return roomLeft && relax(problem, problem, undefined, []).kind !== "none";
}

function coarseSteps(setup: Setup, limit: Limit, value: string): Note {
  const step = decimalText(setup.step);
  const text = `steps of ${step} % do not reach ${value} ${limit.unit} protein; the nearest they reach is given, a finer step comes closer`;
  return { code: "blend.step-coarse", path: ["step"], text };
}

function tooLong(): Problem {
  const advice = "take a coarser step, a wider range or fewer flours";
  return noAnswer(
    "blend.unfinished",
    [],
    "a question too large to search to the end",
    "an answer in reasonable time",
    advice,
  );
}
