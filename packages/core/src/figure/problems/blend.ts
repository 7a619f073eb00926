import { type Counts, input, type Lists, type Measures, noAnswer, remark, type Texts } from "./entry.ts";
import { didYouMean } from "./words.ts";

function conflictText([only, ...others]: readonly string[]): string {
  if (only === undefined) return "no blend comes out in these steps and whole bags";
  if (others.length === 0) return `no blend of these flours comes to ${only}`;
  return `no blend meets all of: ${[only, ...others].join("; ")}`;
}

const notOfTheBlend = ({ name, names, nearest }: Texts<"name"> & Lists<"names" | "nearest">) => ({
  found: `"${name}"`,
  expected: "one of the flours of the blend",
  advice: didYouMean(nearest, `name one of: ${names.join(", ")}`),
});

/** A range published for a style. */
export type StyleFacts = Texts<"style" | "quantity" | "range" | "unit" | "source">;

/** How many blends are shown of how many that were asked for, and whether the search was given up. */
export type Fewer = Counts<"shown" | "asked"> & {
  readonly given: boolean;
};

/** A protein value that no steps reach, and the flours that come in whole bags: whether these alone keep it from being reached. */
export type Coarse = Texts<"step" | "wanted" | "unit"> &
  Lists<"bags"> & { readonly proven: boolean; readonly alone: boolean };

/** How far the best blend found may be from the best there is. */
export type HowFar =
  | { readonly by: "later" | "not known" }
  | { readonly by: "flours"; readonly flours: string }
  | { readonly by: keyof typeof mayBe; readonly percent: string };

const mayBe = {
  moved: "may move less",
  weighted: "may be better",
  "off-zero": "may be nearer",
  missed: "may miss less",
};

export const blend = {
  "blend.step": input(({ step }: Texts<"step">) => ({
    found: `a step of ${step} %`,
    expected: "a step from 0.1 to 5 % that divides 100",
    advice: "use 0.1, 0.2, 0.5, 1, 2 or 5",
  })),
  "blend.flour-mass": input(({ flourMass }: Partial<Texts<"flourMass">>) =>
    flourMass === undefined
      ? {
          found: "no flour mass",
          expected: "the flour of the batch, which a store, whole bags or the price of a batch are held against",
          advice: "say how much flour the batch takes",
        }
      : { found: `${flourMass} g`, expected: "a mass above zero", advice: "correct the flour mass" },
  ),

  "blend.flours": input(({ flours }: Counts<"flours">) => ({
    found: `${flours} flours`,
    expected: "1 to 40 flours",
    advice: "list the flours that may go in",
  })),
  "blend.flour-twice": input(({ name, listed }: Texts<"name"> & { readonly listed: boolean }) => ({
    found: `"${name}" a second time`,
    expected: "every flour once",
    advice: `give one of them a name of your own, such as \`name: ${name} 2\`, and beside its figures ${listed ? `write \`like: ${name}\`` : "its `kind` and its `allergens`"}`,
  })),
  "blend.percentage": input(({ value }: Texts<"value">) => ({
    found: `${value} %`,
    expected: "a percentage of the flour",
    advice: "correct the figure of this flour",
  })),
  "blend.fixed": input(({ fixed, step }: Texts<"fixed" | "step">) => ({
    found: `${fixed} %`,
    expected: `a whole number of steps of ${step} %`,
    advice: "take a finer step or another share",
  })),
  "blend.ratio-to": input(({ name }: Texts<"name">) => ({
    found: `a ratio to "${name}"`,
    expected: "the name of another flour listed",
    advice: "name one of the flours listed",
  })),
  "blend.ratio-times": input(({ times }: Texts<"times">) => ({
    found: `${times} times`,
    expected: "a ratio above zero",
    advice: "leave the flour out with a fixed share of 0",
  })),
  "blend.figure-missing": input(({ name, figure }: Texts<"name" | "figure">) => ({
    found: `no ${figure} of ${name}`,
    expected: `its ${figure}, since the question asks for it`,
    advice: "state it beside the flour",
  })),
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
  "blend.out-of-reach": noAnswer(
    ({
      conflicts,
      ways,
      nearest,
    }: { readonly conflicts: readonly (readonly string[])[]; readonly nearest: boolean } & Lists<"ways">) => ({
      found: conflicts.map(conflictText).join(". And "),
      expected: "limits that can be met together",
      advice:
        ways.length > 0
          ? ways.join("; or ")
          : `move several limits together${nearest ? ": the nearest blend shows how far" : ""}`,
    }),
  ),
  "blend.alternatives": input(({ count }: Counts<"count">) => ({
    found: String(count),
    expected: "a whole number from 1 to 20",
    advice: "ask for a few, such as 3",
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
    found: "a product without any active substance",
    expected: "a share of active substance above zero",
    advice: "state how much of it the product holds",
  })),
  "replace.mass": input(({ mass }: Texts<"mass">) => ({
    found: `${mass} g`,
    expected: "a mass of zero or more",
    advice: "correct the mass",
  })),
  "replace.ingredient": input(({ name, names, nearest }: Texts<"name"> & Lists<"names" | "nearest">) => ({
    found: `"${name}"`,
    expected: "an ingredient of the spec",
    advice:
      names.length === 0
        ? "the spec has no ingredients beside flour, water, alkali and salt"
        : didYouMean(nearest, `name one of: ${names.join(", ")}`),
  })),
  "replace.kind": input(({ by, kind, wanted, name }: Texts<"by" | "kind" | "wanted" | "name">) => ({
    found: `"${by}", which is of the kind ${kind}`,
    expected: `something of the kind ${wanted}, like ${name}`,
    advice: `take something of the kind ${wanted} from the catalogue`,
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
  "lot.none": input<{ readonly meant: { readonly of: string; readonly figures: Readonly<Record<string, string>> } }>(
    () => ({
      found: "no new lot",
      expected: "the new lot and its figures",
      advice: "write `lot:` with `of:` and the `figures:` of its certificate",
    }),
  ),

  "square.same-protein": input(() => ({
    found: "two flours that are both on target",
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
  "substitute.missing": input(notOfTheBlend),
  "substitute.nothing": noAnswer(() => ({
    found: "no other flour",
    expected: "a flour to put in its place",
    advice: "name the flours at hand under `shelf:`",
  })),
  "substitute.lot": input(notOfTheBlend),
  "substitute.flour": input(({ name }: Texts<"name">) => ({
    found: `"${name}" without figures`,
    expected: "figures for every flour of the blend",
    advice: "list it among the flours",
  })),

  "blend.whole-steps": remark(
    "shares come in whole steps, so every figure named here is the best that whole steps reach",
  ),
  "blend.fewer-alternatives": remark(({ shown, asked, given }: Fewer) =>
    given
      ? `${shown} of ${asked} blends ${shown === 1 ? "is" : "are"} shown: the search was given up before it came to the others`
      : shown === 1
        ? "no other blend differs from this one in a way that matters"
        : `only ${shown} blends differ from one another in a way that matters`,
  ),
  "blend.not-proven": remark((open: HowFar) => {
    const found = "not proven: this is the best blend found before the search was given up";
    switch (open.by) {
      case "later":
        return `${found}; one as good in what counts first may come before it`;
      case "not known":
        return `${found}; how far it may be from the best there is, is not known`;
      case "flours":
        return `${found}; there may be one of ${open.flours} flours`;
      case "moved":
      case "weighted":
      case "off-zero":
      case "missed":
        return `${found}; the best there is ${mayBe[open.by]}, by at most ${open.percent === "0.0" ? "0.1" : open.percent} % of what this one has`;
    }
  }),
  "blend.step-coarse": remark(({ step, wanted, unit, proven, bags, alone }: Coarse) => {
    const [inBags, byWeight] = [`whole bags of ${bags.join(" and ")}`, `${bags.join(" and ")} by weight`];
    const [what, way] = alone
      ? [inBags, `${byWeight} would reach it`]
      : [
          `steps of ${step} %${bags.length > 0 ? ` and ${inBags}` : ""}`,
          `a finer step${bags.length > 0 ? ` with ${byWeight}` : ""} comes closer`,
        ];
    return `${what} do not reach ${wanted} ${unit} protein; the nearest ${proven ? "they reach" : "found before the search was given up"} is given, ${way}`;
  }),
  "blend.bags": remark(
    ({ name, bags, bag }: Texts<"name" | "bags"> & Measures<"bag">, tell) =>
      `${name}: ${bags} whole ${bags === "1" ? "bag" : "bags"} of ${tell(bag)}`,
  ),
  "blend.store-short": remark(
    ({ name, most, share }: Texts<"name" | "most" | "share">) =>
      `${name}: the store holds ${most} % of the flour of the batch, less than the ${share} % that it makes up now`,
  ),
  "blend.store-open": remark("the spec names no batch, so that what is in the store, and whole bags, set no limit"),
  "blend.style": remark(
    ({ style, quantity, range, unit, source }: StyleFacts) =>
      `asked of the blend, as published for ${style}: ${quantity} ${range} ${unit} (${source})`,
  ),
  "blend.water-apart": remark(
    ({ taken, added }: Texts<"taken" | "added">) =>
      `by the kitchen's own figures the flours so far take ${taken}, and the spec adds ${added}: one of the two is off, and the new water keeps the difference; a trial of the water settles it`,
  ),
  "blend.water-not-known": remark(
    ({ names, source }: Lists<"names"> & Texts<"source">) =>
      `no source says how much water ${names.join(" and ")} ${names.length === 1 ? "takes" : "take"} in noodle dough, and more protein is no reason for more of it (${source}); the added water counts moisture and dry gluten alone: find it out with a trial of the water, and write it down with the flour`,
  ),
  "blend.water-of-new": remark(
    ({ names, added }: Lists<"names"> & Texts<"added">) =>
      `the added water is what the flours now take by the kitchen's own figures: how much ${names.join(" and ")} took so far is not known, so that nothing is carried over of the ${added} that the spec adds`,
  ),
  "blend.absorption-unused": remark(
    ({ names, open, before }: Lists<"names" | "open" | "before">) =>
      `the absorption of ${names.join(" and ")} is not used for the water: that of ${open.join(" and ")} is not known${before.length === 0 ? "" : `, nor how much ${before.join(" and ")} took so far`}`,
  ),
  "style.outside": remark(
    ({ style, quantity, seen, range, unit, source }: StyleFacts & Texts<"seen">) =>
      `${quantity} of ${seen} ${unit.startsWith("%") ? "%" : unit} is outside what is published for ${style}: ${range} ${unit} (${source})`,
  ),
  "substitute.only-flour": remark(
    ({ name, moved }: Texts<"name"> & Lists<"moved">) =>
      `${name} is the only flour, so that nothing makes up for what its new lot changes: ${moved.length === 0 ? "no figure moves by much" : moved.join("; ")}; to keep it, say which other flours may go in`,
  ),
  "substitute.stated-kept": remark(
    ({ name, stated }: Texts<"name"> & Lists<"stated">) =>
      `the certificate of the new lot of ${name} does not say how its figures are stated: they are read as those of the old lot, ${stated.join(", ")}`,
  ),
  "substitute.absorption-kept": remark(
    ({ name }: Texts<"name">) =>
      `the new lot of ${name} states no absorption: that of the old lot counts, brought to the new moisture; a trial of the water tells whether it holds`,
  ),
  "substitute.moved": remark(
    ({ missing }: Texts<"missing">) =>
      `nothing takes the place of ${missing} while the other flours keep their shares, so that these move too`,
  ),

  "blend.likely": remark(
    "likely and perhaps: within what labels and certificates of the flours leave open; a blend that meets it over all of that may be asked for",
  ),
};
