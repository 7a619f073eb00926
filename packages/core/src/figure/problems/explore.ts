import { type Counts, input, type Texts } from "./entry.ts";

export const explore = {
  "tolerance.no-error": input(() => ({
    found: "nothing that may be off",
    expected: "at least one error",
    advice: "state `division` of a scale, `proteinUncertainty`, `moistureUncertainty` or the `uncertainty` of losses",
  })),
  // HAND explore/spec-trial.ts:54 "spec.quantity" expected: identifier expected
  "tolerance.causes": input(({ causes, names }: Counts<"names"> & Counts<"causes">) => ({
    found: `${causes} causes, ${names} names`,
    expected: "at least one cause, each with its own name",
    advice: "name every cause once",
  })),
  "tolerance.plus-minus": input(({ plusMinus, label }: Texts<"plusMinus" | "label">) => ({
    found: `${plusMinus} for ${label}`,
    expected: "zero or more",
    advice: "give the error without its sign",
  })),
  "tolerance.seed": input(({ seed }: Texts<"seed">) => ({
    found: seed,
    expected: "a whole number from 1 to 2147483646",
    advice: "leave it out or choose another",
  })),
  "tolerance.draws": input(({ draws }: Texts<"draws">) => ({
    found: draws,
    expected: "a whole number from 100 to 100000",
    advice: "2000 is enough to see the spread",
  })),
  "trial.flour": input(({ flour }: Texts<"flour">) => ({
    found: `${flour} g`,
    expected: "a mass above zero",
    advice: "200 g makes a dough that can be sheeted",
  })),
  "trial.water": input(({ water, step }: Texts<"water" | "step">) => ({
    found: `${water} % in steps of ${step} %`,
    expected: "water of at least one step, and a step above zero",
    advice: "start at the water used so far",
  })),
};
