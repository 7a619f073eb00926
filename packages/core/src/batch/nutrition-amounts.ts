import { type Figure, given, worked } from "../figure/figure.ts";
import { massBalance, type Source } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { type DecimalText, dec } from "../number/decimal.ts";
import type { ContentName, Contents } from "./composition.ts";
import type { KeptInBoiling } from "./nutrition-cooked.ts";
import { roomBy } from "./nutrition-room.ts";
import type { AmountName, EnergyPerGram, NutritionRules } from "./nutrition-rules.ts";

/** One nutrient, raw and cooked, in 100 g and in a bowl. */
export interface NutrientAmount {
  readonly name: AmountName;
  readonly label: string;
  readonly unit: "kcal" | "kJ" | "g" | "mg";
  readonly raw: PerAmount;
  readonly cooked: PerAmount;
  /** Ingredients that do not state it: the figures are then least values, which count none of it in them. */
  readonly missing: readonly string[];
  /** The greatest values, which count all that they leave room for; only where something is missing. */
  readonly most?: { readonly raw: PerAmount; readonly cooked: PerAmount };
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
  /** What it is at most, where something is missing. */
  readonly most?: Figure;
}

/** The nutrients of a dough by the rules of a book, in the order in which they are told. */
export function amountsOf(
  contents: readonly Contents[],
  formula: Formula,
  rules: NutritionRules,
  serving: Serving,
): { readonly amounts: readonly NutrientAmount[]; readonly figures: readonly Figure[] } {
  const room = roomBy(rules);
  const counted = (name: AmountName, of: ContentName, label: string, sources: readonly Source[] = []): Summed => {
    const naming = { id: `raw.${name}`, label, unit: unitOf(name), places: placesOf(name) };
    const one = summed(contents, of, formula, naming, sources);
    const open = used(contents).filter((each) => each[of] === undefined);
    return withMost(one, open, (each) => room(each, of), formula);
  };
  const { words, sources } = rules;
  const protein = counted("protein", rules.protein, words.protein, [sources.protein]);
  const fat = counted("fat", "fat", "fat");
  const carbohydrate = counted("carbohydrate", rules.carbohydrate, words.carbohydrate, [sources.carbohydrate]);
  const fibre = counted("fibre", "fibre", "fibre");
  const sodium = counted("sodium", "sodium", "sodium");
  const potassium = counted("potassium", "potassium", "potassium");
  const { kcal, kilojoule } = rules.energy;
  const parts = { protein, fat, carbohydrate, fibre };
  const energyOf = (name: "energy" | "kilojoule", each: EnergyPerGram): Summed => {
    const one = energy(name, parts, each, rules);
    const open = used(contents).filter(({ line }) => one.missing.includes(line.name));
    return withMost(one, open, (which) => room(which, "protein"), formula, each.fat);
  };
  const named: readonly (readonly [AmountName, Summed])[] = [
    ...(kilojoule ? ([["kilojoule", energyOf("kilojoule", kilojoule)]] as const) : []),
    ["energy", energyOf("energy", kcal)],
    ["fat", fat],
    ["carbohydrate", carbohydrate],
    ["fibre", fibre],
    ["protein", protein],
    ["sodium", sodium],
    ...(rules.salt ? ([["salt", saltOf(sodium, rules.salt)]] as const) : []),
    ["potassium", potassium],
  ];
  const amounts = named.map(([name, one]) => amount(name, one, serving));
  const least = amounts.flatMap(({ raw, cooked }) => [...figuresOf(raw), ...figuresOf(cooked)]);
  const most = amounts.flatMap((one) => (one.most ? [...figuresOf(one.most.raw), ...figuresOf(one.most.cooked)] : []));
  return { amounts, figures: [...least, ...most] };
}

function used(contents: readonly Contents[]): readonly Contents[] {
  return contents.filter(({ line }) => !dec(line.parts.value).isZero());
}

/** The same with what it is at most, where some ingredients do not state it. */
function withMost(
  one: Summed,
  open: readonly Contents[],
  room: (each: Contents) => Figure,
  { water: { dough } }: Formula,
  perGram?: DecimalText,
): Summed {
  if (open.length === 0) return one;
  const { id, label, unit, places } = one.figure;
  const most = worked({
    id: `most.${id}`,
    label: `${label}, at most`,
    unit,
    places,
    formula: `least + sum(parts * room) / dough${perGram === undefined ? "" : " * of_fat"}`,
    from: {
      least: one.figure,
      parts: open.map(({ line }) => line.parts),
      room: open.map(room),
      dough,
      ...(perGram !== undefined && { of_fat: perGram }),
    },
    sources: [massBalance],
  });
  return { ...one, most };
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
  const present = used(contents);
  const known = present.flatMap((one) => (one[of] === undefined ? [] : [{ parts: one.line.parts, content: one[of] }]));
  const missing = present.filter((one) => one[of] === undefined).map(({ line }) => line.name);
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

function saltOf(sodium: Summed, { factor, source }: NonNullable<NutritionRules["salt"]>): Summed {
  const salt = (of: Figure, id: string, label: string): Figure =>
    worked({
      id,
      label,
      unit: "g",
      places: placesOf("salt"),
      formula: "sodium * factor / 1000",
      from: { sodium: of, factor },
      sources: [source],
    });
  const label = "salt (all sodium counted)";
  const { figure, missing, most } = sodium;
  return {
    figure: salt(figure, "raw.salt", label),
    missing,
    ...(most && { most: salt(most, "most.raw.salt", `${label}, at most`) }),
  };
}

function amount(name: AmountName, { figure, missing, most }: Summed, serving: Serving): NutrientAmount {
  return {
    name,
    label: figure.label,
    unit: unitOf(name),
    ...perAmounts(name, figure, "", serving),
    missing,
    ...(most && { most: perAmounts(name, most, "most.", serving) }),
  };
}

/** An amount of 100 g raw brought to a bowl, and to what is left of it when cooked. */
function perAmounts(
  name: AmountName,
  hundred: Figure,
  scope: string,
  { gain, kept, raw }: Serving,
): { readonly raw: PerAmount; readonly cooked: PerAmount } {
  const { label, places } = hundred;
  const share = name === "potassium" ? kept.potassium : name === "sodium" || name === "salt" ? kept.sodium : undefined;
  const scaled = (id: string, of: string, formula: string, from: Readonly<Record<string, Figure>>): Figure =>
    worked({
      id: `${scope}${id}.${name}`,
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
  return { raw: { hundred, ...(bowl && { bowl }) }, cooked: { hundred: cooked, ...(eaten && { bowl: eaten }) } };
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
