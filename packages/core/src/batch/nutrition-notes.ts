import { shownValue } from "../figure/figure.ts";
import { type Note, note } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { inUse } from "../formula/line.ts";
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

function missingNotes({ amounts, rules }: Pick<Found, "amounts" | "rules">): readonly Note[] {
  const simple = amounts.filter(({ name }) => contentOf(name, rules) !== undefined);
  const names = [...new Set(simple.flatMap(({ missing }) => missing))];
  return names.map((name) => {
    const figures = simple.filter(({ missing }) => missing.includes(name)).map(({ label }) => label);
    return note("nutrition.not-stated", [], { name, figures });
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
    ...(assumed.length === 0 ? [] : [note("nutrition.factor", [], { names: assumed })]),
    ...inert.map(({ line }) => note("nutrition.inert", [], { name: line.name })),
  ];
}

function leftOutNotes(formula: Formula): readonly Note[] {
  return [
    ...inUse(formula.dusting ? [formula.dusting] : []).map(({ name }) => note("nutrition.dusting", [], { name })),
    note("nutrition.tap-water", [], {}),
  ];
}

function boilingNotes({ kept }: Pick<Found, "kept">): readonly Note[] {
  const figures = (figure: KeptInBoiling["sodium"]) => ({
    percent: shownValue(figure),
    ...(figure.range && { low: dec(figure.range.low).toFixed(0), high: dec(figure.range.high).toFixed(0) }),
  });
  const { least, most, source } = solidsLostInBoiling;
  return [
    note("nutrition.boiling-salts", [], { sodium: figures(kept.sodium), potassium: figures(kept.potassium) }),
    note("nutrition.boiling-solids", [], { least, most, source: source.cite }),
  ];
}

function labelNotes({ rules, bowl }: Pick<Found, "rules" | "bowl">): readonly Note[] {
  const perServing = ruleBooks[rules].per === "serving";
  return [
    ...(perServing && bowl === undefined ? [note("nutrition.no-serving", [], {})] : []),
    note(rules === "JP" ? "nutrition.more-lines" : "nutrition.not-on-flour", [], {}),
  ];
}
