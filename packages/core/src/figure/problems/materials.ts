import { measure } from "../in-system.ts";
import { type Counts, input, type Lists, noAnswer, remark, type Sentences, type Texts } from "./entry.ts";
import { didYouMean, ofOne } from "./words.ts";

/** A name that stands for nothing; no guess is made where it is like that of an alkali. */
type Named = Texts<"name"> & Lists<"nearest"> & { readonly alkali: boolean } & Partial<Lists<"alike">>;

/** What to do about a name that stands for nothing: the nearest ones, or where to look it up. */
export function nameAdvice({ alkali, nearest, alike = [] }: Omit<Named, "name">, otherwise: string): string {
  if (alkali)
    return `${alike.length === 0 ? "" : `${didYouMean(alike, "")} `}no guess is made for an alkali: look it up in the catalogue, or write the composition on its label`;
  return nearest.length === 0 ? otherwise : `${didYouMean(nearest, "")} Otherwise ${otherwise}`;
}

/** Lines that may stand in the place of a product, each of them read; `others` are of other products. */
type Shown = Partial<Lists<"lines">> & { readonly others?: boolean };

const aProduct = "a name, a formula, what is in it in %, or salts at a strength";

function productUnknown({ name, nearest, alkali, alike, ...shown }: Named & Shown): Sentences {
  const advice = nameAdvice(
    { nearest, alkali, ...(alike && { alike }) },
    "look it up in the catalogue, or write what is in it",
  );
  return beside(shown, { found: `"${name}"`, expected: aProduct, advice });
}

/** Sentences with the lines beside them. */
function beside({ lines, others }: Shown, sentences: Sentences): Sentences {
  if (lines === undefined) return sentences;
  if (others !== true) return { ...sentences, lines };
  return {
    ...sentences,
    advice: `${sentences.advice}. The lines show the form only, with figures of other products`,
    lines,
  };
}

type Strength = Texts<"strength" | "strengthForms">;

function strengthText({ strength, strengthForms }: Strength): Sentences {
  return { found: `"${strength}"`, expected: `a strength: ${strengthForms}`, advice: "write it in one of these ways" };
}

const unclear = {
  "no salt": (name: string) => ({
    found: `"${name}", a strength without its salts`,
    expected: "the salts that are dissolved, and the strength",
    advice: "the label must tell the salts and what part each is; then write a line such as these",
  }),
  "no parts": (name: string) => ({
    found: `"${name}", where it is not plain how much there is of each`,
    expected: "a part or a share for each of them",
    advice: "the label must tell it; then write a line such as these",
  }),
  "not whole": (name: string, total: string) => ({
    found: `"${name}", whose parts add up to ${total} %`,
    expected: "parts of 100 % in all",
    advice:
      "the label must tell what the rest is, and whether it counts by weight or by volume; then write a line such as these",
  }),
  crystals: (name: string) => ({
    found: `"${name}", which may count crystals with their water, or the salt in them without it`,
    expected: "salts without crystal water, or shares in % with the water told",
    advice:
      "where there are two lines, the first is for numbers that count salts without their crystal water, the second for crystals as weighed",
  }),
  comma: (name: string) => ({
    found: `"${name}", whose comma may stand before decimals or between thousands`,
    expected: "a point before decimals, and nothing between thousands",
    advice: "write the number that is meant in one of these ways",
  }),
};

/** A name that stands for several things: what they are, what tells which, and what a dose of either is worth. */
type Several = Texts<"name" | "mayBe" | "ask"> &
  Partial<Texts<"range">> &
  Shown & { readonly kind: "alkali" | "flour" | "no alkali" };

function severalText({ name, kind, mayBe, ask, range, ...shown }: Several): Sentences {
  const told = `the label or the supplier must tell ${ask}; then`;
  return beside(shown, {
    found: `"${name}", which ${kind === "no alkali" ? "is no noodle alkali: it is" : "may be"} ${mayBe}`,
    expected: `a name that stands for one thing${range === undefined ? "" : `; ${range}`}`,
    advice: {
      alkali: `${told} name that, or write the composition`,
      flour: `${told} write \`label:\`, or \`moisture:\` and \`protein:\`, under \`figures:\`, or take a name of the catalogue`,
      "no alkali": `take ${ask}`,
    }[kind],
  });
}

/** A flour that was dried or toasted; % of its weight, and % of moisture after. */
export type Toasted = Texts<"lost" | "moisture"> & {
  readonly glutenForming: boolean;
};

export const materials = {
  "materials.named-twice": input(({ one, other }: Texts<"one" | "other">) => ({
    found: `"${other}" beside "${one}", which name one material`,
    expected: "each material once, whatever its capitals, blanks and other names",
    advice: "leave one of them out, or give what is another thing a name of its own",
  })),
  "materials.composition": input(({ total, rests }: Texts<"total"> & Counts<"rests">) => ({
    found: `parts that add up to ${total} %${rests > 1 ? ", and more than one rest" : ""}`,
    expected: "parts that add up to 100 % of the product, or one of them written as rest",
    advice: "write `water: rest` for a solution, or `inert: rest` for what takes no part",
  })),
  "materials.composition-part": input(({ key, parts }: Texts<"key"> & Lists<"parts">) => ({
    found: `"${key}"`,
    expected: `the formula of a salt such as Na2CO3 or K2CO3, one of ${parts.length} known here, or water or inert`,
    advice:
      "write the salts that its label names, each by its formula with its share; count what takes no part as inert",
  })),

  "label.unreadable": input(({ printed }: Texts<"printed">) => ({
    found: `"${printed}"`,
    expected: 'a number as printed, such as "4" or "<1"',
    advice: "copy it from the label",
  })),
  "label.not-by-the-book": input(({ printed, book, possible }: Texts<"printed" | "book"> & Lists<"possible">) => ({
    found: `"${printed}" for protein under the rule book ${book}`,
    expected: `a value that the book's rounding can give, such as ${possible.join(" or ")}`,
    advice: "read the label again, or choose the rule book it was made by",
  })),
  "materials.protein-twice": input(() => ({
    found: "a protein and a label",
    expected: "the protein of a certificate, or that of a label",
    advice: "keep the certificate's",
  })),
  "label.disagree": noAnswer(({ low, high }: Texts<"low" | "high">) => ({
    found: `at least ${low} % by one label and at most ${high} % by another`,
    expected: "labels of one and the same flour",
    advice: "check that they are of one flour; allow for rounded servings or leave the nitrogen factors open",
  })),
  "label.serving": input(() => ({
    found: "no serving",
    expected: "a serving above zero, in grams",
    advice: "copy the grams of the serving from the label",
  })),
  "materials.unknown": input(({ name, ...like }: Named) => ({
    found: `"${name}"`,
    expected: "a material of the catalogue, or one of the kitchen's own with its figures",
    advice: nameAdvice(like, "look it up in the catalogue, or give its figures under `figures:`"),
  })),
  "materials.composition-missing": input(({ name }: Texts<"name">) => ({
    found: `"${name}" without a composition`,
    expected: "what it is made of, such as { Na2CO3: 90 %, K2CO3: 10 % }",
    advice: "copy the composition from its label or certificate",
  })),
  "toasted.gained": input(({ before, after }: Texts<"before" | "after">, _, tell) => ({
    found: `${tell(measure(after, "g"))} after drying, from ${tell(measure(before, "g"))}`,
    expected: "less after drying than before",
    advice: "swap the two, or weigh again",
  })),
  "toasted.beyond-water": input(({ moisture, dry }: Texts<"moisture" | "dry">, _, tell) => ({
    found: "more weight lost than the flour had water",
    expected: `at least ${tell(measure(dry, "g"))} after, the dry matter of a flour of ${moisture} % moisture`,
    advice: "correct the masses or the moisture before, and count what stayed in the pan",
  })),
  "materials.moisture-missing": input(({ name }: Texts<"name">) => ({
    found: `"${name}" without its moisture`,
    expected: "moisture in % as weighed, such as 13.8 %",
    advice:
      "copy it from the certificate; for a flour of unknown moisture write 14 %, the basis flours are quoted on, and take the water as a first try",
  })),
  "product.no-alkali": input(({ name, ...shown }: Texts<"name"> & Shown) =>
    beside(shown, { found: `"${name}", which is no alkaline product`, expected: aProduct, advice: "name its salts" }),
  ),
  "product.strength": input((facts: Strength & Shown) => beside(facts, strengthText(facts))),
  "product.unclear": input(
    ({
      name,
      why,
      total = "",
      ...shown
    }: Texts<"name"> & Partial<Texts<"total">> & Shown & { readonly why: keyof typeof unclear }) =>
      beside(shown, unclear[why](name, total)),
  ),
  "product.unknown": input(productUnknown),
  "materials.several": input(severalText),
  "search.several": noAnswer(severalText),
  "materials.composition-twice": input(({ said }: Lists<"said">) => ({
    found: said.join(" and "),
    expected: "one way to say what the product is made of",
    advice: "keep the one you mean",
  })),
  "materials.strength": input(strengthText),
  "materials.crystals": input(({ strength }: Texts<"strength">) => ({
    found: `salts with crystal water, of which the parts and "${strength}" may count the crystals or the salt in them`,
    expected: "what both count",
    advice: "write beside the strength which: salts without their crystal water, or crystals as weighed",
    lines: ["ratioBy: anhydrous", "ratioBy: as weighed"],
  })),
  "materials.alkalinity": input(({ alkalinity, forms }: Texts<"alkalinity" | "forms">) => ({
    found: `"${alkalinity}"`,
    expected: forms,
    advice: "copy it from the certificate",
  })),
  "materials.assay": input((facts: Texts<"of"> | Texts<"drying">) =>
    "of" in facts
      ? { found: facts.of, expected: "the formula of a salt", advice: "name the salt" }
      : {
          found: `a loss on drying of ${facts.drying}, which does not dry to one salt`,
          expected: "its content alone",
          advice: "leave out the loss on drying",
        },
  ),

  "materials.salts": input(({ chloride }: { readonly chloride: boolean }) =>
    chloride
      ? {
          found: "a chloride among the salts of a ratio",
          expected: "alkaline salts alone, or `ratioBy: as weighed`",
          advice: "give chlorides as weighed, or use `composition`",
        }
      : {
          found: "no salt",
          expected: "salts with their parts, such as { K2CO3: 6, Na2CO3: 4 }",
          advice: "name the salts of the product",
        },
  ),

  "materials.beyond-whole": input(({ name, parts, total }: Texts<"name" | "total"> & Lists<"parts">) => ({
    found: `"${name}" of ${parts.join(" + ")} = ${total} %`,
    expected: "parts of at most 100 % in all, as is",
    advice: "check the figures against the certificate, and the moisture they are quoted on",
  })),
  "basis.unreadable": input(({ written }: Texts<"written">) => ({
    found: written,
    expected: '"as is", "dry" or a moisture such as "14 % mb"',
    advice: "copy the basis from the certificate of the flour",
  })),
  "price.unreadable": input(({ written, of }: Texts<"written"> & { readonly of: "all" | "a pack" }) => ({
    found: written,
    ...(of === "all"
      ? { expected: 'an amount and a three-letter currency, such as "12 EUR"', advice: "write what all of it may cost" }
      : {
          expected: 'an amount, a three-letter currency and a mass, such as "0.92 EUR/kg" or "23 EUR per 25 kg"',
          advice: /\p{Sc}/u.test(written)
            ? "write the three letters of the currency after the amount, such as USD or CAD for $, and the mass of the pack"
            : "write the price of one pack with its mass",
        }),
  })),
  "cutter.unreadable": input(({ written }: Texts<"written">) => ({
    found: written,
    expected: 'a cutter number from 1 to 60, such as 20, or a strand width, such as "1.5 mm"',
    advice: "a plain number is the cutter number; write the unit to give the width of a strand",
  })),
  "machine.gaps-stated": input(({ stated }: Lists<"stated">) => ({
    found: stated.length === 0 ? "no gap" : stated.join(" and "),
    expected: "one of gap, dial, line or sticks",
    advice: stated.length === 0 ? "say how the gap is set" : `keep one of ${stated.join(" and ")}`,
  })),
  "machine.gaps-reversed": input(({ least, greatest }: Texts<"least" | "greatest">, _, tell) => ({
    found: `${tell(measure(least, "mm"))} to ${tell(measure(greatest, "mm"))}`,
    expected: "the least gap below the greatest",
    advice: "swap the two gaps",
  })),
  "machine.speeds-count": input(({ speeds, stands }: Counts<"speeds" | "stands">) => ({
    found: `${speeds} ${speeds === 1 ? "speed" : "speeds"}`,
    expected: `a speed for each of the ${stands} stands`,
    advice: "list the speed of every stand, first to last, or that of the last one alone",
  })),
  "machine.settings-count": input(({ settings, most }: Counts<"settings" | "most">) => ({
    found: settings === 0 ? "no settings" : `${settings} settings`,
    expected: `1 to ${most} settings with the gap of each`,
    advice: "measure a sheet at each setting and list the thicknesses",
  })),
  "materials.modulus": input(({ written, moduli }: Texts<"written"> & Lists<"moduli">) => ({
    found: written,
    expected: `the modulus of the hydrometer: ${moduli.join(", ")}`,
    advice: "read it off the hydrometer; 145 is the usual one in the United States, 144.3 in Japan",
  })),
  "alkali.none": noAnswer(({ words }: Texts<"words">) => ({
    found: `no salt for "${words}"`,
    expected: "words of a name or formula, such as carbonate or K2CO3",
    advice: "search with fewer words, or with none to see all",
  })),
  "materials.none": noAnswer(
    ({
      words,
      kind,
      nearest,
      alkali,
    }: Texts<"words"> & Partial<Texts<"kind">> & Lists<"nearest"> & { readonly alkali: boolean }) => ({
      found: `nothing in the catalogue for "${words}"${kind === undefined ? "" : ` of the kind ${kind}`}`,
      expected: "words of a name, such as rye or bread flour",
      advice: nameAdvice({ alkali, nearest }, "give the material its own figures in the spec"),
    }),
  ),

  "materials.note": ofOne,
  "materials.moisture-assumed": remark(
    "its moisture is not stated; taken as 13.5 %, give or take 1.5 % (common practice, no source): ask the mill, or dry a sample",
  ),
  "materials.unusual": remark(
    ({
      name,
      figure,
      value,
      of,
      low,
      high,
      source,
    }: Texts<"name" | "figure" | "value" | "of" | "low" | "high" | "source">) =>
      `${name} with ${value} % of ${figure}: ${of} usually has ${low} to ${high} % (${source}); check the number and what it is a share of`,
  ),
  "materials.toasted": remark(({ lost, moisture, glutenForming }: Toasted) => {
    const gluten = glutenForming
      ? "its protein is counted as forming gluten, as the spec says"
      : "whether its protein still forms gluten is not known, so that it is not counted as forming any unless the spec says so";
    return `dried or toasted, it lost ${lost} % of its weight and has ${moisture} % of moisture; ${gluten}. Its price is that of the flour before; a trial of the water tells how much water it takes`;
  }),
  "caution.material": remark(({ says }: Texts<"says">) => says),
  "label.factor-unknown": remark(
    "the label does not say its nitrogen factor: the range covers every factor from 5.7 to 6.25",
  ),
  "label.rounding-only": remark(
    "the range is that of rounding alone; the law tolerates more between label and content, and flour varies from lot to lot: a certificate knows better",
  ),
  "allergens.supplier": remark(
    "traces from the mill, the store and the kitchen are not in this list: ask each supplier for the certificate, and go by the label of the pack at hand",
  ),
  "allergens.list-date": remark(
    ({ title, asOf, source }: Texts<"title" | "asOf" | "source">) =>
      `the list: ${title}, ${asOf} (${source}); lists change, and the law of the place decides`,
  ),
  "allergens.unknown": remark(
    ({ names }: Lists<"names">) =>
      `nothing is known about the allergens of: ${names.join(", ")}; do not take them to be free of any`,
  ),
};
