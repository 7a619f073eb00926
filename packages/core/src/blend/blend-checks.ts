import { type Path, type Problem, problem } from "../figure/problem.ts";
import { materialNamed } from "../materials/catalogue.ts";
import { dec, decimalText, decOf, HUNDRED, sum, ZERO } from "../number/decimal.ts";
import type { BlendQuestion } from "./blend-question.ts";

/** Everything that is wrong with a question, before it is searched. */
export function questionProblems(question: BlendQuestion): readonly Problem[] {
  return [...stepProblems(question), ...flourProblems(question), ...preferenceProblems(question)];
}

function stepProblems({ step = "1", flours, flourMass, targets }: BlendQuestion): readonly Problem[] {
  const problems: Problem[] = [];
  const wrongStep = (text: string, path: Path): void => {
    if (!dec(text).lt("0.1") && !dec(text).gt(5) && HUNDRED.div(text).isInteger()) return;
    problems.push(problem("blend.step", path, { step: text }));
  };
  wrongStep(step, ["step"]);
  for (const [index, { step: own }] of flours.entries())
    if (own !== undefined) wrongStep(own, ["flours", index, "step"]);
  const limited = flours.some(({ store, bag }) => store !== undefined || bag !== undefined);
  if (flourMass === undefined && (limited || targets.batchPrice !== undefined)) {
    problems.push(problem("blend.flour-mass", ["flourMass"], {}));
  }
  if (flourMass !== undefined && !dec(flourMass).gt(0)) {
    problems.push(problem("blend.flour-mass", ["flourMass"], { flourMass }));
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
    const { name, fixed, ratioTo } = flour;
    if (names.indexOf(name) !== index) {
      const listed = materialNamed(name) !== undefined;
      own.push(problem("blend.flour-twice", [...path, "name"], { name, listed }));
    }
    for (const key of ["protein", "moisture", "ash", "glutenProtein", "least", "most", "fixed"] as const) {
      const value = flour[key];
      const share = decOf(`flours.${index}.${key}`, value ?? ZERO);
      if (value !== undefined && (share.lt(ZERO) || share.gt(key === "moisture" ? mostMoisture : HUNDRED))) {
        own.push(problem("blend.percentage", [...path, key], { value }));
      }
    }
    const step = flour.step ?? question.step ?? "1";
    if (fixed !== undefined && flour.bag === undefined && !dec(fixed).mod(step).isZero())
      own.push(problem("blend.fixed", [...path, "fixed"], { fixed, step }));
    if (ratioTo !== undefined && (!names.includes(ratioTo.name) || ratioTo.name === name))
      own.push(problem("blend.ratio-to", [...path, "ratioTo"], { name: ratioTo.name }));
    if (ratioTo !== undefined && !dec(ratioTo.times).gt(0))
      own.push(problem("blend.ratio-times", [...path, "ratioTo"], { times: ratioTo.times }));
    for (const key of neededFigures(question)) {
      if (flour[key] === undefined)
        own.push(problem("blend.figure-missing", [...path, key], { name, figure: wordFor[key] }));
    }
    return own;
  });
}

const mostMoisture = dec(99);
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
