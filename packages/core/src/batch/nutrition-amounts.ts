import { type Figure, given, worked } from "../figure/figure.ts";
import { massBalance, type Source } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { dec } from "../number/decimal.ts";
import type { ContentName, Contents } from "./composition.ts";
import type { KeptInBoiling } from "./nutrition-cooked.ts";
import type { AmountName, EnergyPerGram, NutritionRules } from "./nutrition-rules.ts";

/** One nutrient, raw and cooked, in 100 g and in a bowl. */
export interface NutrientAmount {
  readonly name: AmountName;
  readonly label: string;
  readonly unit: "kcal" | "kJ" | "g" | "mg";
  readonly raw: PerAmount;
  readonly cooked: PerAmount;
  /** Ingredients that do not state it: the figures are then least values. */
  readonly missing: readonly string[];
}

/** In 100 g and, where its weight is known, in a bowl. */
export interface PerAmount {
  readonly hundred: Figure;
  readonly bowl?: Figure;
}

interface Serving {
  readonly gain: Figure;
  readonly kept: KeptInBoiling;
  /** Raw strands in a bowl, g. */
  readonly raw?: Figure;
}

interface Summed {
  readonly figure: Figure;
  readonly missing: readonly string[];
}

/** The nutrients of a dough by the rules of a book, in the order in which they are told. */
export function amountsOf(
  contents: readonly Contents[],
  formula: Formula,
  rules: NutritionRules,
  serving: Serving,
): { readonly amounts: readonly NutrientAmount[]; readonly figures: readonly Figure[] } {
  const counted = (name: AmountName, of: ContentName, label: string, sources: readonly Source[] = []): Summed =>
    summed(contents, of, formula, { id: `raw.${name}`, label, unit: unitOf(name), places: placesOf(name) }, sources);
  const { words, sources } = rules;
  const protein = counted("protein", rules.protein, words.protein, [sources.protein]);
  const fat = counted("fat", "fat", "fat");
  const carbohydrate = counted("carbohydrate", rules.carbohydrate, words.carbohydrate, [sources.carbohydrate]);
  const fibre = counted("fibre", "fibre", "fibre");
  const sodium = counted("sodium", "sodium", "sodium");
  const potassium = counted("potassium", "potassium", "potassium");
  const { kcal, kilojoule } = rules.energy;
  const parts = { protein, fat, carbohydrate, fibre };
  const named: readonly (readonly [AmountName, Summed])[] = [
    ...(kilojoule ? ([["kilojoule", energy("kilojoule", parts, kilojoule, rules)]] as const) : []),
    ["energy", energy("energy", parts, kcal, rules)],
    ["fat", fat],
    ["carbohydrate", carbohydrate],
    ["fibre", fibre],
    ["protein", protein],
    ["sodium", sodium],
    ...(rules.salt ? ([["salt", saltOf(sodium, rules.salt)]] as const) : []),
    ["potassium", potassium],
  ];
  const amounts = named.map(([name, { figure, missing }]) => amount(name, figure, missing, serving));
  return { amounts, figures: amounts.flatMap(({ raw, cooked }) => [...figuresOf(raw), ...figuresOf(cooked)]) };
}

function figuresOf({ hundred, bowl }: PerAmount): readonly Figure[] {
  return [hundred, ...(bowl ? [bowl] : [])];
}

/** Protein of 100 g of dough on the count of nitrogen that the rules do not use. */
export function otherProtein(contents: readonly Contents[], formula: Formula, rules: NutritionRules): Figure {
  const label = rules.protein === "protein";
  const naming = {
    id: "raw.other-protein",
    label: label ? "protein of 100 g as N × 6.25" : "protein of 100 g on the factors of the foods, 5.7 for wheat",
    unit: "g",
    places: 1,
  };
  const { figure, missing } = summed(contents, label ? "labelProtein" : "protein", formula, naming, []);
  return missing.length === 0 ? figure : { ...figure, label: `${figure.label}, at least` };
}

type Naming = Pick<Figure, "id" | "label" | "unit" | "places">;

/** What is known of a content, summed over the dough, per 100 g of it. */
function summed(
  contents: readonly Contents[],
  of: ContentName,
  formula: Formula,
  naming: Naming,
  sources: readonly Source[],
): Summed {
  const used = contents.filter(({ line }) => !dec(line.parts.value).isZero());
  const known = used.flatMap((one) => (one[of] === undefined ? [] : [{ parts: one.line.parts, content: one[of] }]));
  const missing = used.filter((one) => one[of] === undefined).map(({ line }) => line.name);
  const figure =
    known.length === 0
      ? given({ ...naming, value: 0, by: "no ingredient states it", sources: [] })
      : worked({
          ...naming,
          formula: "sum(parts * content) / dough",
          from: {
            parts: known.map(({ parts }) => parts),
            content: known.map(({ content }) => content),
            dough: formula.water.dough,
          },
          sources: [massBalance, ...sources],
        });
  return { figure, missing };
}

type Parts = Readonly<Record<"protein" | "fat" | "carbohydrate" | "fibre", Summed>>;

function energy(name: "energy" | "kilojoule", parts: Parts, each: EnergyPerGram, rules: NutritionRules): Summed {
  const { protein, fat, carbohydrate, fibre } = parts;
  const apart = each.fibre !== undefined;
  const terms = ["protein", "fat", "carbohydrate", ...(apart ? ["fibre"] : [])];
  const figure = worked({
    id: `raw.${name}`,
    label: "energy",
    unit: unitOf(name),
    places: 0,
    formula: terms.map((term) => `${term} * of_${term}`).join(" + "),
    from: {
      protein: protein.figure,
      of_protein: each.protein,
      fat: fat.figure,
      of_fat: each.fat,
      carbohydrate: carbohydrate.figure,
      of_carbohydrate: each.carbohydrate,
      ...(each.fibre !== undefined && { fibre: fibre.figure, of_fibre: each.fibre }),
    },
    sources: [rules.sources.energy],
  });
  const counted = [protein, fat, carbohydrate, ...(apart ? [fibre] : [])];
  return { figure, missing: [...new Set(counted.flatMap(({ missing }) => missing))] };
}

function saltOf({ figure, missing }: Summed, { factor, source }: NonNullable<NutritionRules["salt"]>): Summed {
  const salt = worked({
    id: "raw.salt",
    label: "salt (all sodium counted)",
    unit: "g",
    places: placesOf("salt"),
    formula: "sodium * factor / 1000",
    from: { sodium: figure, factor },
    sources: [source],
  });
  return { figure: salt, missing };
}

function amount(name: AmountName, hundred: Figure, missing: readonly string[], serving: Serving): NutrientAmount {
  const { gain, kept, raw } = serving;
  const { label, places } = hundred;
  const share = name === "potassium" ? kept.potassium : name === "sodium" || name === "salt" ? kept.sodium : undefined;
  const scaled = (id: string, of: string, formula: string, from: Readonly<Record<string, Figure>>): Figure =>
    worked({
      id: `${id}.${name}`,
      label: `${label} of ${of}`,
      unit: hundred.unit,
      places,
      formula,
      from,
      sources: [massBalance],
    });
  const left = share === undefined ? "" : " * kept / 100";
  const keeping = share && { kept: share };
  const bowl = raw && scaled("bowl-raw", "a raw bowl", "hundred * raw / 100", { hundred, raw });
  const cooked = scaled("cooked", "100 g cooked", `hundred${left} / gain`, { hundred, ...keeping, gain });
  const eaten = bowl && scaled("bowl-cooked", "a cooked bowl", `bowl${left}`, { bowl, ...keeping });
  return {
    name,
    label,
    unit: unitOf(name),
    raw: { hundred, ...(bowl && { bowl }) },
    cooked: { hundred: cooked, ...(eaten && { bowl: eaten }) },
    missing,
  };
}

function unitOf(name: AmountName): NutrientAmount["unit"] {
  if (name === "energy") return "kcal";
  if (name === "kilojoule") return "kJ";
  return name === "sodium" || name === "potassium" ? "mg" : "g";
}

function placesOf(name: AmountName): number {
  if (name === "salt") return 2;
  return unitOf(name) === "g" ? 1 : 0;
}
