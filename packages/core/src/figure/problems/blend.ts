import { type Counts, input, type Lists, noAnswer, type Texts } from "./entry.ts";

export const blend = {
  // HAND blend/blend-checks.ts:16 "blend.step" found: word text
  // HAND blend/blend-checks.ts:25 "blend.flour-mass" hand code
  // HAND blend/blend-checks.ts:36 "blend.flour-mass" hand code
  "blend.flours": input(({ flours }: Counts<"flours">) => ({
    found: `${flours} flours`,
    expected: "1 to 40 flours",
    advice: "list the flours that may go in",
  })),
  // HAND blend/blend-checks.ts:59 `blend.${key}` code not literal | found: identifier seen | expected: identifier expected | advice: identifier advice
  "blend.unknown-flour": input(({ name, names }: Texts<"name"> & Lists<"names">) => ({
    found: `"${name}"`,
    expected: "one of the flours listed",
    advice: `name one of: ${names.join(", ")}`,
  })),
  "blend.shares-total": input(({ total }: Texts<"total">) => ({
    found: `shares of ${total} % together`,
    expected: "100 %",
    advice: "give shares that add up to 100",
  })),
  // HAND blend/blend-conflict.ts:24 "blend.out-of-reach" advice: CallExpression adviceOf(moves, flourNeeded, finerStep, nearest !== undefined)
  "blend.alternatives": input(({ count }: Counts<"count">) => ({
    found: String(count),
    expected: "a whole number from 1 to 20",
    advice: "ask for fewer",
  })),
  "blend.unfinished": noAnswer(() => ({
    found: "no blend found before the search was given up; that there is none is not proven",
    expected: "an answer in reasonable time",
    advice: "take a coarser step, a wider range or fewer flours",
  })),
  "shelf.protein-missing": input(({ name }: Texts<"name">) => ({
    found: `"${name}" without its protein`,
    expected: "the protein of every flour",
    advice: "give it under `figures:`, from its certificate or its label",
  })),
  "shelf.currencies": input(({ currencies }: Lists<"currencies">) => ({
    found: currencies.join(" and "),
    expected: "prices in one currency",
    advice: "write all prices in one of them",
  })),
  "replace.active": input(() => ({
    found: "a product without active mass",
    expected: "an active share above zero",
    advice: "give what the product holds",
  })),
  "replace.mass": input(({ mass }: Texts<"mass">) => ({
    found: `${mass} g`,
    expected: "a mass of zero or more",
    advice: "correct the mass",
  })),
  // HAND blend/spec-product.ts:99 "replace.ingredient" advice: ConditionalExpression names.length === 0 ? "the spec has no ingredients beside flour, water, alkali and salt" : nearest === undefined ? `name one of: ${names.join(", ")}` : `did you mean "${near
  "replace.kind": input(({ by, kind, wanted, name }: Texts<"by" | "kind" | "wanted" | "name">) => ({
    found: `"${by}" of the kind ${kind}`,
    expected: `something of the kind ${wanted}, as ${name} is`,
    advice: `see \`noodlewright materials --kind ${wanted}\``,
  })),
  "replace.no-water": noAnswer(({ by, short }: Texts<"by" | "short">) => ({
    found: `${by} brings more water than the dough takes, by ${short} % of flour`,
    expected: "tap water of zero or more",
    advice: "replace less of it",
  })),
  "wanted.nothing": input(() => ({
    found: "nothing that the blend has to reach",
    expected: "a target or a preference",
    advice:
      "write `protein: 11.5 %` under `wanted:`, name a `style:` with published ranges, or prefer the cheapest blend, the fewest flours or most of one flour",
  })),
  "hold.unknown": input(({ unknown, holdable }: Texts<"unknown"> & Lists<"holdable">) => ({
    found: `"${unknown}"`,
    expected: `what to hold: ${holdable.join(", ")}, or one of them with "or more" or "or less"`,
    advice: 'write it like "protein, ash or less"',
  })),
  "lot.none": input(() => ({
    found: "no new lot",
    expected: "the new lot and its figures",
    advice: "write `lot:` with `of:` and the `figures:` of its certificate, or use --of, --protein and --moisture",
  })),
  // HAND blend/spec-substitute.ts:146 code code not literal | advice: ConditionalExpression nearest === undefined ? `name one of: ${names.join(", ")}` : `did you mean "${nearest}"?`
  "square.same-protein": input(() => ({
    found: "two flours that both are on target",
    expected: "two flours that differ",
    advice: "use either of them alone",
  })),
  "square.out-of-reach": noAnswer(({ side, target }: Texts<"side" | "target">) => ({
    found: `both flours lie ${side} ${target} %`,
    expected: "one flour on each side of the target",
    advice: `take a third flour on the other side, or another target`,
  })),
  "style.unknown": input(({ style, styles }: Texts<"style"> & Lists<"styles">) => ({
    found: `"${style}"`,
    expected: "a style with published ranges",
    advice: `use one of: ${styles.join(", ")}`,
  })),
  "substitute.missing": input(({ missing }: Texts<"missing">) => ({
    found: `"${missing}"`,
    expected: "a flour of the blend",
    advice: "name the flour that is missing",
  })),
  "substitute.nothing": noAnswer(() => ({
    found: "no other flour",
    expected: "a flour to put in its place",
    advice: "name the flours at hand under `shelf:`, or with --shelf",
  })),
  "substitute.lot": input(({ name }: Texts<"name">) => ({
    found: `"${name}"`,
    expected: "a flour of the blend",
    advice: "name the flour the lot follows",
  })),
  "substitute.flour": input(({ name }: Texts<"name">) => ({
    found: `"${name}" without figures`,
    expected: "figures for every flour of the blend",
    advice: "list it among the flours",
  })),
};
