import { type Counts, input, type Lists, remark, type Texts } from "./entry.ts";
import { ofOne } from "./words.ts";

const lift = (word: string): string => `check the number and its unit; write \`accept: [${word}]\` if it is meant`;

const oneWay = "the water said in one way: all that is added, what is poured from the tap, or all that is in the dough";

/** A dose beyond the greatest published use, both in % of flour. */
export type Beyond = Texts<"dose" | "used" | "source">;

const beyond = (what: string, { dose, used, source }: Beyond): string =>
  `${what} of ${dose} % of flour: more than the ${used} % that published noodle formulas use (${source})`;

const besidePercent = (expected: string) =>
  input(({ amount }: Texts<"amount">) => ({
    found: `${amount}, while the flours are in %`,
    expected,
    advice: "write it in % of flour, or write every flour as a mass",
  }));

export const formula = {
  "amounts.mass-without-flour-mass": besidePercent("an amount in % of flour"),
  "alkali.dose-unit": input(({ as, amount }: Texts<"as" | "amount">) => ({
    found: `"${as}" beside ${amount}, which states alkalinity`,
    expected: "a dose in % of flour or as a mass, or as an alkalinity where that is said",
    advice: "write `as: alkalinity`, or give the dose in %",
  })),
  "alkali.no-strength": input(({ name, lacks }: Texts<"name" | "lacks">) => ({
    found: `"${name}", which has no ${lacks}`,
    expected: "a product that can give the dose",
    advice: "take another product, or give the dose in % of flour",
  })),
  "flours.mixed-amounts": input(() => ({
    found: "flours in % and in masses",
    expected: "all flours in %, or all in masses",
    advice: "write all of them in one way",
  })),
  "flours.rest-twice": input(({ rests }: Counts<"rests">) => ({
    found: `${rests} flours written as rest`,
    expected: "at most one rest",
    advice: "write the shares of all but one",
  })),
  "flours.rest-with-masses": input(() => ({
    found: "masses and a rest",
    expected: "a mass for every flour",
    advice: "write the mass in place of `rest`",
  })),
  "flours.shares-total": input(({ total, off, rests }: Texts<"total" | "off"> & Counts<"rests">) => ({
    found: `shares that total ${total} %${rests > 0 ? " before the rest" : ""}`,
    expected: rests > 0 ? "shares below 100 % beside a rest" : "shares that total 100 %",
    advice:
      rests > 0
        ? `${off.startsWith("-") ? `take more than ${off.slice(1)} % off` : "take something off"} for the rest, or remove it`
        : off.startsWith("-")
          ? `take ${off.slice(1)} % away`
          : `add ${off} %, or write one flour as \`amount: rest\``,
  })),
  "flours.none": input(() => ({
    found: "no flour at all",
    expected: "flour above zero",
    advice: "write how much of a flour goes in",
  })),

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
  "flours.no-dry-matter": input(({ name }: Texts<"name">) => ({
    found: `"${name}" of 100 % moisture, which is nothing but water`,
    expected: "flour with dry matter",
    advice: "check its moisture, and list liquids under `ingredients:`",
  })),
  "alkali.no-composition": input(({ name }: Texts<"name">) => ({
    found: `"${name}"`,
    expected: "an alkaline product whose composition is known",
    advice: "give its composition under `figures:`, or list it under `ingredients:`",
  })),
  "alkali.replace-with": input(() => ({
    found: "`holding` without `replaceWith`",
    expected: "one product or two that take its place",
    advice: "name them in `replaceWith`, or leave `holding` out",
  })),
  "water.mass-without-flour-mass": besidePercent("water in % of flour"),
  "water.below-flour": input(({ amount }: Texts<"amount">) => ({
    found: `${amount} on flour of the stated moisture`,
    expected: "more water than the damper flour at hand already brings",
    advice: "check the flour's moisture and `onFlourMoisture`",
  })),
  "water.not-stated": input(() => ({
    found: "no water",
    expected: oneWay,
    advice: "write one of `added`, `tap` and `dough`, such as `added: 36 %`",
  })),
  "water.stated-twice": input(({ ways }: Lists<"ways">) => ({
    found: ways.join(" and "),
    expected: oneWay,
    advice: "keep the one you mean",
  })),
  "water.below-own": input(
    ({ written, own, from }: Texts<"written" | "own"> & { readonly from: "flours" | "all" }) => ({
      found: `${written} water in the dough`,
      expected: `at least the ${own} % that ${from === "flours" ? "the flours alone bring" : "the flours and the other ingredients bring before any is poured"}`,
      advice: "check the moisture of the flours, or raise the water",
    }),
  ),
  "water.below-carried": input(({ written, carried, short }: Texts<"written" | "carried" | "short">) => ({
    found: written,
    ...(carried === "0"
      ? {
          expected: "more than 0 %, as the other ingredients bring next to no water",
          advice: "write the water that the dough takes, such as `added: 36 %`",
        }
      : {
          expected: `at least the ${carried} % of flour that the other ingredients already bring`,
          advice: `raise the water, or take out ${short} % of flour of what carries it`,
        }),
  })),

  "alkali.unusual": remark((facts: Beyond) => beyond("anhydrous salts", facts)),
  "alkali.hydroxide": remark((facts: Beyond) => beyond("hydroxide", facts)),
  "salt.unusual": remark((facts: Beyond) => beyond("salt", facts)),
  "alkali.food-law": remark(({ limit }: Texts<"limit">) => `${limit}; the local code decides`),
  "alkali.product": ofOne,
  "alkali.replaced": remark(
    ({ names, old, parts, holding }: Lists<"names"> & Texts<"old" | "parts" | "holding">) =>
      `${names.join(" and ")} in place of ${old}, ${parts}; held: ${holding}`,
  ),
  "blend.protein-missing": remark(
    ({ name }: Texts<"name">) => `the protein of ${name} is not stated, so the blend has no protein figure`,
  ),
  "blend.ash-missing": remark(
    ({ name }: Texts<"name">) => `the ash of ${name} is not stated, so the blend has no ash figure`,
  ),
  "blend.basis-assumed": remark(
    ({ names, percent, source }: Texts<"percent" | "source"> & Lists<"names">) =>
      `the basis of the protein of ${names.join(", ")} is not stated: it is taken at ${percent} % moisture, as certificates of flour have it (${source}). What the label of a bag states is as is: state the basis where the figure is from there`,
  ),
  "blend.factor-unknown": remark(
    ({ name, taken, other, percent }: Texts<"name" | "taken" | "other" | "percent">) =>
      `the nitrogen factor behind the protein of ${name} is not stated; it is taken as ${taken}, and the protein would read ${percent} % of that if it was ${other}`,
  ),
  "water.reference-moisture": remark(
    ({ written, moisture, several }: Texts<"written" | "moisture"> & { readonly several: boolean }) => {
      const shares = several
        ? "; the flours keep their shares as written, so the dry matter of all together is kept and not that of each"
        : "";
      return `the spec is written on flour of ${written} moisture; the parts here are on 100 of the flours at hand, of ${moisture}, and make the same dough${shares}`;
    },
  ),
  "water.unusual": remark(
    ({ added }: Texts<"added">) =>
      `added water of ${added} % of flour is outside the 25 to 50 % that published noodle formulas use`,
  ),
  "rework.same-dough": remark(
    ({
      amount,
      of,
      ofFlour,
    }: Texts<"amount"> & { readonly of: "dough in the mixer" | "whole batch"; readonly ofFlour: boolean }) =>
      `rework, ${amount} ${of === "whole batch" ? "in the whole batch" : "of the dough in the mixer"}: trimmings of the very same dough, with the same water, salts and allergens, change nothing in the formula; those of another dough are another ingredient${ofFlour ? ". The mixer's limits of flour count the flour in it as well, so that the new flour of a load comes to less" : ""}`,
  ),
  "rework.rule": remark(({ most, oldest }: Partial<Texts<"most" | "oldest">>) => {
    const limits = [
      ...(most === undefined ? [] : [`at most ${most} of the dough`]),
      ...(oldest === undefined ? [] : [`no older than ${oldest}`]),
    ];
    const rule = limits.length === 0 ? "the spec states none" : `here ${limits.join(" and ")}`;
    return `how old rework may be and how much of it a dough takes is the kitchen's own rule: ${rule}. Keep it covered and cold, and label it with day and allergens`;
  }),
};
