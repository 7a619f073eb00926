import { shownValue } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { contentOf } from "../materials/nutrients.ts";
import { type RuleBookName, ruleBooks } from "../materials/rounding-rules.ts";
import { dec } from "../number/decimal.ts";
import type { Contents } from "./composition.ts";
import type { NutrientAmount } from "./nutrition-amounts.ts";
import { type KeptInBoiling, solidsLostInBoiling } from "./nutrition-cooked.ts";

/** What the notes are drawn from. */
interface Found {
  readonly amounts: readonly NutrientAmount[];
  readonly kept: KeptInBoiling;
  readonly rules: RuleBookName;
  readonly bowl?: object;
  readonly allergens: { readonly notes: readonly Note[] };
}

/** What has to be known beside the figures of nutrition. */
export function nutritionNotes(formula: Formula, contents: readonly Contents[], nutrition: Found): readonly Note[] {
  return [
    ...missingNotes(nutrition),
    ...assumedNotes(contents),
    ...leftOutNotes(formula),
    ...boilingNotes(nutrition),
    ...labelNotes(nutrition),
    ...nutrition.allergens.notes,
  ];
}

function note(code: string, text: string): Note {
  return { code: `nutrition.${code}`, path: [], text };
}

function missingNotes({ amounts, rules }: Pick<Found, "amounts" | "rules">): readonly Note[] {
  const simple = amounts.filter(({ name }) => contentOf(name, rules) !== undefined);
  const names = [...new Set(simple.flatMap(({ missing }) => missing))];
  return names.map((name) => {
    const wanting = simple.filter(({ missing }) => missing.includes(name)).map(({ label }) => label);
    const text = `${name} does not state: ${wanting.join(", ")}; where that matters, a range that no label can print runs from none of it to all that its other figures leave room for. Copy it from the certificate or the label into its figures`;
    return note("not-stated", text);
  });
}

/** What was taken as usual; the nitrogen factors of flours are in the notes of the blend. */
function assumedNotes(contents: readonly Contents[]): readonly Note[] {
  const assumed = contents
    .filter(({ factorAssumed, line }) => factorAssumed && line.role !== "flour")
    .map(({ line }) => line.name);
  const inert = contents.filter(
    ({ line: { material } }) => material.kind === "alkali" && dec(material.composition?.inert ?? 0).gt(1),
  );
  return [
    ...(assumed.length === 0
      ? []
      : [
          note(
            "factor",
            `the nitrogen factor of ${assumed.join(", ")} is not stated; the usual one of its kind is taken`,
          ),
        ]),
    ...inert.map(({ line }) =>
      note("inert", `${line.name}: its inert part is taken to hold no nutrients; ask the supplier whether it is flour`),
    ),
  ];
}

function leftOutNotes(formula: Formula): readonly Note[] {
  return [
    ...(formula.dusting
      ? [note("dusting", `${formula.dusting.name} for dusting is left out: weigh how much of it stays on the strands`)]
      : []),
    note("tap-water", "the minerals of tap water are left out: the water works can tell its sodium"),
  ];
}

function boilingNotes({ kept }: Pick<Found, "kept">): readonly Note[] {
  const range = ({ range: known }: KeptInBoiling["sodium"]): string =>
    known === undefined ? "" : ` (${dec(known.low).toFixed(0)} to ${dec(known.high).toFixed(0)})`;
  const { least, most, source } = solidsLostInBoiling;
  return [
    note(
      "boiling-salts",
      `as eaten: boiling is taken to leave ${shownValue(kept.sodium)} %${range(kept.sodium)} of the sodium and ${shownValue(kept.potassium)} %${range(kept.potassium)} of the potassium, from raw and boiled noodles of the Japanese tables; the broth is not in it`,
    ),
    note(
      "boiling-solids",
      `as eaten: the ${least} to ${most} % of the solids that boiling took in one study are not taken off, so energy and carbohydrate are a little high (${source.cite})`,
    ),
  ];
}

function labelNotes({ rules, bowl }: Pick<Found, "rules" | "bowl">): readonly Note[] {
  const perServing = ruleBooks[rules].per === "serving";
  return [
    ...(perServing && bowl === undefined
      ? [
          note(
            "no-serving",
            "these rules declare a serving: give --raw-weight or --cooked-weight, or `rawWeight` under `batch:`",
          ),
        ]
      : []),
    note(
      "not-on-flour",
      rules === "JP"
        ? "the law may want more than these lines"
        : "saturated fat and sugars, and added sugars, vitamins and minerals where the law wants them, are not told here: they need an analysis",
    ),
  ];
}
