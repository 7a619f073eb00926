import { inputProblem, type Path, type Problem, problem } from "../figure/problem.ts";
import { dec, decimalText, HUNDRED, sum } from "../number/decimal.ts";
import type { BlendQuestion } from "./blend-question.ts";

/** Everything that is wrong with a question, before it is searched. */
export function questionProblems(question: BlendQuestion): readonly Problem[] {
  return [...stepProblems(question), ...flourProblems(question), ...preferenceProblems(question)];
}

function stepProblems({ step = "1", flours, flourMass, targets }: BlendQuestion): readonly Problem[] {
  const problems: Problem[] = [];
  const wrongStep = (text: string, path: Path): void => {
    if (!dec(text).lt("0.1") && !dec(text).gt(5) && HUNDRED.div(text).isInteger()) return;
    const advice = "use 0.1, 0.2, 0.5, 1, 2 or 5";
    const expected = "a step from 0.1 to 5 % that divides 100";
    problems.push(inputProblem("blend.step", path, `a step of ${text} %`, expected, advice));
  };
  wrongStep(step, ["step"]);
  for (const [index, { step: own }] of flours.entries())
    if (own !== undefined) wrongStep(own, ["flours", index, "step"]);
  const limited = flours.some(({ store, bag }) => store !== undefined || bag !== undefined);
  if (flourMass === undefined && (limited || targets.batchPrice !== undefined)) {
    const advice = "say how much flour the batch takes";
    problems.push(
      inputProblem(
        "blend.flour-mass",
        ["flourMass"],
        "no flour mass",
        "the flour of the batch, which a store, whole bags or the price of a batch are held against",
        advice,
      ),
    );
  }
  if (flourMass !== undefined && !dec(flourMass).gt(0)) {
    problems.push(
      inputProblem("blend.flour-mass", ["flourMass"], `${flourMass} g`, "a mass above zero", "correct the flour mass"),
    );
  }
  if (flours.length === 0 || flours.length > 40) {
    problems.push(problem("blend.flours", ["flours"], { flours: flours.length }));
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
    const step = flour.step ?? question.step ?? "1";
    if (flour.fixed !== undefined && flour.bag === undefined && !dec(flour.fixed).mod(step).isZero()) {
      wrong("fixed", `${flour.fixed} %`, `a whole number of steps of ${step} %`, "take a finer step or another share");
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
        wrong(
          key,
          `no ${wordFor[key]} of ${flour.name}`,
          `its ${wordFor[key]}, since the question asks for it`,
          "state it",
        );
    }
    return own;
  });
}

const wordFor = { ash: "ash", glutenProtein: "gluten-forming protein", price: "price" } as const;

function neededFigures({ targets, prefer }: BlendQuestion): readonly ("ash" | "glutenProtein" | "price")[] {
  return [
    ...(targets.ash === undefined ? [] : (["ash"] as const)),
    ...(targets.glutenProtein === undefined ? [] : (["glutenProtein"] as const)),
    ...(targets.price === undefined && targets.batchPrice === undefined && prefer.kind !== "cheapest"
      ? []
      : (["price"] as const)),
  ];
}

function preferenceProblems({ prefer, flours }: BlendQuestion): readonly Problem[] {
  const names = flours.map(({ name }) => name);
  const unknown = (name: string, path: Path): Problem => problem("blend.unknown-flour", path, { name, names });
  if (prefer.kind === "most") return names.includes(prefer.flour) ? [] : [unknown(prefer.flour, ["prefer", "flour"])];
  if (prefer.kind === "use up")
    return prefer.flours.flatMap((name) => (names.includes(name) ? [] : [unknown(name, ["prefer", "flour"])]));
  if (prefer.kind !== "nearest") return [];
  const strangers = prefer.to.flatMap(({ name }, index) =>
    names.includes(name) ? [] : [unknown(name, ["prefer", "to", index])],
  );
  const total = sum(prefer.to.map(({ share }) => dec(share)));
  // shares of masses may be endless decimals: their text keeps thirty digits
  if (total.minus(HUNDRED).abs().lt("1e-20")) return strangers;
  return [...strangers, problem("blend.shares-total", ["prefer", "to"], { total: decimalText(total) })];
}
