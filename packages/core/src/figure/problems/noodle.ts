import { shortText } from "../../number/decimal.ts";
import { measure } from "../in-system.ts";
import { type Counts, type Inner, input, type Lists, noAnswer, remark, type Texts } from "./entry.ts";
import { didYouMean } from "./words.ts";

const cardParts = { water: "Water temperature", sheet: "Sheet", day: "Plan" };

export const noodle = {
  "words.none": noAnswer(({ name, words }: Texts<"name"> & Counts<"words">) => ({
    found: `no explanation of "${name}"`,
    expected: `one of the ${words} words that are explained`,
    advice: "look through all of them",
  })),
  "convert.not-there": input(({ name, names, nearest }: Texts<"name"> & Lists<"names" | "nearest">) => ({
    found: `"${name}"`,
    expected: "an alkaline product of the spec",
    advice:
      names.length === 0
        ? "the spec has no alkaline product, or replaces each one already (`replaceWith`)"
        : didYouMean(nearest, `name one of: ${names.join(", ")}`),
  })),
  "convert.several": input(({ name, places }: Texts<"name"> & Lists<"places">) => ({
    found: `"${name}" in ${places.length} lines: ${places.join(", ")}`,
    expected: "one alkaline product of the spec",
    advice: "name one of them by its place",
  })),
  "compare.one": input(({ noodles }: Counts<"noodles">) => ({
    found: noodles === 0 ? "no noodle" : "one noodle",
    expected: "two specs or more, or one spec and a change to it",
    advice: "name another spec, or say what is to change",
  })),
  "compare.name": input(({ name }: Texts<"name">) => ({
    found: name === "" ? "a noodle without a name" : `"${name}", which an earlier noodle is called`,
    expected: "a name of its own for each noodle",
    advice: "call it by what is different in it",
  })),
  "card.date": input(({ written }: Texts<"written">) => ({
    found: written,
    expected: "a date such as 2026-11-25",
    advice: "write year, month and day",
  })),
  "card.loads": input(({ loads, count }: Texts<"loads" | "count">) => ({
    found: loads,
    expected: count === "1" ? "1, the only load" : `loads from 1 to ${count}, such as 1,2 or 1-2`,
    advice: "name a load that the batch has",
  })),
  "stock.no-alkali": input(() => ({
    found: "a spec without alkaline products",
    expected: "alkaline salts to make a stock of",
    advice: "name a product instead",
  })),

  "noodle.not-handed-over": input(({ files }: Lists<"files">) => ({
    found: `${files.join(", ")}, which the spec includes and ${files.length === 1 ? "was" : "were"} not handed over`,
    expected: "what each of these files holds, as a kitchen beside the spec",
    advice: "hand it over first: what is not known below may be in there",
  })),
  "noodle.not-included": remark(
    ({ files }: Lists<"files">) =>
      `the spec includes ${files.join(", ")}, which ${files.length === 1 ? "was" : "were"} not read: nothing from there counts here`,
  ),
  "noodle.named-twice": remark(
    ({ name, first, other, differs }: Texts<"name" | "first" | "other"> & Lists<"differs">) =>
      `${first} and ${other} both describe "${name}", and differ in ${differs.join(", ")}: that of ${other} counts`,
  ),
  "spec.unusual": remark(
    ({ label, value, most, unit, source }: Texts<"label" | "value" | "most" | "unit" | "source">, tell) => {
      const [found, limit] = [value, most].map((one) => tell(measure(shortText(one, 3), unit)));
      return `${label}: ${found} is more than kitchens have, which is ${limit} at most (${source}): check the number and its unit`;
    },
  ),
  "card.no-answer": remark(
    ({ lacks, problem }: { readonly lacks: "water" | "sheet" | "day"; readonly problem: Inner }, tell) =>
      `${cardParts[lacks]}: ${tell(problem)}`,
  ),
  "card.metric": remark(
    "the scales show g, so all of the card is metric; name scales in lb or oz for a card in US units",
  ),
  "compare.no-batch": remark(({ problem }: { readonly problem?: Inner }, tell) =>
    problem === undefined ? "no weights" : `no weights: ${tell(problem)}`,
  ),
  "words.unexplained": remark(
    ({ name, nearest }: Texts<"name"> & { readonly nearest: boolean }) =>
      `"${name}" is not explained here${nearest ? "; shown are the words spelt most like it" : ""}`,
  ),
};
