import { inputProblem, type Path, type Problem } from "../figure/problem.ts";
import { type Decimal, dec, decimalText, HUNDRED, sum, ZERO } from "../number/decimal.ts";
import { type FlourLimit, type Limit, limitRow, targetLimits } from "./blend-limits.ts";
import type { BlendQuestion, Candidate } from "./blend-question.ts";
import type { StepProblem } from "./step-problem.ts";

/** A question made ready: everything in whole steps. */
export interface Setup {
  readonly question: BlendQuestion;
  readonly step: Decimal;
  readonly total: number;
  readonly targets: readonly Limit[];
  readonly ratios: readonly Limit[];
  readonly flourLimits: readonly FlourLimit[];
}

/** Makes a question ready, or says what is wrong with it. */
export function setUp(question: BlendQuestion): Setup | readonly Problem[] {
  const problems = [...stepProblems(question), ...flourProblems(question), ...preferenceProblems(question)];
  if (problems.length > 0) return problems;
  const step = dec(question.step ?? 1);
  return {
    question,
    step,
    total: HUNDRED.div(step).toNumber(),
    targets: targetLimits(question.flours, question.targets),
    ratios: question.flours.flatMap((flour, index) => ratioLimits(question.flours, flour, index)),
    flourLimits: question.flours.flatMap((flour, index) => flourLimitsOf(flour, index, step, question.flourMass)),
  };
}

/** The whole-step problem of a setup, or of the part of its limits that `keep` lets through. */
export function stepProblem(setup: Setup, keep: (id: string) => boolean = () => true): StepProblem {
  const least = setup.question.flours.map(() => 0);
  const most = setup.question.flours.map(() => setup.total);
  for (const limit of setup.flourLimits.filter(({ id }) => keep(id))) {
    const now = (limit.side === "least" ? least : most)[limit.index] ?? 0;
    if (limit.side === "least") least[limit.index] = Math.max(now, limit.steps);
    else most[limit.index] = Math.min(now, limit.steps);
  }
  const rows = [...setup.targets, ...setup.ratios].filter(({ id }) => keep(id)).map((limit) => limitRow(limit));
  return { total: setup.total, least, most, rows };
}

function flourLimitsOf(
  flour: Candidate,
  index: number,
  step: Decimal,
  flourMass: string | undefined,
): readonly FlourLimit[] {
  const { name, least, most, fixed, store } = flour;
  const limits: FlourLimit[] = [];
  const add = (what: string, side: "least" | "most", share: Decimal): void => {
    const steps = share.div(step);
    const whole = (side === "least" ? steps.ceil() : steps.floor()).toNumber();
    limits.push({ id: `${what}:${name}:${side}`, label: `${what} share of ${name}`, index, side, steps: whole });
  };
  if (least !== undefined) add("least", "least", dec(least));
  if (most !== undefined) add("greatest", "most", dec(most));
  if (store !== undefined && flourMass !== undefined) add("stored", "most", dec(store).div(flourMass).times(HUNDRED));
  if (fixed !== undefined) {
    add("fixed", "least", dec(fixed));
    add("fixed", "most", dec(fixed));
  }
  return limits;
}

function ratioLimits(flours: readonly Candidate[], flour: Candidate, index: number): readonly Limit[] {
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

function stepProblems({ step = "1", flours, flourMass }: BlendQuestion): readonly Problem[] {
  const value = dec(step);
  const problems: Problem[] = [];
  if (value.lt("0.1") || value.gt(5) || !HUNDRED.div(value).isInteger()) {
    const advice = "use 0.1, 0.2, 0.5, 1, 2 or 5";
    problems.push(
      inputProblem("blend.step", ["step"], `a step of ${step} %`, "a step from 0.1 to 5 % that divides 100", advice),
    );
  }
  if (flourMass === undefined && flours.some(({ store }) => store !== undefined)) {
    const advice = "say how much flour the batch takes";
    problems.push(
      inputProblem(
        "blend.flour-mass",
        ["flourMass"],
        "no flour mass",
        "the flour of the batch, since a store is limited",
        advice,
      ),
    );
  }
  if (flourMass !== undefined && !dec(flourMass).gt(0)) {
    problems.push(
      inputProblem("blend.flour-mass", ["flourMass"], `${flourMass} g`, "a mass above zero", "correct the flour mass"),
    );
  }
  if (flours.length === 0 || flours.length > 20) {
    problems.push(
      inputProblem("blend.flours", ["flours"], `${flours.length} flours`, "1 to 20 flours", "list the flours at hand"),
    );
  }
  return problems;
}

function flourProblems(question: BlendQuestion): readonly Problem[] {
  const names = question.flours.map(({ name }) => name);
  return question.flours.flatMap((flour, index) => {
    const path: Path = ["flours", index];
    const own: Problem[] = [];
    const wrong = (key: string, seen: string, expected: string, advice: string): void => {
      own.push(inputProblem(`blend.${key}`, [...path, key], seen, expected, advice));
    };
    if (names.indexOf(flour.name) !== index)
      wrong("name", `"${flour.name}" a second time`, "every flour once", "rename one of them");
    for (const key of ["protein", "moisture", "ash", "glutenProtein", "least", "most", "fixed"] as const) {
      const value = flour[key];
      if (value !== undefined && (dec(value).lt(0) || dec(value).gt(key === "moisture" ? "99" : 100))) {
        wrong(key, `${value} %`, "a percentage of the flour", "correct the figure");
      }
    }
    if (
      flour.fixed !== undefined &&
      !dec(flour.fixed)
        .div(question.step ?? 1)
        .isInteger()
    ) {
      wrong(
        "fixed",
        `${flour.fixed} %`,
        `a whole number of steps of ${question.step ?? "1"} %`,
        "take a finer step or another share",
      );
    }
    if (flour.ratioTo !== undefined && (!names.includes(flour.ratioTo.name) || flour.ratioTo.name === flour.name)) {
      wrong(
        "ratioTo",
        `a ratio to "${flour.ratioTo.name}"`,
        "the name of another flour listed",
        "name one of the flours listed",
      );
    }
    if (flour.ratioTo !== undefined && !dec(flour.ratioTo.times).gt(0)) {
      wrong(
        "ratioTo",
        `${flour.ratioTo.times} times`,
        "a ratio above zero",
        "leave the flour out with a fixed share of 0",
      );
    }
    for (const key of neededFigures(question)) {
      if (flour[key] === undefined)
        wrong(key, "no figure", "a figure, since the question asks about it", "give the figure of this flour");
    }
    return own;
  });
}

function neededFigures({ targets, prefer }: BlendQuestion): readonly ("ash" | "glutenProtein" | "price")[] {
  return [
    ...(targets.ash === undefined ? [] : (["ash"] as const)),
    ...(targets.glutenProtein === undefined ? [] : (["glutenProtein"] as const)),
    ...(targets.price === undefined && prefer.kind !== "cheapest" ? [] : (["price"] as const)),
  ];
}

function preferenceProblems({ prefer, flours }: BlendQuestion): readonly Problem[] {
  const names = flours.map(({ name }) => name);
  const unknown = (name: string, path: Path): Problem =>
    inputProblem(
      "blend.unknown-flour",
      path,
      `"${name}"`,
      "one of the flours listed",
      `name one of: ${names.join(", ")}`,
    );
  if (prefer.kind === "most") return names.includes(prefer.flour) ? [] : [unknown(prefer.flour, ["prefer", "flour"])];
  if (prefer.kind !== "nearest") return [];
  const strangers = prefer.to.flatMap(({ name }, index) =>
    names.includes(name) ? [] : [unknown(name, ["prefer", "to", index])],
  );
  const total = sum(prefer.to.map(({ share }) => dec(share)));
  if (total.eq(HUNDRED)) return strangers;
  const advice = "give shares that add up to 100";
  return [
    ...strangers,
    inputProblem("blend.shares-total", ["prefer", "to"], `shares of ${decimalText(total)} % together`, "100 %", advice),
  ];
}
