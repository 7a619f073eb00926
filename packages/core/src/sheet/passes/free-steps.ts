import { exact, type Figure, found, worked } from "../../figure/figure.ts";
import { answer, type Outcome, type Problem, problem, refuse } from "../../figure/problem.ts";
import { definition, fromSpec, type Source } from "../../figure/source.ts";
import { type Decimal, HUNDRED, ONE } from "../../number/decimal.ts";
import { fewestPasses, keepsTo, reductionOf } from "./gap-choice.ts";
import { downwards, millimetres, mm, type PassStep, percent, type Reduction, upwards, type Way } from "./pass-step.ts";

const equalRatio: Source = { ...definition, cite: "equal ratio of thickness in every pass" };

/** Steps of equal ratio between rolls that open freely; the first one is cut short where the rolls do not open wide enough. */
export function freeSteps(least: Decimal, greatest: Decimal, reduction: Reduction): Outcome<Way> {
  const { first, final, largestReduction, springBack, passesBefore } = reduction;
  const lastGap = exact(final).div(exact(springBack));
  if (lastGap.lt(least) || lastGap.gt(greatest)) {
    const back = exact(springBack);
    const [thinnest, thickest] = [mm(upwards(least.times(back))), mm(downwards(greatest.times(back)))];
    const meant = `${lastGap.lt(least) ? thinnest : thickest} mm`;
    const facts = { lastGap: mm(lastGap), least: mm(least), greatest: mm(greatest), thinnest, thickest, meant };
    return refuse(problem("passes.final-outside-gap", ["finalThickness"], facts));
  }
  const fewest = fewestPasses(exact(first), exact(final), exact(largestReduction));
  const count = (value: number): Figure =>
    found(
      { id: "passes.of-equal-ratio", label: "passes of equal ratio", unit: "", places: 0 },
      value,
      "the fewest within the largest reduction and the widest gap",
      [first, final, largestReduction, springBack],
      equalRatio,
    );
  const opening = passesBefore + 1;
  const widest = widestThickness(greatest, springBack, opening);
  if (opensWideEnough(exact(first), exact(final), exact(widest), fewest)) {
    return answer({ last: final, steps: () => equalSteps(first, final, springBack, count(fewest), passesBefore) });
  }
  if (!keepsTo(exact(largestReduction), exact(first), exact(widest))) {
    return refuse(firstTooThick(exact(first), exact(widest), exact(largestReduction), passesBefore === 0));
  }
  const opened = (): PassStep => ({ gap: gapFor(widest, springBack, opening), thickness: widest });
  const steps = () => [opened(), ...equalSteps(widest, final, springBack, count(fewest - 1), opening)];
  return answer({ last: final, steps });
}

/** Whether the first of so many equal steps leaves no more than the widest thickness, told by whole powers. */
function opensWideEnough(first: Decimal, final: Decimal, widest: Decimal, passes: number): boolean {
  return widest.pow(passes).gte(final.times(first.pow(passes - 1)));
}

function widestThickness(greatest: Decimal, springBack: Figure, pass: number): Figure {
  const naming = { id: `pass-${pass}.thickness`, label: "thickness at the widest gap", ...millimetres };
  return worked(naming, "greatest * springBack", { greatest, springBack }, fromSpec);
}

function firstTooThick(first: Decimal, widest: Decimal, largestReduction: Decimal, isStated: boolean): Problem {
  const thickest = mm(downwards(widest.div(ONE.minus(largestReduction.div(HUNDRED)))));
  return problem("passes.first-too-thick", ["firstThickness"], {
    first: mm(first),
    reduction: percent(reductionOf(first, widest)),
    most: percent(largestReduction.div(HUNDRED)),
    thickest,
    ...(isStated && { meant: `${thickest} mm` }),
  });
}

function equalSteps(
  first: Figure,
  final: Figure,
  springBack: Figure,
  passes: Figure,
  before: number,
): readonly PassStep[] {
  const ratioNaming = { id: "passes.ratio", label: "thickness after a pass over that before it", unit: "", places: 4 };
  const ratio = worked(ratioNaming, "(final / first) ^ (1 / passes)", { final, first, passes }, equalRatio);
  const steps: PassStep[] = [];
  let thickness = first;
  for (let pass = 1; exact(passes).gte(pass); pass += 1) {
    const number = before + pass;
    const naming = { id: `pass-${number}.thickness`, label: `thickness after pass ${number}`, ...millimetres };
    thickness = exact(passes).eq(pass)
      ? worked(naming, "final", { final }, definition)
      : worked(naming, "thickness * ratio", { thickness, ratio }, equalRatio);
    steps.push({ gap: gapFor(thickness, springBack, number), thickness });
  }
  return steps;
}

function gapFor(thickness: Figure, springBack: Figure, pass: number): Figure {
  const naming = { id: `pass-${pass}.gap`, label: `gap of pass ${pass}`, ...millimetres };
  return worked(naming, "thickness / springBack", { thickness, springBack }, definition);
}
