import { type Counts, input, type Lists, type Texts } from "./entry.ts";

const lift = (word: string): string => `check the number and its unit; write \`accept: [${word}]\` if it is meant`;

const oneWay = "the water stated in one way: `added`, `tap` or `dough`";

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
  "alkali.no-strength": input(({ name, lacks }: Texts<"name" | "lacks">) => ({
    found: `"${name}", which has no ${lacks}`,
    expected: "a product that can give the dose",
    advice: "take another product or state the dose as product",
  })),
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
  "flours.shares-total": input(({ total, off, rests }: Texts<"total" | "off"> & Counts<"rests">) => ({
    found: `shares that total ${total} %${rests > 0 ? " before the rest" : ""}`,
    expected: rests > 0 ? "shares below 100 % beside a rest" : "shares that total 100 %",
    advice: off.startsWith("-")
      ? `take ${off.slice(1)} % away`
      : rests > 0
        ? "leave something for the rest, or remove it"
        : `add ${off} %, or write one flour as \`amount: rest\``,
  })),
  "flours.none": input(() => ({ found: "no flour at all", expected: "flour above zero", advice: "write its mass" })),

  "alkali.too-much": input(
    ({
      anhydrous,
      alkalinity,
      most,
      strongest,
      source,
    }: Texts<"anhydrous" | "alkalinity" | "most" | "strongest" | "source">) => ({
      found: `anhydrous salts of ${anhydrous} % of flour, ${alkalinity} meq per 100 g flour`,
      expected: `at most ${most} %, and ${strongest} meq, the most that noodles were tried with (${source})`,
      advice: lift("high alkali"),
    }),
  ),
  "salt.too-much": input(({ salt, most, used, source }: Texts<"salt" | "most" | "used" | "source">) => ({
    found: `salt of ${salt} % of flour`,
    expected: `at most ${most} %; the most that a published noodle takes is ${used} % (${source})`,
    advice: lift("high salt"),
  })),
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
  "water.not-stated": input(() => ({
    found: "no water",
    expected: oneWay,
    advice: "write one of them, such as `added: 36 %`",
  })),
  "water.stated-twice": input(({ ways }: Lists<"ways">) => ({
    found: ways.join(" and "),
    expected: oneWay,
    advice: "keep the one you mean",
  })),
  "water.below-carried": input(({ written, carried, short }: Texts<"written" | "carried" | "short">) => ({
    found: written,
    expected: `at least the ${carried} % of flour that the other ingredients already bring`,
    advice: `raise the water, or take out ${short} % of flour of what carries it`,
  })),
};
