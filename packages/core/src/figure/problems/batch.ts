import { measure } from "../in-system.ts";
import { type Counts, input, type Lists, type Measures, noAnswer, remark, type Tell, type Texts } from "./entry.ts";
import { didYouMean, withPoints } from "./words.ts";

const oneSize =
  "how much is to be made, said in one way: as bowls, as dough, as flour, as one load of the mixer, or as what has to be used up";

const inLoads = (count: string): string => `${count} ${count === "1" ? "load" : "loads"}`;

/** A name that no ingredient has, and one that is near. */
export type NotUsed = Texts<"name"> & Partial<Texts<"near">>;

const notUsed = (list: string, { name, near }: NotUsed): string =>
  `"${name}" in the ${list} is no ingredient of this formula${near === undefined ? "" : `; did you mean "${near}"?`}`;

/** What a load comes to, and the largest that the mixer takes, as written. */
export type MixerLoad = Measures<"load"> &
  Texts<"largest"> & {
    readonly of: `${"flour" | "dough"}${"" | ", rework included"}`;
  };

const loadText = ({ load, of, largest }: MixerLoad, tell: Tell): string =>
  `it comes to ${tell(load)} of ${of}, and the mixer takes ${largest}`;

/** % that boiling leaves, and within what. */
export interface Kept extends Texts<"percent">, Partial<Texts<"low" | "high">> {}

export const batch = {
  "mend.nothing": input(() => ({
    found: "nothing said of what is in the bowl",
    expected: "what is too much, and how much of it is in",
    advice: "say it with its unit, such as tap water, 3170 g",
  })),
  "mend.unknown": input(({ name, names, nearest: [nearest] }: Texts<"name"> & Lists<"names" | "nearest">) => ({
    found: `"${name}"`,
    expected: `an ingredient of the load: ${names.join(", ")}`,
    advice: nearest === undefined ? "name one of these" : `did you mean "${nearest}"?`,
  })),
  "mend.several": input(({ name, ids }: Texts<"name"> & Lists<"ids">) => ({
    found: `"${name}", which the load has more than once`,
    expected: `one line of the load: ${ids.join(" or ")}`,
    advice: "make one entry of them in the spec, or name one of these lines",
  })),
  "mend.twice": input(({ name }: Texts<"name">) => ({
    found: `${name} a second time`,
    expected: "what is in the bowl of it in all",
    advice: "add the weights up, and say it once",
  })),
  "mend.amount": input(({ name, amount }: Texts<"name" | "amount">) => ({
    found: amount === "" ? `${name} without its weight` : `"${amount}" of ${name}`,
    expected: "a weight with its unit, 0 g where there is none",
    advice: `weigh it, and say how much of ${name} is in, such as ${withPoints(amount) ?? "3170 g"}`,
  })),
  "mend.beyond": input(({ name, amount, planned, most }: Texts<"name" | "amount" | "planned" | "most">, _, tell) => ({
    found: `"${amount}" of ${name}, where the list says ${tell(measure(planned, "g"))}`,
    expected: `at most ${tell(measure(most, "g"))}, for a slip is within ten times the list and twice what the mixer takes`,
    advice: "check the number and its unit; so much is another batch and no slip",
  })),
  "mend.stock": noAnswer(({ names }: Lists<"names">) => ({
    found: `a list on which a stock solution brings ${names.join(", ")}`,
    expected: "a load whose salts are weighed dry: beside a stock solution, what to add cannot be worked out",
    advice:
      "take out what is too much if you can, and do not use the load as it is if you cannot. Where no stock solution is in, and the salts go in dry, name each of them as well, 0 g of what is not in yet",
  })),
  "weighing.no-flour": input(({ flour }: Texts<"flour">, _, tell) => ({
    found: `${tell(measure(flour, "g"))} of flour in a load`,
    expected: "flour that the scale can show",
    advice: "make a larger batch or name a finer scale",
  })),
  "batch.bowl-weight-twice": input(() => ({
    found: "both rawWeight and cookedWeight",
    expected: "the raw or the cooked weight of a bowl",
    advice: "keep one",
  })),
  "cost.unknown-currency": input(({ currency, nearest }: Texts<"currency"> & Lists<"nearest">) => ({
    found: `"${currency}"`,
    expected: "the three letters of a currency (ISO 4217), such as EUR",
    advice:
      nearest[0] === undefined
        ? "write its three letters, such as EUR, USD or JPY"
        : `did you mean ${nearest.join(" or ")}?`,
  })),
  "cost.two-prices": input(({ name, first, second }: Texts<"name" | "first" | "second">) => ({
    found: `${name} at ${first} and at ${second}`,
    expected: "one price for one material",
    advice: "correct one of them, or give what is another flour or product a name of its own under `materials:`",
  })),
  "cost.no-prices": input<{ readonly meant: Readonly<Record<string, string>> }>(() => ({
    found: "no price of any ingredient",
    expected: "the price of at least one ingredient",
    advice: "write it under `prices:`, or `price:` beside a material",
  })),
  "cost.mixed-currencies": input(({ used }: Lists<"used">) => ({
    found: used.join("; "),
    expected: "one currency",
    advice: "turn all prices into one currency: no rate of exchange is known here",
  })),
  "batch.stated-twice": input(({ ways }: Lists<"ways">) => ({
    found: ways.join(" and "),
    expected: oneSize,
    advice: "keep the one that sets the size of the batch",
  })),
  "mixer.needed": input(({ size }: Texts<"size">) => ({
    found: `no ${size} load`,
    expected: `the mixer's ${size} load`,
    advice: "state it under `mixer:`",
  })),
  "batch.unknown-ingredient": input(({ name, names, nearest }: Texts<"name"> & Lists<"names" | "nearest">) => ({
    found: `"${name}"`,
    expected: `an ingredient of the formula: ${names.join(", ")}`,
    advice: didYouMean(nearest, "name one of these"),
  })),
  "batch.ingredient-zero": input(({ name }: Texts<"name">) => ({
    found: `"${name}", of which the dough takes none`,
    expected: "an ingredient that the dough takes",
    advice: "name another, or give it an amount in the formula",
  })),
  "batch.not-stated": input(() => ({
    found: "no size of batch",
    expected: oneSize,
    advice: "write it under `batch:`",
  })),
  "batch.bowl-weight-missing": input(() => ({
    found: "a number of bowls without their weight",
    expected: "what a bowl weighs, raw or cooked",
    advice: "write `rawWeight: 130 g`, or `cookedWeight: 230 g` with `cookGain`",
  })),
  "mixer.limits": input(({ smallest, largest }: Texts<"smallest" | "largest" | "meant">) => ({
    found: `a smallest load of ${smallest} and a largest of ${largest}`,
    expected: "a smallest load below the largest",
    advice: "swap them, or correct the one that is wrong",
  })),
  "mixer.no-equal-loads": noAnswer(
    (
      {
        each,
        of,
        loads,
        smallest,
        largest,
        fewer,
        enough,
      }: Texts<"of" | "loads" | "smallest" | "largest"> & Measures<"each" | "enough"> & Partial<Measures<"fewer">>,
      _,
      tell,
    ) => ({
      found: `${tell(each)} of ${of} in each of ${inLoads(loads)}, below the mixer's smallest load of ${smallest}`,
      expected: `equal loads from ${smallest} to ${largest} of ${of}`,
      advice: `${fewer === undefined ? "" : `make at most ${tell(fewer)} of ${of} in ${inLoads(String(Number(loads) - 1))}, or `}make at least ${tell(enough)} of ${of} in ${inLoads(loads)}`,
    }),
  ),
  "rework.no-new-dough": input(({ amount }: Texts<"amount">) => ({
    found: `${amount} of rework, all of the dough in the mixer`,
    expected: "new dough beside it",
    advice: "take less of it, or make a larger batch",
  })),
  "rework.beyond-own-limit": input(({ share, most }: Texts<"share" | "most">) => ({
    found: `rework of ${share} % of the dough in the mixer`,
    expected: `at most ${most}, the kitchen's own greatest share`,
    advice: "take less of it, or make a larger batch",
  })),
  "scales.capacity-below-division": input(({ capacity, division }: Texts<"capacity" | "division">) => ({
    found: `a capacity of ${capacity}, with steps of ${division}`,
    expected: "a capacity of at least one step",
    advice: "swap them, or read both off the plate of the scale",
  })),
  "scales.mixed-systems": input(({ grams, ounces }: Texts<"grams" | "ounces">) => ({
    found: `the ${grams} in grams beside the ${ounces} in ounces`,
    expected:
      "scales of one system: an ounce is 28.349523125 g, so that what is weighed on both has no total that either can show",
    advice: `switch the ${grams} to ounces or the ${ounces} to grams, as most scales can be, and write its division as it shows then`,
  })),

  "weighing.nothing": remark(({ names, stock }: Lists<"names"> & { readonly stock: boolean }) => {
    const way = stock ? "use the stock solution, or a finer scale" : "weigh it on a finer scale";
    return `${names.join(", ")}: too little for the scale, which shows nothing of it. Weighed so, the dough is made without it: ${way}`;
  }),
  "weighing.lots": remark(
    ({ name, lots, scale }: Texts<"name" | "scale"> & Counts<"lots">) =>
      `${name}: weigh it ${lots} times for each load, a part each time, since the ${scale} does not take it all at once`,
  ),
  "scales.capacity-unknown": remark(
    ({ name }: Texts<"name">) =>
      `how much the "${name}" takes is not stated, so only what a coarser scale does not show well enough is weighed on it: state its capacity`,
  ),
  "scales.assumed": remark(
    ({ us }: { readonly us: boolean }) =>
      `the spec names no scale; weights are for one that shows ${us ? "tenths of an ounce" : "whole grams"}`,
  ),
  "scales.metric": remark("weights are in grams, as the scales of the spec show them"),
  "batch.usual-cook-gain": remark(
    ({ taken, least, most }: Texts<"taken" | "least" | "most">) =>
      `the cook gain is taken as ${taken}; kitchens find ${least} to ${most}, so weigh one portion raw and cooked, and state its own`,
  ),
  "prices.not-used": remark((facts: NotUsed) => notUsed("list of prices", facts)),
  "stock.not-used": remark((facts: NotUsed) => notUsed("stock", facts)),
  "stock.not-stated": remark(
    ({ names }: Lists<"names">) =>
      `no stock is stated for ${names.join(", ")}: what is on hand is reckoned as if there was enough of that, and the list buys all of it`,
  ),
  "cost.rework-free": remark(
    "rework costs nothing here: it was paid for with the batch that it is from, and only what is bought anew is counted",
  ),
  "cost.not-priced": remark(
    ({ names }: Lists<"names">) =>
      `no price is stated for ${names.join(", ")}: every total leaves ${names.length === 1 ? "it" : "them"} out`,
  ),
  "cost.water-free": remark("tap water is counted as free, since no price is stated for it"),
  "cost.ingredients-only": remark(
    "these are the costs of ingredients alone; work, energy, rent, packing and tax are not in them",
  ),
  "mend.mixer": remark(
    ({ parts, ...load }: MixerLoad & Texts<"parts">, tell) =>
      `the mixer does not hold the load: ${loadText(load, tell)}. Divide what is in the bowl by weight into ${parts} equal parts, add to each its share of what is to be added, and mix them one after the other; or leave it as near as it comes with what is in`,
  ),
  "mend.mixer-holds": remark((load: MixerLoad, tell) => `the mixer holds the load: ${loadText(load, tell)}`),
  "mend.no-nearer": remark(
    ({ names, further, cause }: Lists<"names" | "further"> & Partial<Texts<"cause">>) =>
      `without more of ${names.join(", ")}, a load made larger for ${cause === undefined ? "what" : "all that"} is too much would be no nearer to the formula than one ${cause === undefined ? "by the list" : `that is right for ${cause}`}, counting every ingredient${further.length === 0 ? "" : `: all else added for it would bring ${further.join(", ")}`}. ${cause === undefined ? "Add only what the list still lacks" : `So it grows for ${cause} alone`}`,
  ),
  "mend.further": remark(
    ({ names, further }: Lists<"names" | "further">) =>
      `without more of ${names.join(", ")}, the larger load is nearer to the formula, counting every ingredient, but further off in what else is told: ${further.join(", ")}. Where that counts for more, add only what the list still lacks`,
  ),
  "mend.rework": remark(
    ({ more, share, most }: Measures<"more"> & Texts<"share"> & Partial<Texts<"most">>, tell) =>
      `rework is the same dough: ${tell(more)} more of it than planned leaves the formula as it is, and nothing has to be added for it. It becomes ${share} % of the dough${most === undefined ? "" : `, and the spec takes at most ${most}: more new dough by the formula brings it down`}`,
  ),
  "mend.off": remark(
    ({ names, off }: Lists<"names" | "off">) =>
      `${names.length === 0 ? "as weighed" : `without more of ${names.join(", ")}`}, the load stays off the formula: ${off.join("; ")}`,
  ),
  "mend.coarse": remark(
    ({ names, tolerance }: Lists<"names"> & Texts<"tolerance">) =>
      `${names.join(", ")}: half a step of the scale that weighs what is added is more than ${tolerance} % of what is then in. Add it on a finer scale`,
  ),
  "mend.fewer-loads": remark(({ count, left }: Counts<"count" | "left">) => {
    const others = left === 0 ? "no other" : `only ${left} more by the list`;
    return `the load takes the place of others: of the ${inLoads(String(count))} of the batch, ${others} ${left > 1 ? "are" : "is"} needed`;
  }),
  "mend.dry": remark(
    ({ names }: Lists<"names">) =>
      `the list has a stock solution that brings ${names.join(", ")}. Since salts in the bowl are named, this load is worked out with all of them weighed dry: add no stock solution to it`,
  ),
  "mend.fine": remark("nothing is in the bowl beyond the list that its scale can tell: weigh on by the list"),
  "nutrition.not-stated": remark(
    ({ name, figures }: Texts<"name"> & Lists<"figures">) =>
      `${name} does not state: ${figures.join(", ")}; a figure that this leaves too open for a label is given as a range, from none of it to all that the other figures leave room for. Copy what is missing from the certificate or the label`,
  ),
  "nutrition.factor": remark(
    ({ names }: Lists<"names">) =>
      `the nitrogen factor of ${names.join(", ")} is not stated; the usual one of its kind is taken`,
  ),
  "nutrition.inert": remark(
    ({ name }: Texts<"name">) =>
      `${name}: its inert part is taken to hold no nutrients; ask the supplier whether it is flour`,
  ),
  "nutrition.dusting": remark(
    ({ name }: Texts<"name">) => `${name} for dusting is left out: weigh how much of it stays on the strands`,
  ),
  "nutrition.tap-water": remark("the minerals of tap water are left out: the water works can tell its sodium"),
  "nutrition.boiling-salts": remark(({ sodium, potassium }: Readonly<Record<"sodium" | "potassium", Kept>>) => {
    const kept = ({ percent, low, high }: Kept): string =>
      `${percent} %${low === undefined ? "" : ` (${low} to ${high})`}`;
    return `as eaten: boiling is taken to leave ${kept(sodium)} of the sodium and ${kept(potassium)} of the potassium, from raw and boiled noodles of the Japanese tables; the broth is not in it`;
  }),
  "nutrition.boiling-solids": remark(
    ({ least, most, source }: Texts<"least" | "most" | "source">) =>
      `as eaten: the ${least} to ${most} % of the solids that boiling took in one study are not taken off, so energy and carbohydrate are a little high (${source})`,
  ),
  "nutrition.no-serving": remark("these rules declare a serving: state what a bowl weighs"),
  "nutrition.more-lines": remark("the law may want more than these lines"),
  "nutrition.not-on-flour": remark(
    "saturated fat and sugars, and added sugars, vitamins and minerals where the law wants them, are not told here: they need an analysis",
  ),
};
