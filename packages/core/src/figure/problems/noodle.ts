import { type Counts, input, type Lists, noAnswer, type Texts } from "./entry.ts";

export const noodle = {
  "words.none": noAnswer(({ name, words }: Texts<"name"> & Counts<"words">) => ({
    found: `no explanation of "${name}"`,
    expected: `one of the ${words} words that are explained`,
    advice: "see them all",
  })),
  "write.masses": input(() => ({
    found: "flours written in g",
    expected: "flours in %, as a blend is found",
    advice: "write the flours in % of flour, and what goes by them too",
  })),
  "write.new-flour": input(({ names }: Lists<"names">) => ({
    found: `${names.join(" and ")}, not among the flours of the spec`,
    expected: "a blend of the flours that the spec lists",
    advice: "put it under `flours:` with `amount: 0 %` first, then ask again",
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
