import { input, type Lists, noAnswer, type Texts } from "./entry.ts";
import { didYouMean } from "./words.ts";

const inLoads = (count: string): string => `${count} ${count === "1" ? "load" : "loads"}`;

export const batch = {
  "mend.nothing": input(() => ({
    found: "nothing that is in the bowl",
    expected: "what is too much, and how much of it is in",
    advice: "say it with its unit, such as tap water, 3170 g",
  })),
  "mend.unknown": input(({ name, names, nearest: [nearest] }: Texts<"name"> & Lists<"names" | "nearest">) => ({
    found: `"${name}"`,
    expected: `an ingredient of the load: ${names.join(", ")}`,
    advice: nearest === undefined ? "name one of these" : `did you mean "${nearest}"?`,
  })),
  "mend.twice": input(({ name }: Texts<"name">) => ({
    found: `${name} a second time`,
    expected: "what is in the bowl of it in all",
    advice: "add the weights up, and say it once",
  })),
  "mend.amount": input(({ name, amount }: Texts<"name" | "amount">) => ({
    found: amount === "" ? `${name} without its weight` : `"${amount}" of ${name}`,
    expected: "a weight with its unit",
    advice: `write it like '${name}=3170 g'`,
  })),
  "weighing.no-flour": input(({ flour }: Texts<"flour">) => ({
    found: `${flour} g of flour in a load`,
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
    expected: "a currency code of ISO 4217",
    advice:
      nearest[0] === undefined ? "write its three letters, such as EUR, USD or JPY" : `did you mean ${nearest[0]}?`,
  })),
  "cost.two-prices": input(({ name, first, second }: Texts<"name" | "first" | "second">) => ({
    found: `${name} at ${first} and at ${second}`,
    expected: "one price for one material",
    advice: "correct one of them, or give what is another flour or product a name of its own under `materials:`",
  })),
  "cost.no-prices": input(() => ({
    found: "no price of any ingredient",
    expected: "prices",
    advice: "write `prices:` with lines such as `table salt: 0.60 EUR/kg`, or `price:` beside a material",
  })),
  "cost.mixed-currencies": input(({ used }: Lists<"used">) => ({
    found: used.join("; "),
    expected: "one currency",
    advice: "turn all prices into one currency: no rate of exchange is known here",
  })),
  "batch.stated-twice": input(({ ways }: Lists<"ways">) => ({
    found: ways.join(" and "),
    expected: "one of bowls, dough, flour, load or have",
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
    expected: "some of it",
    advice: "name an ingredient that the dough needs",
  })),
  "batch.not-stated": input(() => ({
    found: "no size of batch",
    expected: "one of bowls, dough, flour, load or have",
    advice: "write it under `batch:`",
  })),
  "batch.bowl-weight-missing": input(() => ({
    found: "a number of bowls without their weight",
    expected: "rawWeight or cookedWeight beside bowls",
    advice: "write `rawWeight: 130 g`, or `cookedWeight: 230 g` with `cookGain`",
  })),
  "mixer.limits": input(({ smallest, largest }: Texts<"smallest" | "largest">) => ({
    found: `a smallest load of ${smallest} and a largest of ${largest}`,
    expected: "a smallest load below the largest",
    advice: "exchange them",
  })),
  "mixer.no-equal-loads": noAnswer(
    ({
      each,
      of,
      loads,
      smallest,
      largest,
      fewer,
      enough,
    }: Texts<"each" | "of" | "loads" | "smallest" | "largest" | "enough"> & Partial<Texts<"fewer">>) => ({
      found: `${each} of ${of} in each of ${inLoads(loads)}, below the mixer's smallest load of ${smallest}`,
      expected: `equal loads from ${smallest} to ${largest} of ${of}`,
      advice: `${fewer === undefined ? "" : `make at most ${fewer} of ${of} in ${inLoads(String(Number(loads) - 1))}, or `}make at least ${enough} of ${of} in ${inLoads(loads)}`,
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
    advice: "exchange them, or read both off the plate of the scale",
  })),
  "scales.mixed-systems": input(() => ({
    found: "scales in grams and scales in ounces",
    expected: "scales of one system, so that the weights of a load can be added up",
    advice: "switch all scales to the same units",
  })),
};
