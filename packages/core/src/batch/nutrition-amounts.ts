import { type Figure, given, type Naming, worked } from "../figure/figure.ts";
import { massBalance, type Source } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import {
  type Content,
  type Counted,
  contentOf,
  countingOf,
  type Nutrient,
  type NutrientName,
  nutrientNames,
  nutrients,
} from "../materials/nutrients.ts";
import type { RuleBookName } from "../materials/rounding-rules.ts";
import { type DecimalText, dec } from "../number/decimal.ts";
import type { Contents } from "./composition.ts";
import type { KeptInBoiling } from "./nutrition-cooked.ts";
import { roomBy } from "./nutrition-room.ts";

/** One nutrient, raw and cooked, in 100 g and in a bowl. */
export interface NutrientAmount {
  readonly name: NutrientName;
  readonly label: string;
  readonly unit: Nutrient["unit"];
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
  book: RuleBookName,
  serving: Serving,
): readonly NutrientAmount[] {
  const room = roomBy(book);
  const sums = new Map<NutrientName, Summed>();
  const sumOf = (name: NutrientName): Summed => {
    const known = sums.get(name);
    if (known !== undefined) return known;
    const counting = countingOf(name, book);
    if (counting === undefined) throw new RangeError(`${name} is not told by the rules of ${book}`);
    const sum = counted(name, counting);
    sums.set(name, sum);
    return sum;
  };
  const counted = (name: NutrientName, counting: Counted): Summed => {
    const { unit, places } = nutrients[name];
    const naming = { id: `raw.${name}`, label: counting.label, unit, places };
    if ("saltFactor" in counting) return saltOf(sumOf("sodium"), naming, counting);
    if ("perGram" in counting) {
      const one = energy(naming, sumOf, counting);
      const open = used(contents).filter(({ line }) => one.missing.includes(line.name));
      return withMost(one, open, (each) => room(each, name), formula, counting.perGram.fat);
    }
    const { of, sources } = counting;
    const open = used(contents).filter((each) => each[of] === undefined);
    return withMost(summed(contents, of, formula, naming, sources), open, (each) => room(each, name), formula);
  };
  return nutrientNames
    .filter((name) => countingOf(name, book) !== undefined)
    .map((name) => amount(name, sumOf(name), serving));
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
  const from = { least: one.figure, parts: open.map(({ line }) => line.parts), room: open.map(room), dough };
  const formula = `least + sum(parts * room) / dough${perGram === undefined ? "" : " * of_fat"}`;
  const fed = perGram === undefined ? from : { ...from, of_fat: perGram };
  return { ...one, most: worked({ ...atMost({ id, label }), unit, places }, formula, fed, massBalance) };
}

function atMost({ id, label }: Pick<Figure, "id" | "label">): Pick<Figure, "id" | "label"> {
  return { id: `most.${id}`, label: `${label}, at most` };
}

/** Protein of 100 g of dough on the count of nitrogen that the rules do not use. */
export function otherProtein(contents: readonly Contents[], formula: Formula, book: RuleBookName): Figure {
  const label = contentOf("protein", book) === "protein";
  const words = label ? "protein of 100 g as N × 6.25" : "protein of 100 g on the factors of the foods, 5.7 for wheat";
  const naming = { id: "raw.other-protein", label: words, unit: "g", places: 1 };
  const { figure, missing } = summed(contents, label ? "labelProtein" : "protein", formula, naming, []);
  return missing.length === 0 ? figure : { ...figure, label: `${figure.label}, at least` };
}

/** What is known of a content, summed over the dough, per 100 g of it. */
function summed(
  contents: readonly Contents[],
  of: Content,
  formula: Formula,
  naming: Naming,
  sources: readonly Source[],
): Summed {
  const present = used(contents);
  const known = present.flatMap((one) => (one[of] === undefined ? [] : [{ parts: one.line.parts, content: one[of] }]));
  const missing = present.filter((one) => one[of] === undefined).map(({ line }) => line.name);
  if (known.length === 0) return { figure: given(naming, 0, "no ingredient states it"), missing };
  const [parts, content] = [known.map((one) => one.parts), known.map((one) => one.content)];
  const from = { parts, content, dough: formula.water.dough };
  return { figure: worked(naming, "sum(parts * content) / dough", from, massBalance, ...sources), missing };
}

function energy(
  naming: Naming,
  sumOf: (name: NutrientName) => Summed,
  { perGram, source }: Extract<Counted, { perGram: object }>,
): Summed {
  const parts = (["protein", "fat", "carbohydrate", "fibre"] as const).flatMap((name) => {
    const factor = perGram[name];
    return factor === undefined ? [] : [{ name, factor, ...sumOf(name) }];
  });
  const formula = parts.map(({ name }) => `${name} * of_${name}`).join(" + ");
  const fed = parts.flatMap(({ name, figure, factor }): [string, Figure | DecimalText][] => [
    [name, figure],
    [`of_${name}`, factor],
  ]);
  const missing = [...new Set(parts.flatMap((part) => part.missing))];
  return { figure: worked(naming, formula, Object.fromEntries(fed), source), missing };
}

function saltOf(
  { figure, missing, most }: Summed,
  naming: Naming,
  { saltFactor, source }: Extract<Counted, { saltFactor: string }>,
): Summed {
  const salt = (sodium: Figure, named: Naming): Figure =>
    worked(named, "sodium * factor / 1000", { sodium, factor: saltFactor }, source);
  return { figure: salt(figure, naming), missing, ...(most && { most: salt(most, { ...naming, ...atMost(naming) }) }) };
}

function amount(name: NutrientName, { figure, missing, most }: Summed, serving: Serving): NutrientAmount {
  return {
    name,
    label: figure.label,
    unit: nutrients[name].unit,
    ...perAmounts(name, figure, "", serving),
    missing,
    ...(most && { most: perAmounts(name, most, "most.", serving) }),
  };
}

/** An amount of 100 g raw brought to a bowl, and to what is left of it when cooked. */
function perAmounts(
  name: NutrientName,
  hundred: Figure,
  scope: string,
  { gain, kept, raw }: Serving,
): { readonly raw: PerAmount; readonly cooked: PerAmount } {
  const { label, places } = hundred;
  const { boiling } = nutrients[name];
  const share = boiling === "as sodium" ? kept.sodium : boiling === "as potassium" ? kept.potassium : undefined;
  const scaled = (id: string, of: string, formula: string, from: Readonly<Record<string, Figure>>): Figure => {
    const naming = { id: `${scope}${id}.${name}`, label: `${label} of ${of}`, unit: hundred.unit, places };
    return worked(naming, formula, from, massBalance);
  };
  const left = share === undefined ? "" : " * kept / 100";
  const keeping = share && { kept: share };
  const bowl = raw && scaled("bowl-raw", "a raw bowl", "hundred * raw / 100", { hundred, raw });
  const cooked = scaled("cooked", "100 g cooked", `hundred${left} / gain`, { hundred, ...keeping, gain });
  const eaten = bowl && scaled("bowl-cooked", "a cooked bowl", `bowl${left}`, { bowl, ...keeping });
  return { raw: { hundred, ...(bowl && { bowl }) }, cooked: { hundred: cooked, ...(eaten && { bowl: eaten }) } };
}
