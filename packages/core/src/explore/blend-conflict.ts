import { noAnswer } from "../figure/problem.ts";
import { type Decimal, dec, decimalText, HUNDRED } from "../number/decimal.ts";
import { best, type Extreme } from "./blend-extreme.ts";
import { describeBlend } from "./blend-figures.ts";
import type { FlourLimit, Limit } from "./blend-limits.ts";
import type { Move, OutOfReach } from "./blend-question.ts";
import { type Setup, stepProblem } from "./blend-setup.ts";
import { finerStepOf, floursNeeded, notesOf } from "./blend-ways-out.ts";
import type { StepProblem } from "./step-problem.ts";
import { anySteps, smallestSteps } from "./step-search.ts";

/** Says why a question has no answer: which limits cannot all be met, how far each would have to move, and the nearest blend. */
export function explainConflict(setup: Setup): OutOfReach {
  const conflicts = conflictsOf(setup).map((ids) => ids.map((id) => moveOf(setup, id, ids)));
  const moves = conflicts.flat();
  const flourNeeded = moves.some(({ id }) => id === "protein.least") ? floursNeeded(setup) : [];
  const finerStep = finerStepOf(setup);
  const nearest = nearestBlend(setup, moves);
  const problem = noAnswer(
    "blend.out-of-reach",
    ["targets"],
    conflicts.map((set) => `no blend meets all of: ${set.map(({ label }) => label).join("; ")}`).join(". And "),
    "limits that can be met together",
    adviceOf(moves, flourNeeded, finerStep),
  );
  return {
    kind: "out-of-reach",
    problem,
    conflicts,
    flourNeeded,
    notes: notesOf(setup),
    ...(nearest === undefined ? {} : { nearest }),
    ...(finerStep === undefined ? {} : { finerStep }),
  };
}

/** The ways out, each of which is enough alone. */
function adviceOf(moves: readonly Move[], needed: OutOfReach["flourNeeded"], finerStep: string | undefined): string {
  const [flour] = needed;
  const ways = [
    ...new Set(moves.filter(({ settles }) => settles).map(({ text }) => text)),
    ...(flour === undefined
      ? []
      : [
          `in place of ${flour.name} a flour of at least ${roundedOutward(dec(flour.protein.value), "most")} % protein`,
        ]),
    ...(finerStep === undefined ? [] : [`a step of ${finerStep} %`]),
  ];
  return ways.length > 0 ? ways.join("; or ") : "move several limits together: the nearest blend shows how far";
}

/** Identities of every limit that could be lifted. Those asked about last are named last and kept longest. */
function limitIds(setup: Setup): readonly string[] {
  const targets = setup.targets.map(({ id }) => id).toReversed();
  return [...new Set([...setup.ratios.map(({ id }) => id), ...setup.flourLimits.map(({ id }) => id), ...targets])];
}

/** A conflict; and where lifting one of its limits leaves another conflict, that one too. */
function conflictsOf(setup: Setup): readonly (readonly string[])[] {
  const all = limitIds(setup);
  const first = conflictWithin(setup, all);
  const conflicts = [first];
  for (const lifted of first) {
    const rest = all.filter((id) => id !== lifted);
    if (canMeet(setup, new Set(rest))) continue;
    const next = conflictWithin(setup, rest);
    if (!conflicts.some((known) => known.length === next.length && known.every((id) => next.includes(id))))
      conflicts.push(next);
  }
  return conflicts;
}

/** Limits of which each is needed for the conflict: one after the other is lifted for good if the rest still conflict. */
function conflictWithin(setup: Setup, ids: readonly string[]): readonly string[] {
  const kept = new Set(ids);
  for (const id of ids) {
    kept.delete(id);
    if (canMeet(setup, kept)) kept.add(id);
  }
  return [...kept].toReversed();
}

function canMeet(setup: Setup, kept: ReadonlySet<string>): boolean {
  return anySteps(stepProblem(setup, (id) => kept.has(id))).kind !== "none";
}

/** How far one limit has to move: with all others staying or, where that cannot help, with the others of its conflict staying. */
function moveOf(setup: Setup, id: string, conflict: readonly string[]): Move {
  const limit = movable(setup, id);
  const settled = limit.reach(stepProblem(setup, (other) => other !== id));
  const extreme = settled ?? limit.reach(stepProblem(setup, (other) => other !== id && conflict.includes(other)));
  const from = decimalText(limit.from);
  const label = `${limit.label} ${limit.side === "least" ? "at least" : "at most"} ${from} ${limit.unit}`;
  const common = { id, label, unit: limit.unit, from, settles: settled !== undefined };
  if (extreme === undefined) return { ...common, text: `lift "${label}"` };
  const { value, steps } = extreme;
  const bound = `${limit.side === "least" ? "no more than" : "no less than"} ${roundedOutward(value, limit.side)}`;
  const blend = settled === undefined ? {} : { blend: describeBlend(setup, steps) };
  return {
    ...common,
    to: decimalText(value),
    ...blend,
    text: `${limit.label} of ${bound} ${limit.unit} instead of ${from}`,
  };
}

interface Movable {
  readonly label: string;
  readonly unit: string;
  readonly side: Limit["side"];
  readonly from: Decimal;
  readonly reach: (others: StepProblem) => Extreme | undefined;
}

function movable(setup: Setup, id: string): Movable {
  const quotient = [...setup.targets, ...setup.ratios].find((limit) => limit.id === id);
  if (quotient !== undefined) return { ...quotient, from: quotient.bound, reach: (others) => best(others, quotient) };
  const flour = setup.flourLimits.find((limit) => limit.id === id);
  if (flour === undefined) throw new Error(`no limit "${id}"`);
  const from = setup.step.times(flour.steps);
  return { ...flour, unit: "%", from, reach: (others) => extremeShare(setup, flour, others) };
}

function extremeShare(setup: Setup, limit: FlourLimit, others: StepProblem): Extreme | undefined {
  const sign = limit.side === "least" ? -1 : 1;
  const weights = others.least.map((_, index) => (index === limit.index ? sign : 0));
  const answer = smallestSteps(others, { kind: "weighted", weights });
  if (answer.kind !== "found") return undefined;
  return { value: setup.step.times(answer.steps[limit.index] ?? 0), steps: answer.steps };
}

/** Rounded to two places so that the rounded limit can still be met. */
function roundedOutward(value: Decimal, side: Limit["side"]): string {
  const hundredths = value.times(HUNDRED);
  return decimalText((side === "least" ? hundredths.floor() : hundredths.ceil()).div(HUNDRED));
}

/** The blend that lifts one target by the smallest part of its value; else the one that misses the targets by least in turn. */
function nearestBlend(setup: Setup, moves: readonly Move[]): OutOfReach["nearest"] {
  const targets = new Set(setup.targets.map(({ id }) => id));
  const single = moves
    .filter((move) => targets.has(move.id) && move.blend !== undefined)
    .toSorted((a, b) => relativeMove(a).cmp(relativeMove(b)));
  if (single[0]?.blend !== undefined) return single[0].blend;
  let problem = stepProblem(setup, (id) => !targets.has(id));
  let steps: readonly number[] | undefined;
  for (const limit of setup.targets) {
    const closest = best(problem, limit, limit.bound);
    if (closest === undefined) return undefined;
    steps = closest.steps;
    problem = { ...problem, rows: [...problem.rows, closest.row] };
  }
  return steps === undefined ? undefined : describeBlend(setup, steps);
}

function relativeMove({ from, to = from }: Move): Decimal {
  const base = dec(from).abs();
  return dec(to)
    .minus(from)
    .abs()
    .div(base.isZero() ? 1 : base);
}
