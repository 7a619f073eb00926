import { type Counts, input, type Texts } from "./entry.ts";

export const formula = {
  "amounts.mass-without-flour-mass": input(({ amount }: Texts<"amount">) => ({
    found: `${amount}, while the flours are in %`,
    expected: "an amount in % of flour",
    advice: "write it in % of flour, or write every flour as a mass",
  })),
  "alkali.dose-unit": input(({ as, amount }: Texts<"as" | "amount">) => ({
    found: `"${as}" beside ${amount}, which states alkalinity`,
    expected: "a dose in % of flour or a mass, or `as: alkalinity`",
    advice: "write `as: alkalinity`, or give the dose in %",
  })),
  // HAND formula/dose.ts:115 "alkali.no-strength" found: complex states === "anhydrous salts" ? "alkaline salts" : "alkalinity"
  "flours.mixed-amounts": input(() => ({
    found: "flours in % and in masses",
    expected: "all flours in %, or all in masses",
    advice: "write one way",
  })),
  "flours.rest-twice": input(({ rests }: Counts<"rests">) => ({
    found: `${rests} flours written as rest`,
    expected: "at most one rest",
    advice: "give their shares",
  })),
  "flours.rest-with-masses": input(() => ({
    found: "masses and a rest",
    expected: "a mass for every flour",
    advice: "write its mass",
  })),
  // HAND formula/flour-shares.ts:57 "flours.shares-total" found: complex rests > 0 ? " before the rest" : "" | expected: ConditionalExpression rests > 0 ? "shares below 100 % beside a rest" : "shares that total 100 %" | advice: ConditionalExpression off.isNegative() ? `take ${decimalText(off.negated())} % away` : rests > 0 ? "leave something for the rest, or remove it" : `add ${decimalText(off)} %, or w
  "flours.none": input(() => ({ found: "no flour at all", expected: "flour above zero", advice: "write its mass" })),
  // HAND formula/limits.ts:45 "quantity.out-of-range" hand code
  // HAND formula/limits.ts:77 "alkali.too-much" advice: CallExpression lift("high alkali")
  // HAND formula/limits.ts:88 "salt.too-much" advice: CallExpression lift("high salt")
  "flours.no-dry-matter": input(() => ({
    found: "flours of 100 % moisture, which are nothing but water",
    expected: "flours with dry matter",
    advice: "check their moisture, and list liquids under `ingredients:`",
  })),
  "alkali.no-composition": input(({ name }: Texts<"name">) => ({
    found: `"${name}"`,
    expected: "an alkaline product, whose composition is known",
    advice: "give its composition under `figures:`, or list it under `ingredients:`",
  })),
  "alkali.replace-with": input(() => ({
    found: "what to hold, and nothing to hold it with",
    expected: "`replaceWith` with one product or two",
    advice: "name what takes its place, or leave this out",
  })),
  "water.mass-without-flour-mass": input(({ amount }: Texts<"amount">) => ({
    found: `${amount}, while the flours are in %`,
    expected: "water in % of flour",
    advice: "write it in % of flour, or write every flour as a mass",
  })),
  "water.below-flour": input(({ amount }: Texts<"amount">) => ({
    found: `${amount} on flour of the stated moisture`,
    expected: "more water than the damper flour at hand already brings",
    advice: "check the flour's moisture and `onFlourMoisture`",
  })),
  // HAND formula/water.ts:256 "water.not-stated" expected: const used twice expected
  // HAND formula/water.ts:257 "water.stated-twice" expected: const used twice expected
  // HAND formula/water.ts:263 "water.below-carried" found: identifier text
};
