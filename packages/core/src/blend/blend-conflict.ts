import { problem } from "../figure/problem.ts";
import { type Decimal, dec, decimalText, shortText, sum } from "../number/decimal.ts";
import { best } from "./blend-extreme.ts";
import { describeBlend, mostPlaces } from "./blend-figures.ts";
import { type Limit, toHundredths, unitAt } from "./blend-limits.ts";
import type { Order } from "./blend-preference.ts";
import type { Check, FlourNeeded, FoundBlend, Move, OutOfReach, Reach } from "./blend-question.ts";
import { bagId, type Setup, shapeIds, stepProblem } from "./blend-setup.ts";
import { finerStepOf, floursNeeded, notesOf } from "./blend-ways-out.ts";
import type { Budget } from "./step-budget.ts";
import { measure, type Objective, type StepAnswer, type StepProblem } from "./step-problem.ts";
import { anySteps, bestSteps, smallestSteps } from "./step-search.ts";

/** Says why a question has no answer: which limits cannot all be met, how far each would have to move, and the nearest blend. */
export function explainConflict(setup: Setup, order: Order, budget: Budget): OutOfReach {
  // What settles the question alone is in every conflict, and moves as far in each.
  const settling = new Map<string, Move>();
  const conflicts = conflictsOf(setup, budget.part(0.5)).map((ids) =>
    ids.map((id) => {
      const move = settling.get(id) ?? moveOf(setup, id, ids, budget.part(0.2));
      if (move.settles) settling.set(id, move);
      return move;
    }),
  );
  const moves = conflicts.flat();
  const alone = conflicts.flatMap(([only, second]) => (only === undefined || second !== undefined ? [] : [only.id]));
  const reach = alone.flatMap((id) => reachOf(setup, id, alone, budget.part(0.2)));
  const flourNeeded = moves.some(({ id }) => id === "protein.least") ? floursNeeded(setup, budget.part(0.3)) : [];
  const finerStep = finerStepOf(setup, budget.part(0.3));
  const nearest = nearestBlend(setup, order, budget);
  const refusal = problem("blend.out-of-reach", ["targets"], {
    conflicts: conflicts.map((conflict) => [...new Set(conflict.map(({ label }) => label))]),
    ways: waysOut(moves, flourNeeded, finerStep),
    nearest: nearest !== undefined,
  });
  return {
    kind: "out-of-reach",
    problem: refusal,
    conflicts,
    reach,
    flourNeeded,
    notes: notesOf(setup),
    ...(nearest === undefined ? {} : { nearest }),
    ...(finerStep === undefined ? {} : { finerStep }),
  };
}

/** Both ends of what the flours reach in the quantity of a target that no blend meets, without the others of that kind. */
function reachOf(setup: Setup, alone: string, all: readonly string[], budget: Budget): readonly Reach[] {
  const target = setup.targets.find(({ id }) => id === alone);
  if (target === undefined) return [];
  const quantity = target.id.replace(/(?:least|most)$/u, "");
  const { label, unit } = target;
  const endsBut = (lifted?: string): Reach | undefined => {
    const others = stepProblem(setup, (id) => !id.startsWith(quantity) && !all.includes(id) && id !== lifted);
    const start = anySteps(others, budget);
    const [most, least] = (["least", "most"] as const).map((side) => best(others, { ...target, side }, budget, start));
    if (least === undefined || most === undefined) return undefined;
    return { label, unit, least: decimalText(least), most: decimalText(most) };
  };
  const here = endsBut();
  if (here === undefined) return [];
  const stored = setup.flourLimits.filter(({ id }) => id.startsWith("stored:"));
  const wider = [...stored, ...bagged(setup)].flatMap(({ id, label: without }) => {
    const there = endsBut(id);
    if (there === undefined) return [];
    const more = target.side === "least" ? dec(there.most).minus(here.most) : dec(here.least).minus(there.least);
    return more.gt("0.01") ? [{ ...there, without }] : [];
  });
  return [here, ...wider];
}

/** Flours that come in whole bags. */
function bagged({ question: { flours, flourMass } }: Setup) {
  return flours.flatMap(({ name, bag }) => {
    if (bag === undefined || flourMass === undefined) return [];
    const from = decimalText(dec(bag).div(1000));
    return [{ id: bagId(name), name, from, label: `${name} in whole bags of ${from} kg` }];
  });
}

/** The ways out, each of which is enough alone. */
function waysOut(
  moves: readonly Move[],
  needed: OutOfReach["flourNeeded"],
  finerStep: string | undefined,
): readonly string[] {
  const [flour] = needed;
  return [
    ...new Set(moves.filter(({ settles }) => settles).map(({ text }) => text)),
    ...(flour === undefined ? [] : [strongerFlour(flour)]),
    ...(finerStep === undefined ? [] : [`a step of ${finerStep} %`]),
  ];
}

function strongerFlour({ name, moisture, basis, protein }: FlourNeeded): string {
  const at = basis.kind === "as is" ? " as is" : `${unitAt(basis).slice(1)} and ${moisture} % moisture`;
  return `in place of ${name} a flour of at least ${protein.value} % protein${at}`;
}

/** Identities of every limit that could be lifted. Those asked about last are named last and kept longest. */
function limitIds(setup: Setup): readonly string[] {
  const targets = setup.targets.map(({ id }) => id).toReversed();
  const bags = bagged(setup).map(({ id }) => id);
  const shape = [
    ...(setup.shape.ifUsed === undefined ? [] : [shapeIds.ifUsed]),
    ...(setup.shape.mostFlours === undefined ? [] : [shapeIds.mostFlours]),
  ];
  return [
    ...new Set([
      ...shape,
      ...setup.ratios.map(({ id }) => id),
      ...setup.flourLimits.map(({ id }) => id),
      ...bags,
      ...targets,
    ]),
  ];
}

/**
 * A conflict; and where lifting one of its limits leaves another conflict, that one too. A limit that conflicts with
 * nothing but the flours is lifted then, so that every such limit is found.
 */
function conflictsOf(setup: Setup, budget: Budget): readonly (readonly string[])[] {
  const all = limitIds(setup);
  const first = conflictWithin(setup, all, budget);
  const conflicts = [first];
  for (const lifted of first) {
    let rest = all.filter((id) => id !== lifted);
    while (!canMeet(setup, new Set(rest), budget)) {
      const next = conflictWithin(setup, rest, budget);
      if (!conflicts.some((known) => known.length === next.length && known.every((id) => next.includes(id))))
        conflicts.push(next);
      const [only] = next;
      if (next.length !== 1) break;
      rest = rest.filter((id) => id !== only);
    }
  }
  return conflicts;
}

/** Limits of which each is needed for the conflict: one after the other is lifted for good if the rest still conflict. */
function conflictWithin(setup: Setup, ids: readonly string[], budget: Budget): readonly string[] {
  const kept = new Set(ids);
  for (const id of ids) {
    kept.delete(id);
    if (canMeet(setup, kept, budget)) kept.add(id);
  }
  return [...kept].toReversed();
}

function canMeet(setup: Setup, kept: ReadonlySet<string>, budget: Budget): boolean {
  const problem = stepProblem(setup, (id) => kept.has(id));
  return anySteps(problem, budget).kind !== "none";
}

/**
 * How far one limit has to move: with all others staying or, where that cannot help, with the others of its conflict
 * staying. A ratio to a flour that is then left out has no place to be named: it can only be lifted.
 */
function moveOf(setup: Setup, id: string, conflict: readonly string[], budget: Budget): Move {
  const others = stepProblem(setup, (other) => other !== id);
  const alone = anySteps(others, budget);
  const settles = alone.kind === "found";
  const known = { id, settles, ...(alone.kind === "unfinished" && { open: true as const }) };
  const bag = bagged(setup).find((one) => one.id === id);
  if (bag !== undefined) {
    const { name, from, label } = bag;
    return { ...known, label, unit: "kg", from, text: `${name} by weight instead of in whole bags of ${from} kg` };
  }
  const limit = movable(setup, id, budget);
  const within = settles ? others : stepProblem(setup, (other) => other !== id && conflict.includes(other));
  const value = settles ? limit.reach(within, alone) : limit.reach(within);
  const { asked, said, side, unit } = limit;
  const from = asked?.value ?? decimalText(limit.from);
  const told = shortText(from, mostPlaces);
  const label = `${limit.label} ${asked ? `of ${from} ${unit} ± ${asked.within}` : `at ${side} ${said ?? `${told} ${unit}`}`}`;
  const common = { ...known, label, unit, from };
  if (value === undefined) return { ...common, text: `lift "${label}"` };
  const bound = `${side === "least" ? "no more than" : "no less than"} ${toHundredths(value, side === "least" ? "down" : "up")}`;
  return { ...common, to: decimalText(value), text: `${limit.label} of ${bound} ${unit} instead of ${told}` };
}

interface Movable extends Pick<Limit, "label" | "unit" | "side" | "said" | "asked"> {
  readonly from: Decimal;
  /** How far it can go, from any steps that hold. */
  readonly reach: (others: StepProblem, start?: StepAnswer) => Decimal | undefined;
}

function movable(setup: Setup, id: string, budget: Budget): Movable {
  const target = setup.targets.find((limit) => limit.id === id);
  if (target !== undefined)
    return { ...target, from: target.bound, reach: (others, start) => best(others, target, budget, start) };
  const ratio = setup.ratios.find((limit) => limit.id === id);
  if (ratio !== undefined) {
    const partner = ratio.bottom.findIndex((value) => !value.isZero());
    const present = (others: StepProblem): StepProblem => ({
      ...others,
      least: others.least.with(partner, Math.max(1, others.least[partner] ?? 0)),
    });
    return { ...ratio, from: ratio.bound, reach: (others) => best(present(others), ratio, budget) };
  }
  if (id === shapeIds.ifUsed) {
    const lifted = { label: "least share of a flour that is used", unit: "%", side: "least" as const };
    return { ...lifted, from: dec(setup.question.leastShare ?? 0), reach: () => undefined };
  }
  if (id === shapeIds.mostFlours) {
    const from = dec(setup.shape.mostFlours ?? 0);
    const used: Objective = { kind: "changed", from: setup.question.flours.map(() => 0), perStep: 1 };
    const reach = (others: StepProblem): Decimal | undefined => {
      const answer = smallestSteps(others, used, budget);
      return answer.kind === "found" ? dec(measure(used, answer.steps)) : undefined;
    };
    return { label: "number of flours", unit: "flours", side: "most", from, reach };
  }
  const flour = setup.flourLimits.find((limit) => limit.id === id);
  if (flour === undefined) throw new Error(`no limit "${id}"`);
  const from = setup.unit.times(flour.steps);
  const sign = flour.side === "least" ? -1 : 1;
  const weights = setup.question.flours.map((_, index) => (index === flour.index ? sign : 0));
  const reach = (others: StepProblem): Decimal | undefined => {
    const answer = smallestSteps(others, { kind: "weighted", weights }, budget);
    return answer.kind === "found" ? setup.unit.times(answer.steps[flour.index] ?? 0) : undefined;
  };
  return { ...flour, unit: "%", from, reach };
}

/** The blend that misses the targets by least, each miss weighed; of those the one that comes first in the order asked for. */
export function nearestBlend(setup: Setup, order: Order, budget: Budget): FoundBlend | undefined {
  const ids = new Set(setup.targets.map(({ id }) => id));
  const problem = stepProblem(setup, (id) => !ids.has(id));
  const objectives = [missed(setup), ...order.objectives];
  const answer = bestSteps(problem, objectives, budget.part(0.8));
  return answer.kind === "found" ? describeBlend(setup, answer.steps, "nearest") : undefined;
}

/** How large a miss of each target weighs as much as another's: a choice of the house, common practice, no source. */
const equalMisses: readonly (readonly [start: string, amount: string, words: string])[] = [
  ["protein", "0.1", "0.1 % of protein"],
  ["gluten-forming-protein", "0.1", "0.1 % of gluten-forming protein"],
  ["ash", "0.05", "0.05 % of ash"],
  ["wholegrain-share", "1", "1 % of wholegrain share"],
  ["price", "", "2 % of the price"],
];

/** What weighs alike among the targets of a blend, in words. @example missWords([]) // => "" */
export function missWords(checks: readonly Check[]): string {
  const asked = equalMisses.filter(([start]) => checks.some(({ id }) => id.startsWith(start)));
  return asked.map(([, , words]) => words).join(", ");
}

/** What the targets lack, weighed, as one whole number; the moisture of the mean of all flours stands for that of the blend. */
function missed({ targets }: Setup): Objective {
  const rows = targets.map((limit) => {
    const known = equalMisses.find(([start]) => limit.id.startsWith(`${start}.`))?.[1];
    const bound = limit.bound.toNumber();
    const amount = (known === undefined || known === "" ? bound * 0.02 : Number(known)) || 1;
    const below = sum(limit.bottom).toNumber() / limit.bottom.length;
    const scale = ((limit.side === "least" ? 1 : -1) * 10_000) / below / amount;
    return limit.top.map((top, at) =>
      Math.round((top.toNumber() - bound * (limit.bottom[at]?.toNumber() ?? 0)) * scale),
    );
  });
  return { kind: "missed", rows };
}
