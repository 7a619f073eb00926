import { type Counts, input, type Lists, remark, type Texts } from "./entry.ts";

export const render = {
  "table.unknown": input(({ name, names }: Texts<"name"> & Lists<"names">) =>
    names.length === 0
      ? { found: "no table in this answer", expected: "another form", advice: "take another form for its figures" }
      : { found: `no table "${name}"`, expected: `one of: ${names.join(", ")}`, advice: "name one of these" },
  ),
  "picture.unknown": input(({ name, names }: Partial<Texts<"name">> & Lists<"names">) => ({
    found: name === undefined ? "an answer without pictures" : `no picture "${name}"`,
    expected: names.length === 0 ? "an answer with pictures" : `one of: ${names.join(", ")}`,
    advice: names.length === 0 ? "ask for another form" : "name one of these",
  })),

  "card.long": remark(
    ({ pages, loads }: Counts<"pages"> & { readonly loads: "few" | "many" }) =>
      `the card may take up to ${pages} pages${loads === "many" ? "; with fewer loads it is shorter" : ""}`,
  ),
};
