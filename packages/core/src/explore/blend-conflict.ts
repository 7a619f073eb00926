import { found } from "../figure/figure.ts";
import { type Note, noAnswer } from "../figure/problem.ts";
import { type Decimal, dec, decimalText, HUNDRED, ZERO } from "../number/decimal.ts";
import { best, type Extreme } from "./blend-extreme.ts";
import { describeBlend } from "./blend-figures.ts";
import { atBasis, type FlourLimit, type Limit } from "./blend-limits.ts";
import type { BlendAnswer, Move } from "./blend-question.ts";
import { type Setup, setUp, stepProblem } from "./blend-setup.ts";
import type { StepProblem } from "./step-problem.ts";
import { anySteps, smallestSteps } from "./step-search.ts";

type OutOfReach = Extract<BlendAnswer, { readonly kind: "out-of-reach" }>;

/** Says why a question has no answer: which limits cannot all be met, how far each would have to move, and the nearest blend. */
export function explainConflict(setup: Setup): OutOfReach {
  const conflicts = conflictsOf(setup).map((ids) => ids.map((id) => moveOf(setup, id, ids)));
  const moves = conflicts.flat();
  const finerStep = finerStepOf(setup);
  const nearest = nearestBlend(setup, moves);
  const singly = [...new Set(moves.filter(({ settles }) => settles).map(({ text }) => text))];
  const texts = singly.length > 0 ? singly : ["move several limits together: the nearest blend shows how far"];
  const problem = noAnswer(
    "blend.out-of-reach",
    ["targets"],
    conflicts.map((set) => `no blend meets all of: ${set.map(({ label }) => label).join("; ")}`).join(". And "),
    "limits that can be met together",
    finerStep === undefined ? texts.join("; or ") : [...texts, `or a step of ${finerStep} %`].join("; "),
  );
  return {
    kind: "out-of-reach",
    problem,
    conflicts,
    flourNeeded: moves.some(({ id }) => id === "protein.least") ? floursNeeded(setup) : [],
    notes: notesOf(setup),
    ...(nearest === undefined ? {} : { nearest }),
    ...(finerStep === undefined ? {} : { finerStep }),
  };
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

/** For each flour that may be in the blend: the least protein it would have to hold, all else as it is. */
function floursNeeded(setup: Setup): OutOfReach["flourNeeded"] {
  const { flours, targets } = setup.question;
  const limit = setup.targets.find(({ id }) => id === "protein.least");
  if (limit === undefined || targets.protein === undefined) return [];
  const { top } = atBasis(
    flours,
    flours.map(() => dec(1)),
    targets.protein.basis,
  );
  return flours.flatMap((flour, index) => {
    const others = stepProblem(setup, (id) => !id.startsWith("protein."));
    const present = { ...others, least: others.least.with(index, Math.max(1, others.least[index] ?? 0)) };
    const extra = best(present, {
      ...limit,
      side: "most",
      top: limit.top.map((value, at) => limit.bound.times(limit.bottom[at] ?? ZERO).minus(value)),
      bottom: flours.map((_, at) => (at === index ? (top[at] ?? ZERO) : ZERO)),
    });
    if (extra === undefined || !extra.value.gt(0) || extra.value.plus(flour.protein).gt(HUNDRED)) return [];
    const protein = found({
      id: `flour-needed.${flour.name}`,
      label: `protein ${flour.name} would need`,
      unit: "%",
      places: 2,
      value: dec(flour.protein).plus(extra.value),
      by: "search in whole steps, all other figures as they are",
      sources: [],
    });
    return [{ name: flour.name, protein }];
  });
}

/** The coarsest finer step at which there is an answer. */
function finerStepOf(setup: Setup): string | undefined {
  return ["2", "1", "0.5", "0.2", "0.1"]
    .filter((step) => dec(step).lt(setup.step))
    .find((step) => {
      const finer = setUp({ ...setup.question, step });
      return "question" in finer && anySteps(stepProblem(finer)).kind === "found";
    });
}

function notesOf(setup: Setup): readonly Note[] {
  if (setup.question.targets.protein === undefined) return [];
  const text = "shares come in whole steps, so every figure named here is the best that whole steps reach";
  return [{ code: "blend.whole-steps", path: ["step"], text }];
}
