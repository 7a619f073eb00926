import { type Decimal, dec, HUNDRED, ONE, ZERO } from "../number/decimal.ts";
import type { BlendQuestion, Candidate } from "./blend-question.ts";
import type { StepProblem } from "./step-problem.ts";

/** The steps that the shares of a question come in. */
interface Grid {
  /** What all of them are whole multiples of, %. */
  readonly unit: Decimal;
  /** Step of each flour, %. */
  readonly steps: readonly Decimal[];
}

/** A share that whole bags make is rounded to this, %. */
export const finest = dec("0.001");

/**
 * The step of each flour: its own, whole bags of it, or that of the question. Where they are not all the same, the flour of
 * which there is most takes what the others leave, in the finest of all steps.
 */
export function gridOf(question: BlendQuestion): Grid {
  const { flours } = question;
  const own = flours.map((flour) => stepOf(flour, question));
  const [first = ONE] = own;
  const bagged = flours.some(({ bag }) => bag !== undefined) && question.flourMass !== undefined;
  if (!bagged && own.every((step) => step.eq(first))) return { unit: first, steps: own };
  // a flour in bags is held against the blend by weight as well, so that bags alone are no unit
  const least = own.reduce((low, step) => (step.lt(low) ? step : low), dec(bagged ? (question.step ?? 1) : HUNDRED));
  const unit = [least, dec("0.1"), dec("0.01")].find((one) => own.every((step) => step.mod(one).isZero())) ?? finest;
  const rest = restFlour(question);
  return { unit, steps: own.map((step, index) => (index === rest ? unit : step)) };
}

function stepOf({ step, bag }: Candidate, question: BlendQuestion): Decimal {
  const { flourMass, bagMass = flourMass } = question;
  if (bag === undefined || bagMass === undefined) return dec(step ?? question.step ?? 1);
  return dec(bag).div(bagMass).times(HUNDRED).toDecimalPlaces(finest.decimalPlaces());
}

/** Which flour takes what the steps of the others leave; -1 where none can. */
export function restFlour({ flours, prefer }: BlendQuestion): number {
  const share = (name: string): Decimal =>
    dec((prefer.kind === "nearest" && prefer.to.find((one) => one.name === name)?.share) || 0);
  const free = [...flours.keys()].filter((index) => {
    const { step, bag, fixed, ratioTo, missing } = flours[index] ?? {};
    return [step, bag, fixed, ratioTo, missing].every((limit) => limit === undefined);
  });
  return free.reduce(
    (most, index) => (share(flours[index]?.name ?? "").gt(share(flours[most]?.name ?? "")) ? index : most),
    free[0] ?? -1,
  );
}

/** Whole multiples, fewest steps of a flour that is used, and most flours, for the search in whole steps. */
export function shapeOf(
  question: BlendQuestion,
  { unit, steps }: Grid,
): Pick<StepProblem, "every" | "ifUsed" | "mostFlours"> {
  const { flours, prefer, mostFlours, leastShare = "0" } = question;
  const fewest = flours.map(({ name, most, fixed, dryGluten }, index) => {
    const now = prefer.kind === "nearest" ? prefer.to.find((one) => one.name === name)?.share : undefined;
    const own = [now, most, fixed].flatMap((share) => (share === undefined || dec(share).isZero() ? [] : [dec(share)]));
    const share = dryGluten === true ? ZERO : own.reduce((low, one) => (one.lt(low) ? one : low), dec(leastShare));
    return share
      .div(steps[index] ?? unit)
      .floor()
      .times((steps[index] ?? unit).div(unit))
      .toNumber();
  });
  return {
    ...(steps.some((step) => !step.eq(unit)) && { every: steps.map((step) => step.div(unit).toNumber()) }),
    ...(fewest.some((count) => count > 1) && { ifUsed: fewest.map((count) => Math.max(1, count)) }),
    ...(mostFlours !== undefined && { mostFlours }),
  };
}
