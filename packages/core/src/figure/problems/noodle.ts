import { type Counts, input, type Lists, noAnswer, type Texts } from "./entry.ts";
import { didYouMean } from "./words.ts";

export const noodle = {
  "words.none": noAnswer(({ name, words }: Texts<"name"> & Counts<"words">) => ({
    found: `no explanation of "${name}"`,
    expected: `one of the ${words} words that are explained`,
    advice: "see them all",
  })),
  "convert.not-there": input(({ name, names, nearest }: Texts<"name"> & Lists<"names" | "nearest">) => ({
    found: `"${name}"`,
    expected: "an alkaline product of the spec",
    advice:
      names.length === 0 ? "the spec has none to convert" : didYouMean(nearest, `name one of: ${names.join(", ")}`),
  })),
  "compare.one": input(() => ({
    found: "one noodle",
    expected: "two or more, or one as written and as set",
    advice: "name another spec, or say what to change",
  })),
  "card.loads": input(({ loads, count }: Texts<"loads" | "count">) => ({
    found: loads,
    expected: `loads from 1 to ${count}, such as ${count === "1" ? "1" : "1,2 or 1-2"}`,
    advice: "name loads of the batch",
  })),
  "stock.no-alkali": input(() => ({
    found: "a spec without alkaline products",
    expected: "some to make a stock of",
    advice: "name a product instead",
  })),
};
