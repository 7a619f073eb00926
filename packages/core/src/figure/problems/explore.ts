import type { Measure } from "../in-system.ts";
import { inWords } from "../said.ts";
import { type Counts, type Inner, input, type Lists, noAnswer, remark, type Texts } from "./entry.ts";

/** What is wanted and does not go together with the rest, and both ends of what it comes to beside it. */
export interface WayOut extends Texts<"label" | "unit" | "wanted"> {
  readonly reach: readonly string[];
  /** Whether it stays below what is wanted, or above it. */
  readonly stays: "below" | "above";
  /** What has to be kept for it to come so near and no nearer. */
  readonly kept: readonly Texts<"label" | "wanted">[];
}

function reached({ label, unit, reach: [low, high], stays }: WayOut, both: boolean): string {
  if (low === undefined || high === undefined) return `there is no ${label}`;
  if (low === high) return `${label} can only be ${low} ${unit}`;
  if (both) return `${label} can be from ${low} to ${high} ${unit}`;
  return `${label} can be ${stays === "below" ? `${high} ${unit} at most` : `${low} ${unit} at least`}`;
}

function said({ label, wanted }: Texts<"label" | "wanted">): string {
  return `${label} ${/^\d/u.test(wanted) ? `of ${wanted}` : wanted}`;
}

/** What finds the amounts of alkaline products, as it is written. */
const findBy = { strength: "`alkalinity: 17 meq` or `anhydrousSalts: 0.9 %`", ratio: "`potassiumShare: 40 %`" };

/** Amounts that were found, and what protein their blend comes to where one is wanted. */
export type Found = {
  readonly amounts: readonly Texts<"name" | "amount">[];
  readonly protein?: Texts<"wanted" | "reached">;
};

/** What is reached beside what is wanted; of the price of a mass, both as measures too, which are told in the units asked for. */
export type Reached = Texts<"reached" | "wanted"> & { readonly price?: Readonly<Record<"reached" | "most", Measure>> };

/** A want that is missed; of a price, with what costs most. */
export type Missed = Texts<"label"> & Reached & { readonly dearest?: Texts<"name" | "cost"> };

/** Both in words: a price as it was said, and beside that in the unit of what is reached where it is another. */
export function reachedTexts(
  { reached, wanted, price }: Reached,
  tell: (measure: Measure) => string,
): Texts<"reached" | "wanted"> {
  if (price === undefined) return { reached, wanted };
  const most = tell(price.most);
  const isSaid = wanted.endsWith(most.replace(/^.* /u, ""));
  return { reached: tell(price.reached), wanted: isSaid ? wanted : `${wanted} (${most})` };
}

export const explore = {
  "settle.masses": input(() => ({
    found: "a flour in g beside flours to be found",
    expected: "all flours in %, as those that are found come out",
    advice: "write the known flours in % too",
  })),
  "settle.alkali": input(({ open, stated, lacking }: Counts<"open" | "stated"> & Lists<"lacking">) => ({
    found: `${open === 1 ? "1 product" : `${open} products`} to be found, and ${stated === 0 ? "nothing" : stated} under \`wanted:\` to find ${open === 1 ? "it" : "them"} by`,
    expected:
      open === 1
        ? "an alkalinity or a share of salts to aim at"
        : "one thing that is wanted for each, of strength and ratio",
    advice:
      open > 2
        ? "state all but two of the products"
        : `under \`wanted:\` write ${lacking.map((one) => findBy[one === "ratio" ? one : "strength"]).join(", and ")}`,
  })),
  "settle.replaced": input(() => ({
    found: "a product that is to be found and replaced at once",
    expected: "one of the two",
    advice: "name the product that goes in, and leave `replaceWith` out",
  })),
  "settle.salt": input(({ bowl }: Texts<"bowl">) => ({
    found: `salt to be found, ${bowl === "" ? "and nothing to find it by" : `wanted in a bowl ${bowl}`}`,
    expected: "salt of the dough, or of a bowl of known weight",
    advice:
      "write `saltInDough: 0.8 %` under `wanted:`, or `saltInBowl: 0.6 g` with the weight of a bowl under `batch:`",
  })),
  "settle.water": noAnswer(({ names }: Lists<"names">) => ({
    found: `water to be found, and no source tells how much of it ${names.join(", ")} ${names.length === 1 ? "takes" : "take"}`,
    expected: "the water that is wanted, or the kitchen's own figure of every flour",
    advice:
      "write `addedWater: 38 %` or `doughWater: 36 %` under `wanted:`; or find the water out in trial doughs, and write it down as `absorption` of each flour",
  })),
  "settle.alike": noAnswer(({ names }: Lists<"names">) => ({
    found: `${names.join(" and ")}, and nothing that is wanted tells how much of each`,
    expected: "products that differ in what is wanted, such as one of sodium and one of potassium",
    advice: "take another product in place of one of them, or state the amount of one",
  })),
  "settle.conflict": noAnswer(({ names, wants }: { readonly wants: readonly WayOut[] } & Lists<"names">) => {
    const [first] = wants;
    const all = new Set(wants.flatMap((want) => [want, ...want.kept]).map(said));
    const open = wants.filter(({ reach }) => reach.length > 0);
    const ways = (open.length > 0 ? open : wants).map(
      (want) => `keep ${inWords(want.kept.map(said))}, and ${reached(want, false)}`,
    );
    const alone = all.size === 1;
    return {
      found: `${inWords([...all])}${alone ? "" : " together"}, which ${inWords(names)} cannot give`,
      expected: `wants that can be met${alone ? "" : " together"} by amounts of zero or more`,
      advice: first && alone ? `${reached(first, true)}: ask within it, or take other products` : ways.join("; or "),
    };
  }),
  "settle.out-of-reach": noAnswer(
    ({ problem, nearest: [flours, ...misses] }: { readonly problem: Inner } & Lists<"nearest">, _path, tell) => {
      const { found, expected, advice } = tell(problem);
      const more = flours === undefined ? "" : `. The nearest: ${flours} (${misses.join("; ")})`;
      return { found, expected, advice: `${advice}${more}` };
    },
  ),
  "trial.flour": input(({ flour }: Texts<"flour">) => ({
    found: `${flour} g`,
    expected: "a mass above zero",
    advice: "take 200 g, which makes a dough that can be sheeted",
  })),
  "trial.water": input(({ water, step }: Texts<"water" | "step">) => ({
    found: `${water} % in steps of ${step} %`,
    expected: "water of at least one step, and a step above zero",
    advice: "begin with the water that you have used so far",
  })),

  "settle.found": remark(
    ({ amounts, protein }: Found) =>
      `found for you: ${amounts.map(({ name, amount }) => `${name} ${amount}`).join(", ")}${
        protein === undefined ? "" : `; protein ${protein.wanted} wanted, ${protein.reached} reached`
      }`,
  ),
  "settle.preference": remark(({ value }: { readonly value: boolean }) =>
    value
      ? "of the blends that meet all that is wanted, this one comes nearest to the protein, and of several as near, it keeps most to the middle of what each flour may be; with room around the protein you may ask for another, such as the cheapest"
      : "of the blends that meet all that is wanted, this one keeps most to the middle of what each flour may be; you may ask for another, such as the cheapest",
  ),
  "settle.boiled": remark(
    "the salt of the dough is found by what boiling leaves of sodium in an alkaline noodle of a food table; taste a bowl, since more water and longer boiling leave less",
  ),
  "settle.own-water": remark(
    "the water is what the flours take by the kitchen's own figures; a trial of the water tells whether the blend takes the same",
  ),
  "wanted.missed": remark(({ label, dearest, ...both }: Missed, tell) => {
    const { reached, wanted } = reachedTexts(both, tell);
    const most = dearest === undefined ? "" : `; of it, ${dearest.name} costs ${dearest.cost}`;
    return `not the noodle that is wanted: ${label} is ${reached}, and the spec says ${wanted}${most}`;
  }),
  "wanted.no-blend": remark(
    ({ problem }: { readonly problem: Inner }, tell) => `what is wanted of the blend cannot be told: ${tell(problem)}`,
  ),
  "wanted.no-bowl": remark("the salt and sodium wanted in a bowl cannot be told: the weight of a bowl is not stated"),
  "wanted.sodium": remark(
    ({ names }: Lists<"names">) =>
      `the sodium wanted cannot be told for certain: that of ${names.join(", ")} is not stated, and is counted as the most there is room for`,
  ),
  "wanted.cost": remark(
    ({ currency }: Texts<"currency">) =>
      `the price wanted for a bowl, in ${currency}, cannot be told: no cost of a bowl in that currency is known`,
  ),
  "wanted.prices": remark(
    ({ names }: Lists<"names">) =>
      `the price wanted for a bowl cannot be told: no price is stated for ${names.join(", ")}`,
  ),
};
